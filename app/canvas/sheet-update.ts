/**
 * A state of the sheet as what differs from the one before, for a painter in a worker: elements and findings that are as
 * they were are not copied, and the painter keeps the very objects that it has.
 */
import type { Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import {
  patchedReport,
  patchedSite,
  type ReportPatch,
  reportPatch,
  type SitePatch,
  sitePatch,
} from "../workers/patch.ts";
import type { SheetState } from "./sheet-state.ts";

type Look = Omit<SheetState, "site" | "report">;

export interface SheetUpdate {
  readonly site?: { readonly whole: Site } | { readonly edit: SitePatch };
  readonly report?: { readonly whole: Report | null } | { readonly changes: ReportPatch };
  /** The other fields that differ. */
  readonly look: Partial<Look>;
}

/** What makes `after` out of `before`. */
export function sheetUpdate(before: SheetState | null, after: SheetState): SheetUpdate {
  const { site, report, ...others } = after;
  if (before === null) return { site: { whole: site }, report: { whole: report }, look: others };
  const look = Object.fromEntries(
    Object.entries(others).filter(([name, value]) => before[name as keyof Look] !== value),
  ) as Partial<Look>;
  return {
    look,
    ...(site === before.site
      ? {}
      : { site: after.opening === before.opening ? { edit: sitePatch(before.site, site) } : { whole: site } }),
    ...(report === before.report
      ? {}
      : { report: report && before.report ? { changes: reportPatch(before.report, report) } : { whole: report } }),
  };
}

/** The state after an update. The first one has to be whole. */
export function updatedSheet(before: SheetState | null, { site, report, look }: SheetUpdate): SheetState {
  const nextSite = site === undefined ? before?.site : "whole" in site ? site.whole : editedSite(before, site.edit);
  const nextReport =
    report === undefined ? before?.report : "whole" in report ? report.whole : changedReport(before, report.changes);
  if (nextSite === undefined || nextReport === undefined) throw new Error("the first state of a sheet is not whole");
  return { ...(before as SheetState), ...look, site: nextSite, report: nextReport };
}

function editedSite(before: SheetState | null, edit: SitePatch): Site {
  if (!before) throw new Error("an edit came before any site");
  return patchedSite(before.site, edit);
}

function changedReport(before: SheetState | null, changes: ReportPatch): Report {
  if (!before?.report) throw new Error("changes of a report came before any report");
  return patchedReport(before.report, changes);
}
