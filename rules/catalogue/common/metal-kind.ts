/** Which part of 680.26(B) a piece of drawn metal falls under: a fitting (5), the pool's structure (3), or fixed metal (7). */
import { exceeds } from "../../measures/compare.ts";
import type { Yard } from "../../measures/yard.ts";
import type { MetalElement } from "../../site/elements.ts";
import { bondedBodies } from "./storable.ts";

export type MetalKind = "fitting" | "structure" | "fixed";

/** Trade names of fittings in or on a pool's structure. */
const FITTING =
  /\b(ladder|hand ?rail|grab ?rail|grab ?bar|cup|anchor|drain|skimmer|return|inlet|escutcheon|eyelet)s?\b/i;

/** Named like a fitting, but a run of something else. */
const NOT_FITTING = /\b(pipe|piping|conduit|raceway|fence|awning|gutter|pole|railing)s?\b/i;

/** Trade names of the structure itself. */
const STRUCTURE = /rebar|reinforc|wall|frame|beam|coping|panel|brace|strut|mesh|\bsteel\b|\bbars?\b/i;

const LADDER_OR_RAIL = /\b(ladder|hand ?rail|grab ?rail|grab ?bar)s?\b/i;

export function hasFittingName(part: string | undefined): boolean {
  if (part === undefined) return false;
  let named = namedParts.get(part);
  if (named === undefined) {
    const plain = plainPart(part);
    named = FITTING.test(plain) && !NOT_FITTING.test(plain);
    if (namedParts.size >= MANY_NAMES) namedParts.clear();
    namedParts.set(part, named);
  }
  return named;
}

/** A yard has few different trade names, and each is asked about again and again. */
const namedParts = new Map<string, boolean>();
const MANY_NAMES = 1000;

/** A ladder or rail: larger than any fitting that its size frees, and tied at every cup. */
export function isLadderOrRail(part: string | undefined): boolean {
  return hasFittingName(part) && LADDER_OR_RAIL.test(plainPart(part));
}

/** A ladder, which stands in the water by its nature. */
export function isLadder(part: string | undefined): boolean {
  return hasFittingName(part) && /\bladders?\b/i.test(plainPart(part));
}

function plainPart(part: string | undefined): string {
  return (part ?? "").replaceAll(/[-_]/g, " ");
}

export function metalKind(yard: Yard, element: MetalElement): MetalKind {
  // Most metal is told by its own facts alone.
  if (element.inPoolStructure !== true && (element.fixed === false || !hasFittingName(element.part))) return "fixed";
  return yard.keptOf(element, "metal kind", () => kindOf(yard, element));
}

function kindOf(yard: Yard, element: MetalElement): MetalKind {
  const named = hasFittingName(element.part);
  if (element.inPoolStructure === true) {
    if (named) return "fitting";
    const sized =
      element.isolated !== undefined || element.largestDimension !== undefined || element.penetration !== undefined;
    if (element.part === undefined) return sized ? "fitting" : "structure";
    return STRUCTURE.test(plainPart(element.part)) || !sized ? "structure" : "fitting";
  }
  const body = yard.nearestBody(element, bondedBodies(yard));
  if (body === null) return "fixed";
  const reach = yard.edition.value("fixedMetal.distance");
  return exceeds(yard.straight(element, body).length, reach, yard.accuracy) === "yes" ? "fixed" : "fitting";
}
