/**
 * Sites and reports as what differs from the one before: page and worker each hold the one before, and objects that an
 * edit left alone are not copied between them. Either side keeps the very objects that it has, by which the worker knows
 * what need not be worked out again.
 *
 * Terms. A run: so many entries of the list before, from a number on.
 */
import type { Finding, Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";

export type ListPatch<T> = readonly (
  | { readonly from: number; readonly count: number }
  | { readonly added: readonly T[] }
)[];

export interface SitePatch {
  /** Fields that are new or differ, save the elements: a picture beneath the plan is not copied with every frame. */
  readonly head: Readonly<Record<string, unknown>>;
  /** Fields that are gone. */
  readonly gone: readonly string[];
  readonly elements: ListPatch<Site["elements"][number]>;
}

export interface ReportPatch {
  /** Fields that are the same as before, by name. */
  readonly same: readonly string[];
  /** The others, save the findings. */
  readonly fields: Readonly<Record<string, unknown>>;
  readonly findings: ListPatch<Finding>;
}

/** What makes `after` out of `before`; entries are compared by identity. */
export function listPatch<T>(before: readonly T[], after: readonly T[]): ListPatch<T> {
  const patch: ({ from: number; count: number } | { added: T[] })[] = [];
  let places: Map<T, number> | null = null;
  let next = 0;
  for (const [i, one] of after.entries()) {
    const last = patch[patch.length - 1];
    if (next < before.length && before[next] === one) {
      if (last && "from" in last) last.count += 1;
      else patch.push({ from: next, count: 1 });
      next += 1;
      continue;
    }
    // Most often one entry has taken the place of another.
    const replaced = i + 1 < after.length && after[i + 1] === before[next + 1];
    places ??= replaced ? null : new Map(before.map((entry, place) => [entry, place]));
    const place = replaced ? undefined : places?.get(one);
    if (place !== undefined) {
      patch.push({ from: place, count: 1 });
      next = place + 1;
      continue;
    }
    if (last && "added" in last) last.added.push(one);
    else patch.push({ added: [one] });
    if (replaced) next += 1;
  }
  return patch;
}

export function patchedList<T>(before: readonly T[], patch: ListPatch<T>): T[] {
  return patch.flatMap((part) => ("added" in part ? part.added : before.slice(part.from, part.from + part.count)));
}

export function sitePatch(before: Site, after: Site): SitePatch {
  const was: Readonly<Record<string, unknown>> = before;
  const head = Object.entries(after).filter(([name, value]) => name !== "elements" && was[name] !== value);
  const gone = Object.keys(before).filter((name) => !(name in after));
  return { head: Object.fromEntries(head), gone, elements: listPatch(before.elements, after.elements) };
}

export function patchedSite(before: Site, { head, gone, elements }: SitePatch): Site {
  const kept = Object.fromEntries(Object.entries(before).filter(([name]) => !gone.includes(name)));
  return { ...kept, ...head, elements: patchedList(before.elements, elements) } as Site;
}

export function reportPatch(before: Report, after: Report): ReportPatch {
  const same: string[] = [];
  const fields: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(after)) {
    if (name === "findings") continue;
    if (before[name as keyof Report] === value) same.push(name);
    else fields[name] = value;
  }
  return { same, fields, findings: listPatch(before.findings, after.findings) };
}

export function patchedReport(before: Report, { same, fields, findings }: ReportPatch): Report {
  const kept = Object.fromEntries(same.map((name) => [name, before[name as keyof Report]]));
  return { ...kept, ...fields, findings: patchedList(before.findings, findings) } as unknown as Report;
}
