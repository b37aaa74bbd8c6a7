/** Yards with recorded copper for these tests: an invented 32 by 16 ft pool, its ring and ties right in everything. */
import { clampTie, fourTies, pathRoundPool, ringCopper } from "../../../rules/catalogue/common/example-copper.ts";
import { box, concretePool, deck, line, linerPool } from "../../../rules/catalogue/common/example-yard.ts";
import type { Yard } from "../../../rules/measures/yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import { type Reach, readRecorded } from "../../../rules/recorded/graph.ts";
import type { Finding, Report } from "../../../rules/report.ts";
import { siteOf, yardOf } from "../catalogue/yards.ts";

export { box, clampTie, concretePool, deck, fourTies, line, linerPool, pathRoundPool, ringCopper, siteOf, yardOf };

/** A copper branch, right in everything. */
export function branch(id: string, path: object, changes: object = {}) {
  return ringCopper({ id, role: "branch", path, cover: undefined, coverFrom: undefined, joint: "none", ...changes });
}

export const pump = { id: "pump", kind: "equipment", at: [600, 100], unit: "pump", electric: true };
export const ladder = {
  id: "ladder",
  kind: "metal",
  shape: { point: [100, -4] },
  part: "ladder",
  inPoolStructure: true,
  anchors: 2,
  isolated: false,
  largestDimension: 40,
  penetration: 6,
};

/** Pool, ring and four ties: nothing is missing. */
export const soundYard = () => [concretePool(), ringCopper(), ...fourTies()];

export function reportOf(elements: readonly object[], head: object = {}): Report {
  return recompute(siteOf(elements, head), { withoutRoutes: true });
}

export function reachIn(elements: readonly object[], id: string, connections = 1): Reach {
  return readRecorded(yardOf(elements)).reached(id, connections);
}

export function recordedIn(elements: readonly object[], head: object = {}) {
  const yard: Yard = yardOf(elements, head);
  return { yard, recorded: readRecorded(yard) };
}

export function findingOf(report: Report, rule: string, element: string | null): Finding {
  const found = report.findings.filter((finding) => finding.rule === rule && finding.element === element);
  if (found.length !== 1) throw new Error(`${found.length} findings of ${rule} on ${element}`);
  return found[0] as Finding;
}
