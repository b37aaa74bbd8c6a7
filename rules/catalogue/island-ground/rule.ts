/**
 * Islands on which no loop of perimeter bonding has room.
 *
 * Their ground lies within the perimeter band as any other, but the ring round the pool stays outside of the water and
 * serves none of it, and no loop that the record could be held against runs there. So it is a question, never silence.
 */

import { intersectRegions, regionArea } from "../../../geometry/clipping.ts";
import { pointToArea } from "../../../geometry/distance.ts";
import { areaOfPaths, centroidOf, contains, flattenArea, pointAlong } from "../../../geometry/outline.ts";
import type { Area } from "../../../geometry/types.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import { perimeterMethods } from "../../perimeter/methods.ts";
import { perimeterLoops } from "../../recorded/loop-course.ts";
import { elementName } from "../../words/element-names.ts";
import { areaText } from "../../words/lengths.ts";
import { ON_PERIMETER } from "../common/rests-on.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, settle, speakerOf, witnessLine, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "island-ground",
  title: "Ground of small islands",
  part: "perimeter",
  sections: everyEdition("680.26(B)(2)"),
  subjects: "Each body of water with islands on which no loop of perimeter bonding has room.",
  measure: "How much of their ground lies within the perimeter band and is to be bonded.",
  parameters: ["ring.min", "ring.max", "perimeter.width"],
  protects: "An island with nothing under it may differ in voltage from the water that a person steps out of.",
  judge: (yard) => bondedBodies(yard).flatMap((body) => judgeBody(yard, body)),
};

const ISLAND_QUESTION = yesNo(
  "island-ground",
  "Is the ground of these islands bonded and joined to the rest as the authority having jurisdiction asks?",
  ON_PERIMETER,
);

/** Less ground than this, square inches, is what chords leave between an island and what stands on it. */
const LEAST_GROUND = 1;

function judgeBody(yard: Yard, body: Body): Verdict[] {
  const needing = perimeterMethods(yard, body).filter(({ planned }) => planned !== "none-needed");
  const unserved = body.water.holes
    .map((hole) => areaOfPaths(hole))
    .filter((island) => !hasLoop(yard, island))
    .map((island) => ({ island, ground: groundOn(island, needing) }))
    .filter(({ ground }) => ground > LEAST_GROUND);
  const [first] = unserved;
  if (!first) return [];
  const say = speakerOf(yard);
  const area = unserved.reduce((sum, { ground }) => sum + ground, 0);
  const middle = centroidOf(first.island);
  const settled = settle(yard, ISLAND_QUESTION, null, body.id);
  const many = unserved.length > 1;
  const which = many ? `${unserved.length} islands` : "An island";
  const lead = `${which} in ${elementName(body.element)} ${many ? "leave" : "leaves"} a ring no room ${say.length(yard.edition.value("ring.min"))} to ${say.length(yard.edition.value("ring.max"))} from the water on both sides. ${areaText(area, yard.site.display?.units)} of ground there lie within the perimeter, and the ring round the pool does not serve them.${settled.note}`;
  const base = {
    ...BARE,
    element: null,
    body: body.id,
    measured: { area },
    witness: contains(first.island, middle) ? witnessLine(pointToArea(middle, body.water)) : [],
    limits: ["ring.min", "ring.max", "perimeter.width"] as const,
    basis: "judgement" as const,
    why: lead,
    ...settled.trace,
  };
  const remedy =
    "Bond that ground by steel in its paving or a grid under it, join it to the shell's steel or by a jumper to the ring, and show the authority having jurisdiction before it is covered.";
  if (settled.choice === "yes") return [{ ...base, outcome: "meets" }];
  if (settled.choice === "no") return [{ ...base, outcome: "conflict", remedy }];
  return [{ ...base, outcome: "review", remedy, question: ISLAND_QUESTION }];
}

function hasLoop(yard: Yard, island: Area): boolean {
  return perimeterLoops(yard).some(({ path }) => contains(island, pointAlong(path, 0)));
}

/** Square inches of an island within pieces of the band. */
function groundOn(island: Area, pieces: ReturnType<typeof perimeterMethods>): number {
  const region = flattenArea(island);
  return pieces.reduce((sum, { piece }) => sum + regionArea(intersectRegions(piece.region, region)), 0);
}
