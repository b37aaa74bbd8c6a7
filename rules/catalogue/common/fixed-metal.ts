/**
 * Fixed metal near one body of water: needs bonding, unless it is far, high, or behind a barrier that prevents contact.
 *
 * Stages. 1. Straight distance beyond the limit: exempt. 2. Lowest point high above the water and above every stand:
 * exempt. 3. What is in doubt, one question after the other: the distance within the drawing's accuracy, a barrier, the
 * thing itself (argued), the height. An answer that frees it exempts, any other goes on to the next. 4. Needs bonding.
 * Source: NEC 680.26(B)(7), restated.
 */
import { LIMIT_TOLERANCE } from "../../../geometry/tolerances.ts";
import type { Route, Witness } from "../../../geometry/types.ts";
import type { ParameterId } from "../../editions/parameter-types.ts";
import { exceeds } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import type { KnownElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import type { Verdict } from "../rule.ts";
import { heightOf } from "./metal-height.ts";
import { ON_BARRIERS, ON_STRUCTURES } from "./rests-on.ts";
import { BARE, type Draft, settle, speakerOf, witnessLine, yesNo } from "./verdicts.ts";

export interface FixedMetal {
  readonly element: KnownElement;
  /** At the start of a sentence. */
  readonly name: string;
  readonly straight: Witness;
  /** Shortest way to the inside wall round what stands between. */
  readonly path: Route | null;
  /** Level of its lowest point; `ground`: it reaches the ground, so height frees it never; null: not given. */
  readonly lowest: number | "ground" | null;
  /** Inches of a line within the limit. */
  readonly extent?: number | undefined;
  /** What is argued about the thing itself; asked for only near the water, as is the remedy. */
  doubt?(): Doubt | undefined;
  /** Copper that it takes. */
  remedy(): string;
}

/** Something that one answer settles. */
export interface Doubt {
  readonly question: Question;
  /** The option that frees the thing. */
  readonly frees: string;
  readonly why: string;
  readonly remedy: string;
  /** Said when the answer frees it. */
  readonly freed: string;
}

export const FIXED_METAL_LIMITS: readonly ParameterId[] = [
  "fixedMetal.distance",
  "fixedMetal.height",
  "fixedMetal.standWithin",
];

/** What an answer about the thing itself stands beside. */
const ANSWERED_LIMITS = ["fixedMetal.distance", "fixedMetal.height"] as const;

/** The verdict on a piece of fixed metal as seen from one body, without its need. */
export function judgeFixedMetal(yard: Yard, body: Body, metal: FixedMetal): Verdict {
  // Most metal of a yard stands far off: its verdict is made here, without whatever the near ones need.
  const far = exceeds(metal.straight.length, yard.edition.value("fixedMetal.distance"), yard.accuracy);
  return far === "yes" ? farVerdict(yard, body, metal) : judgeNear(yard, body, metal, far);
}

function farVerdict(yard: Yard, body: Body, metal: FixedMetal): Verdict {
  const { limit, heightLimit, where } = yard.keptOf(body.element, "beyond reach", () => beyondReach(yard, body));
  const { straight, path, lowest, extent } = metal;
  const away = straight.length;
  const verdict: Draft = {
    outcome: "exempt",
    element: metal.element.id,
    body: body.id,
    measured: {
      horizontal: away,
      path: path?.length ?? null,
      vertical: typeof lowest === "number" ? lowest - body.waterLevel : null,
    },
    required: typeof lowest === "number" ? { horizontal: limit, vertical: heightLimit } : { horizontal: limit },
    margin: away - limit,
    limits: FAR_LIMITS,
    witness: witnessLine(straight),
    alsoSections: BARE.alsoSections,
    why: `${metal.name} lies ${speakerOf(yard).length(away, limit)}${where}`,
    remedy: "",
  };
  if (extent !== undefined) verdict.extent = extent;
  return verdict;
}

/** What all verdicts on metal beyond reach of a body have in common. */
function beyondReach(yard: Yard, body: Body) {
  const limit = yard.edition.value("fixedMetal.distance");
  const where = ` from the inside wall of ${elementName(body.element)}, more than ${speakerOf(yard).length(limit)}.`;
  return { limit, heightLimit: yard.edition.value("fixedMetal.height"), where };
}

const FAR_LIMITS = ["fixedMetal.distance"] as const;

function judgeNear(yard: Yard, body: Body, metal: FixedMetal, far: "no" | "doubtful"): Verdict {
  const say = speakerOf(yard);
  const limit = yard.edition.value("fixedMetal.distance");
  const heightLimit = yard.edition.value("fixedMetal.height");
  const { straight, path, lowest, name } = metal;
  const distance = straight.length;
  const vertical = typeof lowest === "number" ? lowest - body.waterLevel : null;
  const away = say.length(distance, limit);
  const where = distance === 0 ? "over or at the water" : `${away} from the inside wall`;
  const pool = elementName(body.element);
  const base = {
    ...BARE,
    element: metal.element.id,
    body: body.id,
    measured: { horizontal: distance, path: path?.length ?? null, vertical },
    required: { horizontal: limit, ...(vertical === null ? {} : { vertical: heightLimit }) },
    margin: distance - limit,
    limits: FAR_LIMITS,
    witness: witnessLine(straight),
    ...(metal.extent === undefined ? {} : { extent: metal.extent }),
  };
  const height = heightOf(yard, body, metal.element, lowest);
  if (height.state === "high") {
    const why = `${name} is ${where} of ${pool}, but its lowest point is ${say.length(height.clear, heightLimit)} above ${height.above}, more than ${say.length(heightLimit)}.${height.note}`;
    return { ...base, outcome: "exempt", limits: height.limits, margin: height.clear - heightLimit, why };
  }
  let notes = "";
  let trace: Pick<Verdict, "answered" | "lapsed"> = {};
  for (const doubt of [distanceDoubt(), barrierDoubt(), metal.doubt?.(), heightDoubt()]) {
    if (!doubt) continue;
    const settled = settle(yard, doubt.question, metal.element.id, body.id);
    notes += settled.note;
    trace = { ...trace, ...settled.trace };
    if (settled.choice === doubt.frees) {
      return { ...base, ...trace, outcome: "exempt", limits: ANSWERED_LIMITS, why: `${doubt.freed}${notes}` };
    }
    if (settled.choice !== null) continue;
    return {
      ...base,
      ...trace,
      outcome: "review",
      why: `${doubt.why}${notes}`,
      remedy: doubt.remedy,
      question: doubt.question,
    };
  }
  const near = distance === 0 ? `${name} is over or at the water of ${pool}` : `${name} is ${where} of ${pool}`;
  const why = `${near}; up to ${say.length(limit)} a person can touch it and the water, or the wet ground, at once.${heightNote()}${notes}`;
  return { ...base, ...trace, outcome: "bond", why, remedy: metal.remedy() };

  /** Of what hangs above the ground: how far it falls short of the height that would free it. */
  function heightNote(): string {
    if (height.state !== "low" || height.under === undefined || typeof lowest !== "number") return "";
    if (lowest <= Math.max(body.waterLevel, yard.grade)) return "";
    const { clear, above } = height.under;
    const over = clear < 0 ? `${say.length(-clear)} below` : `${say.length(clear, heightLimit)} above`;
    return ` Its lowest point is ${over} ${above}; only more than ${say.length(heightLimit)} above frees it.`;
  }

  function distanceDoubt(): Doubt | undefined {
    if (far !== "doubtful") return undefined;
    return {
      question: yesNo(
        "metal-within-reach",
        `Taped on site, does it come within ${say.length(limit)} of the inside wall?`,
      ),
      frees: "no",
      why: `${name} is ${where} of ${pool}, as near to the limit of ${say.length(limit)} as the drawing may be off (${say.length(yard.accuracy)}).`,
      remedy: "Measure the distance on site.",
      freed: `${name} lies more than ${say.length(limit)} from the inside wall of ${pool}.`,
    };
  }

  function barrierDoubt(): Doubt | undefined {
    const round = path?.length ?? null;
    const longer = round === null || round > distance + LIMIT_TOLERANCE;
    if (!longer || (round !== null && exceeds(round, limit, yard.accuracy) === "no")) return undefined;
    const way =
      round === null
        ? "no way leads round what stands between"
        : `the way round what stands between is ${say.length(round, limit)}`;
    return {
      question: yesNo(
        "barrier-prevents-contact",
        "Does what stands between it and the water permanently prevent contact?",
        ON_BARRIERS,
      ),
      frees: "yes",
      why: `${name} is ${where} of ${pool} in a straight line, but ${way}. Whether that prevents contact is for a person to say.`,
      remedy: "Look whether anyone can reach it from the water or over the barrier; bond it if so.",
      freed: `${name} is ${where} of ${pool} in a straight line, but a permanent barrier prevents contact.`,
    };
  }

  function heightDoubt(): Doubt | undefined {
    if (height.state !== "open") return undefined;
    return {
      question: yesNo(
        "metal-height",
        `Is its lowest point more than ${say.length(heightLimit)} above the maximum water level and above every stand, tower, platform and diving structure there?`,
        ON_STRUCTURES,
      ),
      frees: "yes",
      why: `${name} is ${where} of ${pool}, within ${say.length(limit)}. ${height.says}`,
      remedy: "Give the height of its lowest point; bond it if it is not that high.",
      freed: `${name} is ${where} of ${pool}, but high above the water and every stand.`,
    };
  }
}

/** Connection words for a remedy. */
export function joinRemedy(yard: Yard, connections: number): string {
  const places = connections === 1 ? "" : ` at ${connections} places`;
  return `Join it${places} to the bonding with solid copper of ${yard.edition.value("conductor.size")} AWG or larger.`;
}
