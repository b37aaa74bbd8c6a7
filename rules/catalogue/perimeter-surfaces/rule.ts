import { differenceRegions, intersectRegions, regionArea } from "../../../geometry/clipping.ts";
import { pathToArea } from "../../../geometry/distance.ts";
import { reach } from "../../../geometry/reach.ts";
import { LIMIT_TOLERANCE } from "../../../geometry/tolerances.ts";
import { coverOf } from "../../measures/band-pieces.ts";
import { exceeds } from "../../measures/compare.ts";
import type { BandPiece, Body, Yard } from "../../measures/yard.ts";
import {
  type Method,
  methodOf,
  type PieceMethod,
  perimeterMethods,
  surfaceHeight,
  surfaceOf,
} from "../../perimeter/methods.ts";
import { perimeterCopper } from "../../recorded/bearers.ts";
import type { Question } from "../../report.ts";
import type { SurfaceElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { ON_BARRIERS, ON_SURFACES, restsOnBoth } from "../common/rests-on.ts";
import { bondedBodies } from "../common/storable.ts";
import { BARE, settle, speakerOf, subjectName, witnessLine } from "../common/verdicts.ts";
import { everyEdition, type Need, type OnlyIf, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "perimeter-surfaces",
  title: "Perimeter surfaces",
  part: "perimeter",
  sections: everyEdition("680.26(B)(2)"),
  subjects: "Each surface near each body of water, and the ground that nothing covers.",
  measure: "How much of it lies within the perimeter band of the inside walls, and what it is made of.",
  parameters: [
    "perimeter.width",
    "perimeter.above",
    "perimeter.below",
    "perimeter.wallHeight",
    "perimeter.paved",
    "perimeter.unpaved",
    "perimeter.nonconductive",
    "perimeter.nonconductiveExempt",
    "perimeter.ringUnderPaving",
    "perimeter.ringUnpaved",
    "perimeter.grid",
    "perimeter.meshCounts",
    "perimeter.pavedCoverMax",
    "conductor.size",
    "ring.min",
    "ring.max",
    "ring.coverMin",
    "ring.coverMax",
    "ring.coverFrom",
    "grid.spacing",
    "grid.tolerance",
    "grid.coverMax",
  ],
  bodyByBody: true,
  protects:
    "Wet feet on the deck and a hand in the water: the ground round a pool is brought to the voltage of the water.",
  judge(yard) {
    const bodies = bondedBodies(yard);
    const inBand = bodies.flatMap((body) => {
      const behind = behindAssumedWalls(yard, body);
      const before = perimeterMethods(yard, body).map((method) =>
        alsoBehind(yard, method, judgePiece(yard, body, method), behind),
      );
      const own = new Set(before.map((verdict) => verdict.element));
      const only = behind.filter(({ piece }) => !own.has(piece.surface));
      return [...before, ...only.map((entry) => judgeBehind(yard, body, entry))];
    });
    const seen = new Set(inBand.map((verdict) => verdict.element));
    const outside = yard.surfaces
      .filter((model) => !seen.has(model.element.id))
      .flatMap((model) => judgeOutside(yard, bodies, model.element));
    return [...inBand, ...outside];
  },
};

const METHOD_WORDS: Readonly<Record<Method, string>> = {
  steel: "the bare steel in it",
  ring: "a copper ring",
  grid: "a copper grid",
  "none-needed": "nothing",
};

const WALL_LEVEL_QUESTION: Question = {
  id: "wall-ends-perimeter",
  text: "Is the wall in front of this surface permanent, and high enough above the ground on the pool's side to end the perimeter?",
  options: ["yes", "no"],
  restsOn: restsOnBoth(ON_BARRIERS, ON_SURFACES),
};

const ENDS_HERE: OnlyIf = {
  question: WALL_LEVEL_QUESTION,
  says: "the perimeter ends at that wall",
  remedy: "Settle it, or carry the bonding on over the rest.",
};

function nameOf(surface: SurfaceElement | null): string {
  return surface === null ? "The ground that nothing covers" : subjectName(surface);
}

function judgePiece(yard: Yard, body: Body, method: PieceMethod): Verdict {
  const { piece, bonding, allowed, planned, reason, question, settled, onlyIf } = method;
  const say = speakerOf(yard);
  const surface = surfaceOf(yard, piece);
  const width = yard.edition.value("perimeter.width");
  const height = surfaceHeight(yard, body, surface);
  const witness = surface === null ? null : yard.straight(surface, body);
  const heights = yard.edition.value("perimeter.above") !== null;
  const where = `${say.area(piece.area)} of it lie within ${say.length(width)} of the inside wall of ${elementName(body.element)}.`;
  const base = {
    ...BARE,
    element: piece.surface,
    body: body.id,
    measured: { area: piece.area, ...(heights ? { vertical: height } : {}) },
    required: { width },
    limits: heights ? (["perimeter.width", "perimeter.above"] as const) : (["perimeter.width"] as const),
    witness: witnessLine(witness),
    why: `${nameOf(surface)}: ${where} ${reason}${settled?.note ?? ""}`,
    ...settled?.trace,
  };
  if (bonding === "none-needed") return { ...base, outcome: "exempt", remedy: "" };
  const remedy = remedyFor(yard, surface, allowed, planned);
  if (bonding === "review") {
    return { ...base, outcome: "review", remedy, ...(question ? { question } : {}) };
  }
  const elements = piece.surface === null ? [] : [piece.surface];
  const need: Need = {
    kind: "perimeter",
    elements,
    connections: 0,
    at: [],
    drop: 0,
    ...(onlyIf ? { onlyIf: [onlyIf] } : {}),
  };
  return { ...base, outcome: "bond", remedy, need };
}

function remedyFor(yard: Yard, surface: SurfaceElement | null, allowed: readonly Method[], planned: Method): string {
  const say = speakerOf(yard);
  const { edition } = yard;
  const methods = allowed.map((method) => METHOD_WORDS[method]).join(" or ");
  const sentences = [`Bond it by ${methods}.`];
  const from =
    edition.value("ring.coverFrom") === "grade"
      ? "finished grade"
      : "the subgrade, whose meaning the authority settles";
  if (planned === "ring") {
    sentences.push(
      `Lay one bare solid copper conductor of ${edition.value("conductor.size")} AWG or larger, ${say.length(edition.value("ring.min"))} to ${say.length(edition.value("ring.max"))} from the inside wall and ${say.length(edition.value("ring.coverMin"))} to ${say.length(edition.value("ring.coverMax"))} below ${from}.`,
    );
  }
  if (planned === "grid") {
    sentences.push(
      `Lay bare solid copper of ${edition.value("conductor.size")} AWG or larger ${say.length(edition.value("grid.spacing"))} both ways (give or take ${say.length(edition.value("grid.tolerance"))}), at most ${say.length(edition.value("grid.coverMax"))} below ${from}, joined at every crossing.`,
    );
  }
  if (planned === "steel") {
    const deepest = edition.value("perimeter.pavedCoverMax");
    const depth = deepest === null ? "" : `, at most ${say.length(deepest)} below finished grade`;
    sentences.push(`Tie the steel together${depth}, carry it across every joint, and join it to the bonding.`);
  }
  if (surface?.existing === true && planned !== "steel") {
    sentences.push("The slab is there already: copper cannot be laid under it without breaking it.");
  }
  const isPaving = surface !== null && !edition.value("perimeter.unpaved").includes(surface.material);
  if (isPaving && surface.existing === undefined && planned !== "steel") {
    sentences.push("It is taken as not yet laid: say so if it is there already, as copper then has no way under it.");
  }
  return sentences.join(" ");
}

/** What is open about the height of a wall, in words. */
function openFactWords(fact: string): string {
  return fact === "level"
    ? "the level of the ground at its foot is not given"
    : "its height is as near to the limit as the drawing may be off";
}

/** Ground behind a wall that ends the band only if a level that nobody gave, or its own height, is as it seems. */
interface Behind {
  readonly piece: BandPiece;
  /** Whether a ring has its room before those walls, where it serves the ground on both sides of them. */
  readonly room: boolean;
  /** Which walls, and what is open about them, to go on after the surface's name. */
  readonly says: string;
}

function behindAssumedWalls(yard: Yard, body: Body): Behind[] {
  const set = yard.barriers("band", body);
  if (set.assumed.size === 0) return [];
  const sure = set.counted.filter((model) => !set.assumed.has(model.id)).flatMap((model) => model.barriers);
  const wider = reach(body.water, yard.edition.value("perimeter.width"), sure, yard.notGround());
  const beyond = differenceRegions(wider, yard.band(body).region);
  const assumed = set.counted.filter((model) => set.assumed.has(model.id));
  const walls = assumed.map(({ id }) => id).join(", ");
  const openFacts = assumed.map((model) => `${model.id}: ${model.openFacts.map(openFactWords).join(", ")}`).join("; ");
  const says = `lies behind ${walls}, which ends the perimeter only if it stands high enough above the ground on the pool's side, and that is not sure (${openFacts}).`;
  const least = yard.edition.value("ring.min") + yard.accuracy;
  const room = [...yard.walls.map(({ element, footprint }) => ({ element, area: footprint })), ...yard.buildings].every(
    ({ element, area }) => {
      return !set.assumed.has(element.id) || pathToArea(area.outer, body.water).length >= least - LIMIT_TOLERANCE;
    },
  );
  return yard.piecesOf(beyond).map((piece) => ({ piece, room, says }));
}

/** A surface of which no part lies before such a wall. */
function judgeBehind(yard: Yard, body: Body, { piece, says }: Behind): Verdict {
  const settled = settle(yard, WALL_LEVEL_QUESTION, piece.surface, body.id);
  const verdict = judgePiece(yard, body, methodOf(yard, body, piece));
  if (verdict.outcome === "exempt" || settled.choice === "no") return { ...verdict, ...settled.trace };
  const lead = `${nameOf(surfaceOf(yard, piece))} ${says}`;
  const { need: _need, question: _question, ...rest } = verdict;
  if (settled.choice === "yes")
    return { ...rest, ...settled.trace, outcome: "exempt", remedy: "", why: lead + settled.note };
  return { ...rest, ...settled.trace, outcome: "review", why: lead + settled.note, question: WALL_LEVEL_QUESTION };
}

/** A surface that goes on behind such a wall: bonding before the wall is all of it only if the wall ends the perimeter. */
function alsoBehind(yard: Yard, method: PieceMethod, verdict: Verdict, behind: readonly Behind[]): Verdict {
  const further = behind.find(({ piece }) => piece.surface === verdict.element);
  if (!further || !verdict.need) return verdict;
  const gridded = perimeterCopper(yard).some(({ role }) => role === "grid");
  if (further.room && method.planned === "ring" && !gridded) return verdict;
  const { area } = further.piece;
  const says = `Another ${speakerOf(yard).area(area)} of it ${further.says}`;
  const need: Need = { ...verdict.need, onlyIf: [...(verdict.need.onlyIf ?? []), ENDS_HERE] };
  return { ...verdict, why: `${verdict.why} ${says}`, need };
}

/** A surface that is no part of any band. */
function judgeOutside(yard: Yard, bodies: readonly Body[], surface: SurfaceElement): Verdict[] {
  const body = yard.nearestBody(surface, bodies);
  if (body === null) return [];
  const say = speakerOf(yard);
  const witness = yard.straight(surface, body);
  const width = yard.edition.value("perimeter.width");
  const name = nameOf(surface);
  const base = {
    ...BARE,
    element: surface.id,
    body: body.id,
    measured: { horizontal: witness.length, area: 0 },
    required: { horizontal: width },
    margin: witness.length - width,
    limits: ["perimeter.width"] as const,
    witness: witnessLine(witness),
  };
  const far = exceeds(witness.length, width, yard.accuracy);
  const limit = say.length(width);
  const away = say.length(witness.length, width);
  if (far === "doubtful") {
    const question: Question = {
      id: "surface-in-perimeter",
      text: `Does it come within ${limit} of the inside wall, taped on site?`,
      options: ["yes", "no"],
    };
    const settled = settle(yard, question, surface.id, body.id);
    if (settled.choice === "no")
      return [
        {
          ...base,
          ...settled.trace,
          outcome: "exempt",
          why: `${name} lies outside the ${limit} of the perimeter.${settled.note}`,
        },
      ];
    const why = `${name} lies ${away} from the inside wall, as near to the limit of ${limit} as the drawing may be off.${settled.note}`;
    return [{ ...base, ...settled.trace, outcome: "review", why, remedy: "Measure it on site.", question }];
  }
  if (far === "yes" || regionArea(intersectRegions(coverOfSurface(yard, surface), yard.band(body).region)) === 0) {
    const why =
      far === "yes"
        ? `${name} lies ${away} from the inside wall, beyond the ${limit} of the perimeter.`
        : `${name} comes to ${away} from the inside wall, but none of it lies in the perimeter: it only touches its edge, or a wall or building stands between.`;
    return [{ ...base, outcome: "exempt", why }];
  }
  return [judgeCovered(yard, body, surface, base)];
}

function coverOfSurface(yard: Yard, surface: SurfaceElement) {
  const model = yard.surfaces.find((entry) => entry.element.id === surface.id);
  if (!model) throw new Error(`no surface ${surface.id}`);
  return coverOf(model);
}

const COVERED_QUESTION: Question = {
  id: "covered-surface",
  text: "Can anyone stand on this surface, or is it covered throughout by the one above it?",
  options: ["it is covered", "one can stand on it"],
  restsOn: ON_SURFACES,
};

/** Whether a piece needs no bonding, or may turn out to need none under an edition that frees some surfaces. */
function mayBeFree(yard: Yard, method: PieceMethod): boolean {
  if (method.planned === "none-needed") return true;
  return method.bonding === "review" && yard.edition.value("perimeter.nonconductiveExempt");
}

/** A surface that others cover wherever it lies in the band. */
function judgeCovered(
  yard: Yard,
  body: Body,
  surface: SurfaceElement,
  base: Omit<Verdict, "outcome" | "why">,
): Verdict {
  const name = nameOf(surface);
  const whole = coverOfSurface(yard, surface);
  const free = perimeterMethods(yard, body).some(
    (method) => mayBeFree(yard, method) && regionArea(intersectRegions(method.piece.region, whole)) > 0,
  );
  const covered = `${name} lies under other surfaces wherever it is within the perimeter, and those are judged instead.`;
  if (!free) return { ...base, outcome: "exempt", why: covered };
  const settled = settle(yard, COVERED_QUESTION, surface.id, body.id);
  if (settled.choice === "it is covered")
    return { ...base, ...settled.trace, outcome: "exempt", why: covered + settled.note };
  if (settled.choice === "one can stand on it") {
    const need = { kind: "perimeter", elements: [surface.id], connections: 0, at: [], drop: 0 } as const;
    const why = `${name} can be stood on under the surface above it, so it is a perimeter surface of its own.${settled.note}`;
    return { ...base, ...settled.trace, outcome: "bond", why, remedy: "Bond it as any other perimeter surface.", need };
  }
  const why = `${covered} One of those needs no bonding, or may need none, so this one may have to be bonded under it.${settled.note}`;
  return {
    ...base,
    ...settled.trace,
    outcome: "review",
    why,
    remedy: "Say whether it is covered throughout.",
    question: COVERED_QUESTION,
  };
}
