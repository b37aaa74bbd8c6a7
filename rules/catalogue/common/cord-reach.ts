/** How far a cord from a receptacle would lie to the inside wall, and whether that is far or near enough, as far as is known. */
import type { Point, Route } from "../../../geometry/types.ts";
import { exceeds } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { cordPath, cordPathFrom, placeOf } from "./cord-path.ts";
import { all, atLeast, atMost, NO, type OpenFact, open, type Truth, withinAccuracy, YES } from "./truth.ts";
import { witnessLine } from "./verdicts.ts";

export interface CordReach {
  readonly horizontal: number;
  /** Null: no way leads to the water. */
  readonly length: number | null;
  readonly witness: readonly Point[];
  /** Whether a cord would lie farther than the limit (exactly the limit is not). No way at all is far enough. */
  atLeastAway(limit: number): Truth;
  /** Whether it would lie between the two, both included. */
  between(nearest: number, farthest: number): Truth;
}

export function cordReach(yard: Yard, body: Body, element: DeviceElement): CordReach {
  const place = placeOf(yard, body, element);
  const straight = yard.straight(element, body);
  const paths = cordPath(yard, body, element, place);
  const doubtfulFace = place.back === null && place.kind === "face" && element.indoor === undefined;
  const isSure = paths.surely === paths.counted && paths.atMost === paths.counted;
  const routes: (Route | null)[] = isSure ? [paths.counted] : [paths.surely, paths.counted, paths.atMost];
  if (doubtfulFace) routes.push(null);
  if (place.back !== null) {
    const { surely, counted, atMost } = cordPathFrom(yard, body, element, place.back);
    routes.push(surely, counted, atMost);
  }
  const facts: OpenFact[] = paths.openFacts.map(({ element: id, field }) => ({
    says: `It hangs on \`${field}\` of ${id}, which is not given.`,
    asks: `Is it so, seeing \`${field}\` of ${id}?`,
    remedy: `Give \`${field}\` of ${id}`,
  }));
  if (doubtfulFace) {
    facts.push({
      says: "It is drawn just inside a wall, and whether it hangs indoors or on the outer face (`indoor`) is not given.",
      asks: "Is it so, seeing which side of the wall it is on (`indoor`)?",
      remedy: "Give `indoor`",
    });
  }
  if (place.back !== null) {
    facts.push({
      says: `It is drawn inside ${place.inside}, on one face of it or the other.`,
      asks: `Is it so, seeing which face of ${place.inside} it is on?`,
      remedy: `Draw it on the face of ${place.inside} that it is on`,
    });
  }
  /** The same by every way that it may be, or open. */
  const byEveryWay = (judge: (route: Route | null) => Truth): Truth => {
    const [only] = routes;
    if (only && routes.length === 1 && facts.length === 0) return judge(only);
    const truths = routes.map(judge);
    if (truths.every(({ state }) => state === "yes")) return YES;
    if (truths.every(({ state }) => state === "no")) return NO;
    const measured = truths.flatMap((truth) => truth.facts);
    return open(...facts, ...measured.filter(({ asks }, i) => measured.findIndex((one) => one.asks === asks) === i));
  };
  const { counted } = paths;
  return {
    horizontal: straight.length,
    length: counted?.length ?? null,
    witness: counted ? counted.points : witnessLine(straight),
    atLeastAway: (limit) => byEveryWay((route) => (route === null ? YES : beyond(yard, route.length, limit))),
    between: (nearest, farthest) =>
      byEveryWay((route) =>
        route === null ? NO : all(atLeast(yard, route.length, nearest, WAY), atMost(yard, route.length, farthest, WAY)),
      ),
  };
}

const WAY = "the way of a cord from it to the inside wall";

function beyond(yard: Yard, length: number, limit: number): Truth {
  const answer = exceeds(length, limit, yard.accuracy);
  return answer === "doubtful" ? open(withinAccuracy(yard, limit, WAY, "more than")) : answer === "yes" ? YES : NO;
}
