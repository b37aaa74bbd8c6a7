/** One finding led to the eye: its element, the line that was measured, and the limit drawn as a line to be crossed. */
import { offsetCurves } from "../../geometry/offset.ts";
import { areaFrom } from "../../geometry/outline.ts";
import type { Point } from "../../geometry/types.ts";
import { shapeOf } from "../../rules/measures/shapes.ts";
import type { Finding } from "../../rules/report.ts";
import type { PoolElement } from "../../rules/site/elements.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { type Drafting, isKnown } from "./drafting.ts";
import { areaSteps, lineSteps, pathSteps, regionSteps } from "./steps.ts";

/** Draws the finding with this id into the focus layer. An id that the report does not hold draws nothing. */
export function drawFocus(id: string, drafting: Drafting): void {
  const finding = drafting.report.findings.find((one) => one.id === id);
  if (!finding) return;
  drawElement(finding, drafting);
  drawLimit(finding, drafting);
  drawWitness(finding, drafting);
}

function drawElement(finding: Finding, drafting: Drafting): void {
  const element = drafting.byId.get(finding.element ?? finding.body ?? "");
  if (!element || !isKnown(element)) return;
  const shape = shapeOf(element);
  if (shape.kind === "point") return;
  const steps = shape.kind === "path" ? pathSteps(shape.path) : areaSteps(shape.area);
  drafting.add("focus", { kind: "shape", role: "focus", steps, element: element.id, findings: [finding.id] });
}

/** The limit of a distance from the water: where a reach of that distance is reported, its edge; else the exact offset. */
function drawLimit(finding: Finding, drafting: Drafting): void {
  const { path, horizontal } = finding.required;
  const distance = typeof path === "number" ? path : horizontal;
  const pool = drafting.byId.get(finding.body ?? "");
  if (typeof distance !== "number" || distance <= 0 || pool?.kind !== "pool") return;
  const findings = [finding.id];
  const reach = drafting.report.reach.find((one) => one.pool === finding.body && one.distance === distance);
  if (typeof path === "number" && reach) {
    drafting.add("focus", { kind: "shape", role: "limit", steps: regionSteps(reach.region), findings });
    return;
  }
  const { outline, islands } = pool as PoolElement;
  for (const loop of offsetCurves([areaFrom(outline, islands)], distance).loops) {
    drafting.add("focus", { kind: "shape", role: "limit", steps: pathSteps(loop.path), findings });
  }
}

function drawWitness(finding: Finding, drafting: Drafting): void {
  const { witness } = finding;
  const [first] = witness;
  const last = witness[witness.length - 1];
  const findings = [finding.id];
  if (!first || !last) return;
  if (witness.length > 1) {
    drafting.add("focus", { kind: "shape", role: "focus", steps: lineSteps(witness), findings });
    drafting.add("focus", {
      kind: "text",
      at: middleOf(witness),
      text: lengthText(lengthOf(witness), drafting.units),
      size: "heading",
      role: "measure",
      anchor: "middle",
      turn: 0,
      strong: true,
      plate: true,
      findings,
    });
  }
  for (const at of [first, last]) {
    drafting.add("focus", { kind: "symbol", symbol: "witness-end", at, turn: 0, role: "witness", findings });
  }
}

/** Length of a polyline, inches. */
export function lengthOf(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (a && b) sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}

/** The position halfway along a polyline. */
export function middleOf(points: readonly Point[]): Point {
  let left = lengthOf(points) / 2;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (!a || !b) continue;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= length && length > 0)
      return [a[0] + ((b[0] - a[0]) * left) / length, a[1] + ((b[1] - a[1]) * left) / length];
    left -= length;
  }
  return points[0] ?? [0, 0];
}
