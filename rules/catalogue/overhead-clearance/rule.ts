/**
 * Overhead lines near the water, in space.
 *
 * Stages. 1. The stretches of the line in the prism: as far out from the inside wall as the clearance reaches, and over
 * stands and platforms. None: exempt. 2. The least clearance in space from them to each target. 3. What is argued: whether
 * the same row keeps power lines out of the prism altogether.
 */
import {
  type Clearance,
  clearanceOver,
  lowestHeight,
  type SpacePoint,
  type Stretch,
  spansOf,
  stretchesWithin,
} from "../../../geometry/overhead.ts";
import { LIMIT_TOLERANCE } from "../../../geometry/tolerances.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { OverheadElement } from "../../site/elements.ts";
import { worstOf } from "../across-bodies.ts";
import { clearanceVerdict } from "../common/clearance-verdict.ts";
import { ON_STRUCTURES } from "../common/rests-on.ts";
import { all, atLeast, eitherWay, notGiven, open, type Truth, withinAccuracy, YES } from "../common/truth.ts";
import { BARE, speakerOf, subjectName, witnessLine } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";
import { standsOf, type Target, targetsOf } from "./targets.ts";

export const rule: Rule = {
  id: "overhead-clearance",
  title: "Overhead lines",
  part: "overhead",
  sections: everyEdition("680.9(A)"),
  subjects: "Each overhead line.",
  measure:
    "Its least distance in space, with its sag, to the water, its edge and the structures of the pool, as far out as the clearance reaches.",
  parameters: [
    "overhead.insulated750",
    "overhead.to15kv",
    "overhead.to50kv",
    "overhead.communications",
    "overhead.broadband",
    "overhead.platformInsulated750",
    "overhead.platformTo15kv",
    "overhead.platformTo50kv",
    "overhead.platformBroadband",
    "overhead.reach",
  ],
  protects: "The long aluminum pole of a skimmer net, lifted out of the water, reaches a wire that hangs too low.",
  judge: (yard) =>
    yard.each(rule.id, "overhead-line", (line) => {
      const worst = worstOf(yard.bodies, (body) => judgeAt(yard, body, line));
      return worst ? [worst] : [];
    }),
};

const SECTIONS: Readonly<Record<OverheadElement["class"], string>> = {
  "insulated-750": "680.9(A)",
  "to-15kv": "680.9(A)",
  "to-50kv": "680.9(A)",
  communications: "680.9(B)",
  broadband: "680.9(C)",
};

interface Held {
  readonly target: Target;
  readonly clearance: Clearance;
  readonly limit: number;
  readonly truth: Truth;
}

