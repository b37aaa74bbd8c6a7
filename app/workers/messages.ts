/** What the page and the worker that recomputes say to each other. */
import type { Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import type { ReportPatch, SitePatch } from "./patch.ts";

/** `quick` leaves the routes of branches for later. */
export type Depth = "quick" | "full";

/** A whole site, or what differs from the site of the last request that was answered with a report. */
export type RecomputeRequest = {
  readonly revision: number;
  readonly depth: Depth;
  /** Something is dragged: the report may be brief. Ids of findings and elements that are looked at. */
  readonly watched?: readonly string[];
} & ({ readonly site: Site } | { readonly edit: SitePatch });

/** A whole report to a whole site; to an edit what differs from the last report. */
export type RecomputeReply =
  | ({
      readonly revision: number;
      readonly depth: Depth;
      readonly ok: true;
      /** Milliseconds of work. */
      readonly took: number;
      /** Some findings are as they were sent before; see brief-report.ts. */
      readonly isBrief?: boolean;
    } & ({ readonly report: Report } | { readonly changes: ReportPatch }))
  | { readonly revision: number; readonly depth: Depth; readonly ok: false; readonly message: string };
