/** One finding led to the eye: its element, the line that was measured, and the limit drawn as a line to be crossed. */
import { lengthWithin } from "../../geometry/distance.ts";
import { offsetCurves } from "../../geometry/offset.ts";
import { areaFrom } from "../../geometry/outline.ts";
import type { Path, Point, Region } from "../../geometry/types.ts";
import { partOf } from "../../rules/findings-by-part.ts";
import { splitBySurface } from "../../rules/measures/band-pieces.ts";
import { shapeOf } from "../../rules/measures/shapes.ts";
import type { Finding } from "../../rules/report.ts";
import { type Drafting, isKnown } from "./drafting.ts";
import { areaSteps, lineSteps, pathSteps, regionSteps } from "./steps.ts";
import { middleOf, witnessWords } from "./witness-words.ts";

/** Draws the finding with this id into the focus layer. An id that the report does not hold draws nothing. */
export function drawFocus(id: string, drafting: Drafting): void {
  const finding = drafting.report.findings.find((one) => one.id === id);
  if (!finding) return;
  drawElement(finding, drafting);
  drawLimit(finding, drafting);
  drawWitness(finding, drafting);
}

/** The rule whose findings are about the ground next to the water, surface by surface. */
const GROUND_RULE = "perimeter-surfaces";

/** The ground that a finding of the perimeter is about: that of its surface in the band, or what no surface covers. */
function groundOf(finding: Finding, { report, site }: Drafting): Region {
  const band = report.band.find(({ pool }) => pool === finding.body);
  if (finding.rule !== GROUND_RULE || !band) return [];
  const surfaces = site.elements.flatMap((element) =>
    isKnown(element) && element.kind === "surface" ? [{ element, area: areaFrom(element.outline, element.holes) }] : [],
  );
  const pieces = splitBySurface(band.region, surfaces);
  return pieces.find(({ surface }) => surface === finding.element)?.region ?? [];
}

function drawElement(finding: Finding, drafting: Drafting): void {
  const ground = groundOf(finding, drafting);
  if (ground.length > 0) {
    const element = finding.element === null ? {} : { element: finding.element };
    const steps = regionSteps(ground);
    drafting.add("focus", { kind: "shape", role: "focus", steps, hatch: "band", ...element, findings: [finding.id] });
    return;
  }
  const element = drafting.byId.get(finding.element ?? finding.body ?? "");
  if (!element || !isKnown(element)) return;
  if (partOf(finding) === "ties") {
    for (const item of drafting.itemsOf("ties")) drafting.add("focus", item);
  }
  const shape = shapeOf(element);
  if (shape.kind === "point") {
    drawSymbolAgain(element.id, drafting);
    return;
  }
  const about = { element: element.id, findings: [finding.id] };
  const within = shape.kind === "path" ? partWithin(shape.path, finding, drafting) : null;
  const steps = shape.kind === "path" ? pathSteps(shape.path) : areaSteps(shape.area);
  drafting.add("focus", { kind: "shape", role: within === null ? "focus" : "focus-rest", steps, ...about });
  for (const piece of within ?? [])
    drafting.add("focus", { kind: "shape", role: "focus", steps: pathSteps(piece), ...about });
}

/** What is drawn as a symbol stays as strong as it was while the rest is pushed back. */
function drawSymbolAgain(id: string, drafting: Drafting): void {
  const symbols = drafting
    .layers()
    .flatMap(({ items }) => items.filter((item) => item.kind === "symbol" && item.element === id));
  for (const symbol of symbols) drafting.add("focus", symbol);
}

/** The stretches of a line that lie within the finding's limit; null where no straight distance decides. */
function partWithin(path: Path, finding: Finding, { byId }: Drafting): readonly Path[] | null {
  const limit = finding.required.horizontal;
  const pool = byId.get(finding.body ?? "");
  if (typeof limit !== "number" || !pool || !isKnown(pool) || pool.kind !== "pool") return null;
  return lengthWithin(path, areaFrom(pool.outline, pool.islands), limit).pieces;
}

/** The limit of a distance from the water: where a reach of that distance is reported, its edge; else the exact offset. */
function drawLimit(finding: Finding, drafting: Drafting): void {
  const { path, horizontal } = finding.required;
  const distance = typeof path === "number" ? path : horizontal;
  const pool = drafting.byId.get(finding.body ?? "");
  if (typeof distance !== "number" || distance <= 0 || !pool || !isKnown(pool) || pool.kind !== "pool") return;
  const findings = [finding.id];
  const reach = drafting.report.reach.find((one) => one.pool === finding.body && one.distance === distance);
  if (typeof path === "number" && reach) {
    drafting.add("focus", { kind: "shape", role: "limit", steps: regionSteps(reach.region), findings });
    return;
  }
  for (const loop of offsetCurves([areaFrom(pool.outline, pool.islands)], distance).loops) {
    drafting.add("focus", { kind: "shape", role: "limit", steps: pathSteps(loop.path), findings });
  }
}

/** A second line of type below the first, points of the paper. */
const SECOND_LINE = 13;

function drawWitness(finding: Finding, drafting: Drafting): void {
  const { witness } = finding;
  const [first] = witness;
  const last = witness[witness.length - 1];
  const findings = [finding.id];
  if (!first || !last) return;
  if (witness.length > 1) {
    drafting.add("focus", { kind: "shape", role: "focus", steps: lineSteps(witness), findings });
    const isUpright = Math.abs(last[1] - first[1]) > Math.abs(last[0] - first[0]);
    const middle = middleOf(witness);
    const aside = drafting.inches(7);
    const [x, y]: Point = isUpright
      ? [middle[0] + aside, middle[1] - drafting.inches(4)]
      : [middle[0], middle[1] + aside];
    const [text, more] = witnessWords(finding, drafting.units);
    const type = {
      kind: "text",
      role: "measure",
      anchor: isUpright ? "start" : "middle",
      turn: 0,
      plate: true,
      findings,
    } as const;
    const lift = more === undefined || isUpright ? 0 : drafting.inches(SECOND_LINE);
    drafting.add("focus", { ...type, at: [x, y + lift], text, size: "title", strong: true });
    if (more !== undefined) {
      drafting.add("focus", { ...type, at: [x, y + lift - drafting.inches(SECOND_LINE)], text: more, size: "body" });
    }
  }
  for (const at of [first, last]) {
    drafting.add("focus", { kind: "symbol", symbol: "witness-end", at, turn: 0, role: "witness", findings });
  }
}