function judgeAt(yard: Yard, body: Body, line: OverheadElement): Verdict {
  const say = speakerOf(yard);
  const reach = yard.edition.value("overhead.reach");
  const straight = yard.straight(line, body);
  const name = subjectName(line);
  const section = SECTIONS[line.class];
  const base = { ...BARE, section, element: line.id, body: body.id, measured: { horizontal: straight.length } };
  const heights = line.path.vertices.map(([x, y, z]) => (z === undefined ? null : ([x, y, z] as SpacePoint)));
  const drawn = heights.filter((vertex) => vertex !== null);
  const plan = line.path.vertices.map(([x, y, z]): SpacePoint => [x, y, z ?? 0]);
  const stretches = stretchesOf(yard, body, spansOf(plan, line.sag ?? 0), reach + yard.accuracy);
  if (stretches.length === 0) {
    const why = `${name} stays ${say.length(straight.length, reach)} from the inside wall; the clearance reaches out to ${say.length(reach)}, and to the edge of stands and platforms.`;
    return {
      ...base,
      required: { horizontal: reach },
      margin: straight.length - reach,
      witness: witnessLine(straight),
      limits: ["overhead.reach"],
      outcome: "exempt",
      why,
    };
  }
  const targets = targetsOf(yard, body, line);
  const held = drawn.length < heights.length ? [] : targets.flatMap((target) => holdAgainst(yard, stretches, target));
  const worst = [...held].sort((a, b) => a.clearance.distance - a.limit - (b.clearance.distance - b.limit))[0];
  const unknown = [
    ...(drawn.length < heights.length ? [open(NO_HEIGHT)] : []),
    ...(line.sag === undefined ? [open(NO_SAG)] : []),
    ...targets.flatMap(({ level, field, name: what }) =>
      level === undefined ? [open(notGiven(field, `How high ${what} is`, "Is it clear of it?"))] : [],
    ),
  ];
  const clear = all(...held.map(({ truth }) => truth), ...unknown);
  const isInside = straight.length < reach - LIMIT_TOLERANCE;
  const isPower = line.class !== "communications";
  const argued = isInside && isPower ? all(clear, open(ROW_ARGUED)) : clear;
  const farther = withinAccuracy(yard, reach, "its distance in plan to the inside wall", "more than");
  const isDoubtful = yard.accuracy > 0 && straight.length >= reach - yard.accuracy - LIMIT_TOLERANCE;
  const truth = isDoubtful && !overStands(yard, body, stretches) ? eitherWay(argued, YES, farther) : argued;
  const limit = worst?.limit ?? yard.edition.value(targets[0]?.parameter ?? "overhead.insulated750");
  const lowest = Math.min(...stretches.map(lowestHeight)) - body.waterLevel;
  const words = worst
    ? `${name} comes within ${say.length(worst.clearance.distance, limit)} of ${worst.target.name}`
    : `${name} passes over or near the water`;
  return clearanceVerdict(
    yard,
    {
      ...base,
      measured: {
        ...base.measured,
        ...(held.length > 0 ? { vertical: lowest } : {}),
        ...(worst ? { clearance: worst.clearance.distance } : {}),
      },
      required: { clearance: limit },
      margin: worst ? worst.clearance.distance - limit : null,
      witness: worst ? [worst.clearance.from, worst.clearance.to] : witnessLine(straight),
      limits: [worst?.target.parameter ?? targets[0]?.parameter ?? "overhead.insulated750", "overhead.reach"],
    },
    truth,
    {
      question: "overhead-clearance",
      restsOn: ON_STRUCTURES,
      is: words,
      wanted: `at least ${say.length(limit)} in any direction are asked for`,
      breaks: `at least ${say.length(limit)} in any direction are asked for`,
      remedy: `Have the line moved, raised or buried, so that it clears ${worst?.target.name ?? "the water"} by at least ${say.length(limit)}, or move the pool.`,
    },
  );
}

/** Stage 1. */
function stretchesOf(yard: Yard, body: Body, spans: ReturnType<typeof spansOf>, reach: number): Stretch[] {
  const over = standsOf(yard, body).flatMap((structure) => {
    const shape = yard.shape(structure);
    return shape.kind === "area" ? stretchesWithin(spans, shape.area, 0) : [];
  });
  return [...stretchesWithin(spans, body.water, reach), ...over];
}

function overStands(yard: Yard, body: Body, stretches: readonly Stretch[]): boolean {
  const spans = stretches.map(({ span }) => span);
  return standsOf(yard, body).some((structure) => {
    const shape = yard.shape(structure);
    return shape.kind === "area" && stretchesWithin(spans, shape.area, 0).length > 0;
  });
}

/** Stage 2. */
function holdAgainst(yard: Yard, stretches: readonly Stretch[], target: Target): Held[] {
  if (target.level === undefined) return [];
  const clearance = clearanceOver(stretches, target.area, target.level);
  if (clearance === null) return [];
  const limit = yard.edition.value(target.parameter);
  const truth = atLeast(yard, clearance.distance, limit, "its clearance in space");
  const asArgued = target.argued && truth.state === "no" ? open(SLIDE_ARGUED) : truth;
  return [{ target, clearance, limit, truth: asArgued }];
}

const NO_SAG = notGiven("sag", "How far it hangs below the straight at mid-span", "Does it clear with its sag?");

const NO_HEIGHT = notGiven("z", "How high it hangs at every one of its ends", "Does it hang high enough?");

const ROW_ARGUED = {
  says: "It hangs over the ground to which the clearance reaches: whether the same row keeps power lines out of there altogether, however high, is argued.",
  asks: "Does the authority having jurisdiction allow this line over the pool and the ground round it, at this clearance?",
  remedy: "Ask the authority having jurisdiction",
};

const SLIDE_ARGUED = {
  says: "It comes near to a slide, which the code does not name beside stands, towers and diving platforms.",
  asks: "Is this clearance to the slide enough for the authority having jurisdiction?",
  remedy: "Ask the authority having jurisdiction",
};
