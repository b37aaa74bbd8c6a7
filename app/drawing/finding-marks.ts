/** The numbers of the findings on the plan: those of one element in a row, with one leader to what they are about. */
import { centroidOf, pathLength, pointAlong } from "../../geometry/outline.ts";
import type { Point } from "../../geometry/types.ts";
import type { NumberedFinding } from "../../rules/findings-by-part.ts";
import { shapeOf } from "../../rules/measures/shapes.ts";
import { OUTCOMES_WORST_FIRST } from "../../rules/report.ts";
import { placeInBand, seenMiddle } from "./area-names.ts";
import { isKnown } from "./drafting.ts";
import type { Lettering } from "./lettering.ts";
import { markDrawing } from "./mark-shapes.ts";

/** Space between the marks of a row, points. */
const GAP = 1.2;
/** The most marks in a row. */
const ROW = 5;
/** Farthest a mark may stand from its element, points: farther than any sheet is wide. */
const FARTHEST = 1200;

/** Draws the marks. `waterNames`: where the names of bodies of water stand, paper; their own findings go beneath. */
export function drawMarks(
  findings: readonly NumberedFinding[],
  waterNames: ReadonlyMap<string, Point>,
  lettering: Lettering,
): void {
  const groups = new Map<string, Group>();
  for (const one of findings) {
    const about = one.finding.element ?? one.finding.body;
    if (about === null) continue;
    // A surface may be judged by several bodies, each at its own place.
    const isSurface = lettering.drafting.byId.get(about)?.kind === "surface";
    const key = JSON.stringify([about, isSurface ? one.finding.body : null]);
    const group = groups.get(key);
    if (group) group.row.push(one);
    else groups.set(key, { about, row: [one] });
  }
  const urgency = ({ row }: Group) =>
    Math.min(...row.map(({ finding }) => OUTCOMES_WORST_FIRST.indexOf(finding.outcome)));
  const isWater = ({ about }: Group) => Number(waterNames.has(about));
  const sorted = [...groups.values()].sort((a, b) => isWater(b) - isWater(a) || urgency(a) - urgency(b));
  for (const { about, row } of sorted) {
    const name = waterNames.get(about);
    for (let i = 0; i < row.length; i += ROW) drawRow(about, row.slice(i, i + ROW), name, lettering);
  }
}

interface Group {
  readonly about: string;
  readonly row: NumberedFinding[];
}

function drawRow(about: string, row: readonly NumberedFinding[], name: Point | undefined, lettering: Lettering): void {
  const { drafting, placer, toSite } = lettering;
  const drawings = row.map(({ number, finding }) => markDrawing(finding.outcome, String(number)));
  const width = drawings.reduce((sum, mark) => sum + mark.width + GAP, -GAP);
  const height = Math.max(...drawings.map((mark) => mark.height));
  const anchor = name ?? anchorOf(about, row, lettering);
  if (anchor === null) return;
  const beneath = name ? placer.placeAmong(rowsBeneath(name, height), width + 2, height + 1) : null;
  const center =
    beneath ?? placer.place({ anchor, width: width + 2, height: height + 1, least: height / 2 + 6, most: FARTHEST });
  if (center === null) {
    drafting.unmarked.push(...row.map(({ number }) => number));
    return;
  }
  const needsLeader = beneath === null;
  const leaderStart = movedToward(anchor, center, name ? 0 : drafting.symbolReach(about));
  let x = center[0] - width / 2;
  row.forEach(({ number, finding }, i) => {
    const mark = drawings[i];
    if (!mark) return;
    const at: Point = [x + mark.width / 2, center[1]];
    drafting.add("marks", {
      kind: "mark",
      at: toSite(at),
      beside: { of: toSite(anchor), by: apart(anchor, at), from: apart(anchor, leaderStart) },
      from: i === 0 && needsLeader ? toSite(leaderStart) : null,
      number,
      outcome: finding.outcome,
      element: about,
      findings: [finding.id],
    });
    x += mark.width + GAP;
  });
  if (needsLeader) placer.addInk([anchor, center]);
}

function apart(from: Point, to: Point): Point {
  return [to[0] - from[0], to[1] - from[1]];
}

function movedToward([x, y]: Point, target: Point, distance: number): Point {
  const length = Math.hypot(target[0] - x, target[1] - y);
  if (length <= distance || distance === 0) return [x, y];
  return [x + ((target[0] - x) * distance) / length, y + ((target[1] - y) * distance) / length];
}

/** Places for rows of marks beneath a name, then above it. */
function rowsBeneath(name: Point, height: number): Point[] {
  return [1, 2, 3, 4, -1, -2].map((row) => [name[0], name[1] - row * (height + 2) - Math.sign(row) * 2]);
}

/** What the leader points to, paper: where the worst finding was measured, else the middle of what is seen of the element. */
function anchorOf(about: string, row: readonly NumberedFinding[], lettering: Lettering): Point | null {
  const { drafting, toPaper } = lettering;
  const element = drafting.byId.get(about);
  if (!element || !isKnown(element)) return null;
  if (element.kind === "surface") {
    const inBand = placeInBand(element, row[0]?.finding.body ?? null, lettering);
    if (inBand !== null) return toPaper(inBand);
  } else if (element.kind !== "pool") {
    for (const { finding } of row) {
      const end = finding.witness[finding.witness.length - 1];
      if (finding.element !== null && end) return toPaper(end);
    }
  }
  const shape = shapeOf(element);
  switch (shape.kind) {
    case "point":
      return toPaper(shape.at);
    case "path":
      return toPaper(pointAlong(shape.path, pathLength(shape.path) / 2));
    case "area":
      return toPaper(seenMiddle(element, lettering) ?? centroidOf(shape.area));
  }
}
