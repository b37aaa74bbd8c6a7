/** One finding led to the eye: its element, the line that was measured, and the limit drawn as a line to be crossed. */
import { lengthWithin } from "../../geometry/distance.ts";
import { offsetCurves } from "../../geometry/offset.ts";
import { areaFrom } from "../../geometry/outline.ts";
import { boundsOfPoints } from "../../geometry/points.ts";
import type { Path, Point, Region } from "../../geometry/types.ts";
import { partOf } from "../../rules/findings-by-part.ts";
import { splitBySurface } from "../../rules/measures/band-pieces.ts";
import { shapeOf } from "../../rules/measures/shapes.ts";
import type { Finding } from "../../rules/report.ts";
import { type Drafting, isKnown } from "./drafting.ts";
import { inkShape } from "./ink.ts";
import { Placer } from "./placement.ts";
import type { TextItem } from "./scene.ts";
import { areaSteps, lineSteps, pathSteps, regionSteps } from "./steps.ts";
import { itemPoints } from "./text-width.ts";
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

/** Type in focus may stand anywhere on the sheet, this far from its line, points. */
const EVERYWHERE = {
  minX: Number.NEGATIVE_INFINITY,
  minY: Number.NEGATIVE_INFINITY,
  maxX: Number.POSITIVE_INFINITY,
  maxY: Number.POSITIVE_INFINITY,
};
const BESIDE = 7;
/** Room round it in which no line should lie, points. */
const CLEAR = 4;

/** A second line of type below the first, and how far the foot of the type lies below the middle of its line, points. */
const SECOND_LINE = 13;
const FOOT = 4;

function drawWitness(finding: Finding, drafting: Drafting): void {
  const { witness } = finding;
  const [first] = witness;
  const last = witness[witness.length - 1];
  const findings = [finding.id];
  if (!first || !last) return;
  if (witness.length > 1) {
    drafting.add("focus", { kind: "shape", role: "focus", steps: lineSteps(witness), findings });
    const type = { kind: "text", role: "measure", anchor: "middle", turn: 0, plate: true, findings } as const;
    const lines: TextItem[] = witnessWords(finding, drafting.units).map((text, i) =>
      i === 0 ? { ...type, at: first, text, size: "title", strong: true } : { ...type, at: first, text, size: "body" },
    );
    const [x, y] = placeBeside(witness, lines, drafting);
    for (const [i, line] of lines.entries()) {
      const up = ((lines.length - 1) / 2 - i) * SECOND_LINE - FOOT;
      drafting.add("focus", { ...line, at: [x, y + drafting.inches(up)] });
    }
  }
  for (const at of [first, last]) {
    drafting.add("focus", { kind: "symbol", symbol: "witness-end", at, turn: 0, role: "witness", findings });
  }
}

/** The middle of the place for type beside a measured line: the nearest that lies on no line of what is in focus. */
function placeBeside(witness: readonly Point[], lines: readonly TextItem[], drafting: Drafting): Point {
  const k = drafting.pointsPerInch;
  const toPaper = ([x, y]: Point): Point => [x * k, y * k];
  const placer = new Placer(EVERYWHERE);
  for (const item of drafting.itemsOf("focus")) if (item.kind === "shape") inkShape(item, placer, toPaper);
  const [width, height] = [Math.max(...lines.map(itemPoints)), lines.length * SECOND_LINE];
  const line = boundsOfPoints(witness.map(toPaper));
  const isUpright = line.maxY - line.minY > line.maxX - line.minX;
  const [x, y] = toPaper(middleOf(witness));
  const [east, west] = isUpright ? [x, x] : [line.maxX, line.minX];
  const [right, left] = [east + BESIDE + width / 2, west - BESIDE - width / 2];
  const [above, below] = [line.maxY + BESIDE / 2 + height / 2, line.minY - BESIDE / 2 - height / 2];
  const across: Point[] = [
    [right, y],
    [left, y],
  ];
  const along: Point[] = [
    [x, isUpright ? above : y + BESIDE / 2 + height / 2],
    [x, isUpright ? below : y - BESIDE / 2 - height / 2],
  ];
  const corners = [above, above + height, below, below - height].flatMap((up): Point[] => [
    [right, up],
    [left, up],
    [x, up],
  ]);
  const places = isUpright ? [...across, ...along, ...corners] : [...along, ...corners, ...across];
  const [toX, toY] = placer.placeAmong(places, width + CLEAR, height + CLEAR / 2) ?? [right, y];
  return [toX / k, toY / k];
}
