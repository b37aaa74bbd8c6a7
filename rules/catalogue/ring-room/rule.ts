import { regionContains } from "../../../geometry/clipping.ts";
import { lengthWithin, pointToArea, pointToPath } from "../../../geometry/distance.ts";
import { edgeLength, pointAt, tangentAt } from "../../../geometry/edge.ts";
import { contains } from "../../../geometry/outline.ts";
import { between } from "../../../geometry/points.ts";
import { LIMIT_TOLERANCE } from "../../../geometry/tolerances.ts";
import type { Area, Witness } from "../../../geometry/types.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import { perimeterMethods } from "../../perimeter/methods.ts";
import { perimeterCopper } from "../../recorded/bearers.ts";
import type { KnownElement, WallElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { ON_BARRIERS } from "../common/rests-on.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, settle, speakerOf, subjectName, witnessLine, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";
import { lengthWithoutRoom } from "./keep-outs.ts";

export const rule: Rule = {
  id: "ring-room",
  title: "Room for the ring",
  part: "perimeter",
  sections: everyEdition("680.26(B)(2)"),
  subjects:
    "Each wall or building that ends the perimeter, or may, and stands nearer to the water than a ring may lie, and each keep-out that covers all the ground in which one may lie, where the plan lays a ring.",
  measure: "The straight distance from the inside wall to its face, and how far it leaves no room.",
  parameters: ["ring.min", "ring.max", "perimeter.width"],
  bodyByBody: true,
  protects: "A ring squeezed against the shell, or left out behind a wall, leaves the strip in front of it unbonded.",
  judge: (yard) => bondedBodies(yard).flatMap((body) => judgeBody(yard, body)),
};

const ROOM_QUESTION = yesNo(
  "ring-too-near",
  "Does the authority having jurisdiction accept the ring nearer to the inside wall here than it is written?",
  ON_BARRIERS,
);

/** How far apart a face is looked at, inches. */
const STEP = 3;

function judgeBody(yard: Yard, body: Body): Verdict[] {
  if (!perimeterMethods(yard, body).some(({ planned }) => planned === "ring")) return [];
  const { counted, possible } = yard.barriers("band", body);
  const ends = new Set([...counted, ...possible].map(({ id }) => id));
  const near = yard.edition.value("ring.min") + yard.accuracy;
  const reaches = (element: KnownElement, beyond: number) =>
    ends.has(element.id) && yard.straight(element, body).length <= near + beyond;
  const standing: { element: KnownElement; area: Area; unsure: number }[] = [
    ...yard.walls
      .filter(({ element, thickness }) => reaches(element, thickness + unsureOf(element)))
      .map(({ element, footprint }) => ({ element, area: footprint, unsure: unsureOf(element) })),
    ...yard.buildings.filter(({ element }) => reaches(element, 0)).map((building) => ({ ...building, unsure: 0 })),
  ];
  return [
    ...standing.flatMap(({ element, area, unsure }) => {
      const face = nearFace(yard, body, area, unsure);
      if (face === null) return [];
      return [
        judgeNear(yard, body, element, face, (extent) => standsIn(yard, body, element, face, extent, unsure > 0)),
      ];
    }),
    ...judgeKeepOuts(yard, body),
  ];
}

function judgeKeepOuts(yard: Yard, body: Body): Verdict[] {
  const [min, max] = [yard.edition.value("ring.min"), yard.edition.value("ring.max")];
  const ringed = perimeterMethods(yard, body).flatMap(({ planned, piece }) =>
    planned === "ring" ? [piece.region] : [],
  );
  return yard.all("keep-out").flatMap((element) => {
    const shape = yard.shape(element);
    const witness = yard.straight(element, body);
    if (shape.kind !== "area" || witness.length > min + yard.accuracy) return [];
    const extent = lengthWithoutRoom(yard, body, shape.area, ringed);
    if (extent === 0) return [];
    const say = speakerOf(yard);
    return [
      judgeNear(yard, body, element, { witness, extent }, (along) => {
        return `${subjectName(element)} covers the ground in which a ring may lie, ${say.length(min)} to ${say.length(max)} from the inside wall of ${elementName(body.element)}: along ${along} there is no room for one.`;
      }),
    ];
  });
}

/** Half of the thickest wall that is usual in a yard, inches. Judgement, no source. */
const HALF_OF_A_THICK_WALL = 12;

/** How much nearer a wall's face may stand than it is drawn, where its thickness is not given, inches. */
function unsureOf({ thickness }: WallElement): number {
  return thickness === undefined ? HALF_OF_A_THICK_WALL : 0;
}

interface NearFace {
  readonly witness: Witness;
  /** How far the face runs too near, inches, to a few inches. */
  readonly extent: number;
}

/** The part of a face that leaves a ring too little ground between itself and the water; null where there is none. */
function nearFace(yard: Yard, body: Body, area: Area, unsure: number): NearFace | null {
  const off = yard.accuracy + unsure;
  const min = yard.edition.value("ring.min");
  const limit = off > 0 ? min + off : min - 2 * LIMIT_TOLERANCE;
  const ringed = perimeterMethods(yard, body).filter(({ planned }) => planned === "ring");
  let witness: Witness | null = null;
  let extent = 0;
  for (const path of [area.outer, ...area.holes]) {
    for (const edge of lengthWithin(path, body.water, limit).pieces.flatMap((piece) => piece.edges)) {
      const length = edgeLength(edge);
      const count = Math.max(1, Math.ceil(length / STEP));
      const stepOf = (t: number): Witness | null => {
        const found = pointToArea(pointAt(edge, t), body.water);
        const [dx, dy] = tangentAt(edge, t);
        if (found.length <= LIMIT_TOLERANCE || hides(area, found) || runsAlong(found, dx, dy)) return null;
        const middle = between(found.from, found.to, 1 / 2);
        return ringed.some(({ piece }) => regionContains(piece.region, middle)) ? found : null;
      };
      for (let i = 0; i < count; i++) {
        // The middle of a step decides: its ends may be corners, where two answers are as good.
        const middle = stepOf((i + 1 / 2) / count);
        if (middle === null) continue;
        extent += length / count;
        for (const found of [middle, stepOf(i / count), stepOf((i + 1) / count)])
          if (found !== null && (witness === null || found.length < witness.length)) witness = found;
      }
    }
  }
  return witness === null ? null : { witness, extent };
}

/**
 * Whether a place is on the far face: what it belongs to lies just before it, or ends there along the way to the water. A
 * building may hold the pool.
 */
function hides(area: Area, found: Witness): boolean {
  const start = between(found.from, found.to, NEAR_AN_END);
  const holds = contains(area, start) && pointToPath(start, area.outer).length > LIMIT_TOLERANCE;
  return !holds && contains(area, between(found.from, found.to, 1 - NEAR_AN_END));
}

/** Share of the way from the water to a face within which a place counts as at its end. */
const NEAR_AN_END = 0.02;

/** Whether a face runs straight away from the water, as the side of a building does that rises at the pool's edge. */
function runsAlong({ from, to, length }: Witness, dx: number, dy: number): boolean {
  return Math.abs(dx * (to[0] - from[0]) + dy * (to[1] - from[1])) > ALONG * length * Math.hypot(dx, dy);
}

/** Cosine of the least angle between a face and the way to the water from which it stands across it. */
const ALONG = 0.98;

/** What a wall or building does to the ring, in words. */
function standsIn(yard: Yard, body: Body, element: KnownElement, { witness }: NearFace, along: string, thin: boolean) {
  const say = speakerOf(yard);
  const min = yard.edition.value("ring.min");
  const unsure = witness.length >= min - 2 * LIMIT_TOLERANCE || yard.accuracy > 0;
  const ends = yard.barriers("band", body).counted.some(({ id }) => id === element.id) ? "ends" : "may end";
  return `${subjectName(element)} ${ends} the perimeter ${say.length(witness.length, min)} from the inside wall of ${elementName(body.element)}, and a ring lies at least ${say.length(min)} from it: along ${along} ${unsure ? "it is not sure that there is such room" : "there is no such room"}.${thin ? " Its thickness is not given." : ""}`;
}

function judgeNear(
  yard: Yard,
  body: Body,
  element: KnownElement,
  { witness, extent }: NearFace,
  words: (extent: string) => string,
): Verdict {
  const say = speakerOf(yard);
  const min = yard.edition.value("ring.min");
  const base = {
    ...BARE,
    element: element.id,
    body: body.id,
    measured: { horizontal: witness.length },
    required: { horizontal: min },
    margin: witness.length - min,
    extent,
    limits: ["ring.min"] as const,
    witness: witnessLine(witness),
  };
  const band = yard.edition.value("perimeter.width");
  if (perimeterCopper(yard).some((copper) => yard.straight(copper, body).length <= band)) {
    const why = `${subjectName(element)} stands ${say.length(witness.length, min)} from the inside wall of ${elementName(body.element)}. The perimeter copper recorded here is judged where it lies.`;
    return { ...base, outcome: "exempt", why };
  }
  const settled = settle(yard, ROOM_QUESTION, element.id, body.id);
  const lead = words(say.length(extent)) + settled.note;
  if (settled.choice === "yes") return { ...base, ...settled.trace, outcome: "meets", why: lead };
  const remedy =
    "Keep the ring on the pool side and ask the authority having jurisdiction, bond that stretch by steel or a grid where those serve, or move one of the two.";
  if (settled.choice === "no") return { ...base, ...settled.trace, outcome: "conflict", why: lead, remedy };
  return { ...base, ...settled.trace, outcome: "review", why: lead, remedy, question: ROOM_QUESTION };
}
