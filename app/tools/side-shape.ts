/**
 * The side being drawn: from the last corner to where it ends, straight or as an arc of one of three sorts.
 *
 * Terms. Smooth: the arc goes on in the direction that the side before ended with. Radius: the arc has a given radius;
 * it turns left on its way from corner to corner, so that it bows out to the right of the straight way, or, turned over,
 * the other way round, and is the shorter of the two arcs of that circle. Through: the arc passes a point placed before
 * its end. A chord is the straight way between the ends of an arc; half the angle of an arc lies between its chord and
 * the direction it starts in.
 */
import { edgeFromVertices, tangentAt } from "../../geometry/edge.ts";
import { distanceBetween, samePoint } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { Edge, Point } from "../../geometry/types.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { bulgeOfRadius, tooSmallCircle } from "../edits/set-radius.ts";
import { placeFrom } from "./measures.ts";
import { bulgeThrough, lastCorner, type Sketch, sidesOf, smoothBulge } from "./sketch.ts";
import type { TypedValues } from "./tool.ts";

export const SIDE_SHAPES = ["straight", "smooth", "radius", "through"] as const;
export type SideShape = (typeof SIDE_SHAPES)[number];

export const SIDE_WORDS: Readonly<Record<SideShape, { readonly short: string; readonly long: string }>> = {
  straight: { short: "Straight", long: "The next side is straight." },
  smooth: { short: "Smooth arc", long: "The next side is an arc that goes on smoothly from the side before." },
  radius: { short: "Arc by radius", long: "The next side is an arc of the radius that you type." },
  through: { short: "Arc by 3 points", long: "The next side is an arc through a point that you place first." },
};

/** How the next side is to be. */
export interface SideRule {
  readonly shape: SideShape;
  /** Inches; what was typed last. Null: none yet. */
  readonly radius: number | null;
  /** An arc by radius turns right. */
  readonly isTurned: boolean;
  /** The point that an arc by three points passes; null while it is not placed. */
  readonly through: Point | null;
}

export const STRAIGHT_SIDE: SideRule = { shape: "straight", radius: null, isTurned: false, through: null };

/** Where the side ends and how it bends there, or why it cannot be. */
export type Side =
  | { readonly ok: true; readonly to: Point; readonly bulge: number }
  | { readonly ok: false; readonly to: Point; readonly reason: string };

/** The first side of a drawing that begins with an arc is a quarter circle. */
const QUARTER_CIRCLE = Math.tan(Math.PI / 8);

/** The side from the last corner toward the pointed place; typed values go before the pointer. */
export function sideTo(sketch: Sketch, pointed: Point, typed: TypedValues, rule: SideRule, units: Units): Side | null {
  const last = lastCorner(sketch);
  if (!last) return null;
  const before = sidesOf(sketch).at(-1);
  if (rule.shape === "smooth" && before && typed.radius !== undefined) {
    return smoothByRadius(last, tangentAt(before, 1), pointed, typed, typed.radius, units);
  }
  const to = placeFrom(last, pointed, typed);
  const chord = distanceBetween(last, to);
  if (chord <= SAME_CORNER || rule.shape === "straight") return { ok: true, to, bulge: 0 };
  if (rule.shape === "through") return { ok: true, to, bulge: rule.through ? bulgeThrough(last, to, rule.through) : 0 };
  if (rule.shape === "smooth" && before) return { ok: true, to, bulge: smoothBulge(sketch, to) };
  const isTurned = rule.isTurned !== (typed.radius !== undefined && typed.radius < 0);
  const hand = rule.shape === "radius" && isTurned ? -1 : 1;
  const radius = typed.radius ?? (rule.shape === "radius" ? rule.radius : null);
  if (radius === null) return { ok: true, to, bulge: hand * QUARTER_CIRCLE };
  const bulge = bulgeOfRadius(chord, Math.abs(radius));
  return bulge === null
    ? { ok: false, to, reason: tooSmallCircle(Math.abs(radius), chord, units) }
    : { ok: true, to, bulge: hand * bulge };
}

/** The radius that the next side has when none is typed; null for a straight one. */
export function radiusOf(side: Side | null, from: Point | null): number | null {
  if (!side?.ok || !from || side.bulge === 0) return null;
  const edge = edgeFromVertices([from[0], from[1], side.bulge], side.to);
  return edge.kind === "arc" ? edge.radius : null;
}

/** The side as an edge; null while it has no length. */
export function edgeOfSide(sketch: Sketch, side: Side | null): Edge | null {
  const last = lastCorner(sketch);
  if (!last || !side?.ok || samePoint(last, side.to)) return null;
  return edgeFromVertices(side.bulge === 0 ? last : [last[0], last[1], side.bulge], side.to);
}

/** On a circle that touches the direction of the side before, toward the hand on which the pointer lies. */
function smoothByRadius(
  last: Point,
  [tx, ty]: Point,
  pointed: Point,
  { length, bearing }: TypedValues,
  typedRadius: number,
  units: Units,
): Side {
  const radius = Math.abs(typedRadius);
  const fail = (reason: string): Side => ({ ok: false, to: pointed, reason });
  if (radius === 0) return fail("A radius has to be above zero.");
  if (length !== undefined && bearing !== undefined) {
    return fail("Length, direction and radius cannot all be given: leave one of them empty.");
  }
  const [px, py] = [pointed[0] - last[0], pointed[1] - last[1]];
  const pointedHand = tx * py - ty * px >= 0 ? 1 : -1;
  const hand = typedRadius < 0 ? -1 : pointedHand;
  let half: number;
  if (bearing !== undefined) {
    const angle = (bearing * Math.PI) / 180;
    half = Math.atan2(tx * Math.sin(angle) - ty * Math.cos(angle), tx * Math.cos(angle) + ty * Math.sin(angle));
  } else if (length !== undefined) {
    if (length > 2 * radius + SAME_CORNER) return fail(tooSmallCircle(radius, length, units));
    const short = Math.asin(Math.min(1, length / (2 * radius)));
    half = hand * (tx * px + ty * py >= 0 ? short : Math.PI - short);
  } else {
    // As far round the circle as the pointer lies, seen from its center.
    const [cx, cy] = [last[0] - hand * ty * radius, last[1] + hand * tx * radius];
    const from = Math.atan2(last[1] - cy, last[0] - cx);
    let turned = hand * (Math.atan2(pointed[1] - cy, pointed[0] - cx) - from);
    while (turned < 0) turned += 2 * Math.PI;
    half = (hand * turned) / 2;
  }
  const chord = 2 * radius * Math.sin(Math.abs(half));
  if (chord <= SAME_CORNER) return fail("That direction gives the arc no length.");
  const [cos, sin] = [Math.cos(half), Math.sin(half)];
  const to: Point = [last[0] + chord * (tx * cos - ty * sin), last[1] + chord * (ty * cos + tx * sin)];
  return { ok: true, to, bulge: Math.tan(half / 2) };
}
