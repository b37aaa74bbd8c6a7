/**
 * Names, numbers and marks of the plan, placed so that none lies on another.
 *
 * Stages: symbols and dimension figures are blocked, lines inked -> names of water -> findings' marks, those of one
 * element in one row with one leader -> tie numbers -> measured distances -> names of everything else
 * -> letters along lines.
 */
import { boundsOfPoints, grownBounds } from "../../geometry/points.ts";
import type { Bounds, Point } from "../../geometry/types.ts";
import { findingsByPart, type NumberedFinding, partOf } from "../../rules/findings-by-part.ts";
import type { Finding } from "../../rules/report.ts";
import { drawAreaNames, drawWaterNames } from "./area-names.ts";
import type { Drafting } from "./drafting.ts";
import { drawMarks } from "./finding-marks.ts";
import { inkShape } from "./ink.ts";
import { drawLineLetters } from "./line-letters.ts";
import { boxAround, Placer } from "./placement.ts";
import type { SceneOptions } from "./plan-scene.ts";
import { type Item, type LayerName, type MarkChoice, TEXT_POINTS, type TextItem } from "./scene.ts";
import { lineSteps } from "./steps.ts";
import { SYMBOLS } from "./symbols.ts";
import { itemPoints } from "./text-width.ts";
import { lengthOf, middleOf, witnessWords } from "./witness-words.ts";

/** Findings up to this many all get their mark on the plan; of more, only those that are not settled. */
const FEW_FINDINGS = 60;
/** Paper round the drawing in which marks may stand, points. */
export const LETTERING_MARGIN = 14;

/** Layers whose lines should stay readable, and layers whose symbols may not be covered. */
const INKED: readonly LayerName[] = [
  "water",
  "walls",
  "fences",
  "buildings",
  "ring",
  "branches",
  "recorded",
  "dimensions",
  "metal",
  "ties",
];

/** Between site inches and the points of paper that the placer works in. */
export interface Lettering {
  readonly drafting: Drafting;
  readonly placer: Placer;
  readonly toPaper: (p: Point) => Point;
  readonly toSite: (p: Point) => Point;
}

export function drawLettering(bounds: Bounds, options: SceneOptions, drafting: Drafting): void {
  const k = drafting.pointsPerInch;
  const toPaper = ([x, y]: Point): Point => [x * k, y * k];
  const toSite = ([x, y]: Point): Point => [x / k, y / k];
  const corners = [toPaper([bounds.minX, bounds.minY]), toPaper([bounds.maxX, bounds.maxY])];
  const placer = new Placer(grownBounds(boundsOfPoints(corners), LETTERING_MARGIN));
  const lettering: Lettering = { drafting, placer, toPaper, toSite };
  blockSymbols(lettering);
  for (const layer of INKED) {
    for (const item of drafting.itemsOf(layer)) if (item.kind === "shape") inkShape(item, placer, toPaper);
  }
  const waterNames = drawWaterNames(lettering);
  const findings = chosenFindings(options, drafting);
  drawMarks(findings, waterNames, lettering);
  drawTieNumbers(lettering);
  for (const { finding } of findings) drawWitness(finding, lettering);
  drawAreaNames(lettering);
  drawLineLetters(lettering);
}

function findingsOfPart(options: SceneOptions, drafting: Drafting): NumberedFinding[] {
  const all = findingsByPart(drafting.report).flatMap(({ findings }) => findings);
  return options.part === undefined ? all : all.filter(({ finding }) => partOf(finding) === options.part);
}

/** Which findings get their number on the plan. */
export function marksFor(options: SceneOptions, drafting: Drafting): MarkChoice {
  return options.marks ?? (findingsOfPart(options, drafting).length <= FEW_FINDINGS ? "all" : "open");
}

function chosenFindings(options: SceneOptions, drafting: Drafting): NumberedFinding[] {
  const choice = marksFor(options, drafting);
  if (choice === "none") return [];
  const findings = findingsOfPart(options, drafting);
  return choice === "all" ? findings : findings.filter(({ finding }) => isOpen(finding));
}

/** Whether something is still to be done or settled. */
export function isOpen(finding: Pick<Finding, "outcome">): boolean {
  return finding.outcome !== "meets" && finding.outcome !== "exempt";
}

function blockSymbols({ drafting, placer, toPaper }: Lettering): void {
  for (const { items } of drafting.layers()) {
    for (const item of items) {
      if (item.kind === "symbol" && item.role !== "fence") {
        const size = 2 * SYMBOLS[item.symbol].reach + 1;
        placer.block(boxAround(toPaper(item.at), size, size));
      }
      if (item.kind === "text") placer.block(textBox(item, toPaper));
    }
  }
}

