/**
 * The perimeter band, the reach of fixed metal and the copper. Proposed copper is broken, recorded copper solid; a needed
 * tie is an open diamond, a recorded one filled, so that the drawing fills in as the work is done.
 */
import { pathFrom } from "../../geometry/outline.ts";
import type { Point } from "../../geometry/types.ts";
import { partOf } from "../../rules/findings-by-part.ts";
import type { Finding, RingLoop, TieReport } from "../../rules/report.ts";
import type { ConductorElement, KnownElement, TieElement } from "../../rules/site/elements.ts";
import type { Drafting } from "./drafting.ts";
import type { Role } from "./palette.ts";
import { lineSteps, pathSteps, regionSteps } from "./steps.ts";

/** Draws the zones and all copper of the report and the record. */
export function drawCopper(drafting: Drafting): void {
  drawZones(drafting);
  drawProposedPerimeter(drafting);
  drawBranches(drafting);
  for (const tie of drafting.report.ties) drawTie(tie, drafting);
}

function drawZones(drafting: Drafting): void {
  for (const band of drafting.report.band) {
    drafting.add("band", {
      kind: "shape",
      role: "band",
      steps: regionSteps(band.region),
      hatch: "band",
      element: band.pool,
    });
  }
  for (const reach of drafting.report.reach) {
    drafting.add("reach", { kind: "shape", role: "reach", steps: regionSteps(reach.region), element: reach.pool });
  }
}

/** Whether the recorded copper already does what the plan proposes for these bodies. */
function isPerimeterDone(pools: readonly string[], findings: readonly Finding[]): boolean {
  const ofPools = findings.filter(
    (finding) => partOf(finding) === "perimeter" && finding.body !== null && pools.includes(finding.body),
  );
  return ofPools.length > 0 && ofPools.every((finding) => finding.outcome === "meets" || finding.outcome === "exempt");
}

/** The loops that the site asks for: evenly laid, or pulled tight. */
export function chosenLoops(drafting: Drafting): readonly RingLoop[] {
  const { ring } = drafting.report;
  return drafting.site.settings?.ringStyle === "short" && ring.short ? ring.short.loops : ring.loops;
}

function drawProposedPerimeter(drafting: Drafting): void {
  const { report } = drafting;
  const hasRecord = drafting.site.elements.some((element) => element.kind === "conductor");
  for (const loop of chosenLoops(drafting)) {
    if (hasRecord && isPerimeterDone(loop.pools, report.findings)) continue;
    drawRun("ring", "ring-proposed", loop.path, drafting);
  }
  for (const link of report.ring.links ?? []) drawRun("ring", "link-proposed", link.path, drafting);
  for (const stretch of report.ring.tooClose ?? []) drawRun("ring", "too-close", stretch.path, drafting);
  const everyPool = report.band.map((band) => band.pool);
  if (hasRecord && isPerimeterDone(everyPool, report.findings)) return;
  for (const line of report.grid.band.lines ?? []) drawRun("grid", "grid-proposed", line, drafting);
}

function drawRun(layer: "ring" | "grid" | "branches", role: Role, path: readonly Point[], drafting: Drafting): void {
  const steps = lineSteps(path);
  if (steps.length > 0) drafting.add(layer, { kind: "shape", role, steps });
}

function drawBranches(drafting: Drafting): void {
  const met = new Set(
    drafting.report.findings.filter((finding) => finding.outcome === "meets").map((finding) => finding.element),
  );
  const isOpen = new Set(
    drafting.report.findings.filter((finding) => finding.outcome !== "meets").map((finding) => finding.element),
  );
  for (const branch of drafting.report.branches) {
    if (met.has(branch.to) && !isOpen.has(branch.to)) continue;
    const steps = lineSteps(branch.path);
    if (steps.length > 0)
      drafting.add("branches", { kind: "shape", role: "branch-proposed", steps, element: branch.to });
    if (branch.penetration) {
      drafting.add("branches", {
        kind: "symbol",
        symbol: "way-in",
        at: branch.penetration,
        turn: 45,
        role: "branch-proposed",
        element: branch.to,
      });
    }
  }
}

function drawTie(tie: TieReport, drafting: Drafting): void {
  const element = tie.recorded === null ? {} : { element: tie.recorded };
  const steps = lineSteps([tie.at, tie.to]);
  drafting.add("ties", { kind: "shape", role: tie.present ? "tie-recorded" : "tie-proposed", steps, ...element });
  drafting.add("ties", {
    kind: "symbol",
    symbol: tie.present ? "tie-recorded" : "tie-needed",
    at: tie.to,
    turn: 0,
    role: "copper-symbol",
    ...element,
  });
}

const RECORDED_ROLES: Readonly<Record<ConductorElement["role"], Role>> = {
  ring: "copper-recorded",
  branch: "copper-recorded",
  grid: "grid-recorded",
  tail: "tail-recorded",
};

/** Draws recorded copper and its connections; false when the element is neither. */
export function drawRecorded(element: KnownElement, drafting: Drafting): boolean {
  if (element.kind === "conductor") {
    const steps = pathSteps(pathFrom(element.path));
    drafting.add("recorded", { kind: "shape", role: RECORDED_ROLES[element.role], steps, element: element.id });
    return true;
  }
  if (element.kind === "tie") {
    if (!isInReport(element, drafting)) {
      drafting.add("ties", {
        kind: "symbol",
        symbol: "connection",
        at: element.at,
        turn: 0,
        role: "copper-symbol",
        element: element.id,
      });
    }
    return true;
  }
  return false;
}

/** Ties that join perimeter and shell are drawn from the report, as filled diamonds. */
function isInReport(tie: TieElement, drafting: Drafting): boolean {
  return drafting.report.ties.some(({ recorded }) => recorded === tie.id);
}