/** The box of a line of type, upright or turned by quarter turns; other turns take the box round it. */
function textBox(item: Extract<Item, { kind: "text" }>, toPaper: (p: Point) => Point): Bounds {
  const width = itemPoints(item) + 2;
  const height = TEXT_POINTS[item.size] + 1;
  const angle = (item.turn * Math.PI) / 180;
  const [x, y] = toPaper(item.at);
  const shift = item.anchor === "start" ? width / 2 : item.anchor === "end" ? -width / 2 : 0;
  const up = height / 2 - 2;
  const center: Point = [
    x + shift * Math.cos(angle) - up * Math.sin(angle),
    y + shift * Math.sin(angle) + up * Math.cos(angle),
  ];
  const cos = Math.abs(Math.cos(angle));
  const sin = Math.abs(Math.sin(angle));
  return boxAround(center, width * cos + height * sin, width * sin + height * cos);
}

/** T1, T2 ... beside the ties, and a mark at the corner from which their places are taped. */
function drawTieNumbers(lettering: Lettering): void {
  const { drafting, placer, toPaper } = lettering;
  drafting.report.ties.forEach((tie, i) => {
    const text = `T${i + 1}`;
    const width = itemPoints({ text, size: "small", strong: true }) + 2;
    const outward = Math.atan2(tie.to[1] - tie.at[1], tie.to[0] - tie.at[0]);
    const wish = { anchor: toPaper(tie.to), width, height: 7, least: 8, most: 40, toward: outward + 0.8 };
    const center = placer.place(wish);
    if (center === null) return;
    drafting.add("names", {
      kind: "text",
      ...standsBeside(tie.to, center, lettering),
      tie: i,
      text,
      size: "small",
      role: "copper",
      anchor: "middle",
      turn: 0,
      strong: true,
      plate: true,
      ...(tie.recorded === null ? {} : { element: tie.recorded }),
    });
  });
  const tied = new Set(drafting.report.ties.flatMap((tie) => tie.between));
  for (const pool of drafting.pools) {
    const [corner] = pool.outline.vertices;
    if (!tied.has(pool.id) || !corner) continue;
    const at: Point = [corner[0], corner[1]];
    drafting.add("names", {
      kind: "symbol",
      symbol: "first-corner",
      at,
      turn: 180,
      role: "ink-fill",
      element: pool.id,
    });
    placer.block(boxAround(toPaper([at[0], at[1]]), 5, 9));
  }
}

/** Where a small line of type stands that is centered on a place of the paper, and beside what. */
function standsBeside(of: Point, [x, y]: Point, { toPaper, toSite }: Lettering): Pick<TextItem, "at" | "beside"> {
  const base: Point = [x, y - 2.1];
  const from = toPaper(of);
  return { at: toSite(base), beside: { of, by: [base[0] - from[0], base[1] - from[1]] } };
}

/** The line that was measured for a finding that is not settled, with its length where there is room. */
function drawWitness(finding: Finding, lettering: Lettering): void {
  const { drafting, placer, toPaper } = lettering;
  const { witness } = finding;
  const [first] = witness;
  const last = witness[witness.length - 1];
  const length = lengthOf(witness);
  const isMeasured = Object.keys(finding.required).length > 0;
  if (!isOpen(finding) || !isMeasured || finding.element === null || !first || !last || length === 0) return;
  if (!drafting.byId.has(finding.element)) return;
  const about = { element: finding.element, findings: [finding.id] };
  drafting.add("witnesses", { kind: "shape", role: "witness", steps: lineSteps(witness), ...about });
  for (const at of [first, last]) {
    drafting.add("witnesses", { kind: "symbol", symbol: "witness-end", at, turn: 0, role: "witness", ...about });
  }
  placer.addInk(witness.map(toPaper));
  const [text] = witnessWords(finding, drafting.units);
  const width = itemPoints({ text, size: "small" }) + 2;
  const center = placer.place({ anchor: toPaper(middleOf(witness)), width, height: 7, least: 6, most: 16 });
  if (center === null) return;
  drafting.add("witnesses", {
    kind: "text",
    ...standsBeside(middleOf(witness), center, lettering),
    text,
    size: "small",
    role: "measure",
    anchor: "middle",
    turn: 0,
    plate: true,
    ...about,
  });
}
