/**
 * The loops of perimeter bonding and what each asks along its way.
 *
 * Stages. 1. Loops: the curves midway between the ring's limits round the bodies that need perimeter bonding. 2. Each is
 * walked in steps; every position lies on a piece of a body's band, or on none. 3. Where that changes between two
 * positions, the place is narrowed down. 4. Pieces that the loop passes beside (a strip of turf behind a deck, a coping
 * before a lawn) are found the same way, straight across the band at each position.
 *
 * Terms. Course: the loop cut into stretches with one piece each. Tight: the loop's own place is no ground of the band (a
 * wall stands there), but there is ground between it and the inside wall. Beside: over this stretch the piece lies nearer
 * to the inside wall than the loop, or farther off.
 */
import { regionContains } from "../../geometry/clipping.ts";
import { pointToArea } from "../../geometry/distance.ts";
import { offsetCurves } from "../../geometry/offset.ts";
import { pathLength, pointAlong } from "../../geometry/outline.ts";
import type { Path, Point } from "../../geometry/types.ts";
import type { Body, Yard } from "../measures/yard.ts";
import { type PieceMethod, perimeterMethods } from "../perimeter/methods.ts";
import { perimeterBodies } from "./bearers.ts";
import { holdsWhere, acrossStart as joinedOverStart } from "./intervals.ts";

export interface CourseStretch {
  /** Inches along the loop, 0 <= from < its length; `to` is greater and may pass the loop's start. */
  readonly from: number;
  readonly to: number;
  readonly entry: PieceMethod;
  readonly body: string;
  readonly tight: boolean;
  readonly beside: boolean;
}

export interface PerimeterLoop {
  readonly bodies: readonly Body[];
  readonly path: Path;
  readonly length: number;
  /** The stretches of the loop's own place in order, then those beside it. */
  readonly course: readonly CourseStretch[];
}

/** Steps of the walk, inches: a surface narrower than this may be passed over. */
const STEP = 2;
/** Halvings of a step where the piece changes: to less than a thousandth of an inch. */
const NARROWINGS = 12;
/** How far from the inside wall the ground before a wall is looked for, inches. */
const BEFORE_WALL = 1;

/** The loops of the yard, worked out once. */
export function perimeterLoops(yard: Yard): readonly PerimeterLoop[] {
  return yard.kept("perimeter loops", () => {
    const bodies = perimeterBodies(yard);
    const middle = (yard.edition.value("ring.min") + yard.edition.value("ring.max")) / 2;
    if (bodies.length === 0 || !(middle > 0)) return [];
    const { loops } = offsetCurves(
      bodies.map(({ water }) => water),
      middle,
    );
    return loops.map(({ path, bodies: numbers }) => {
      const round = numbers.flatMap((i) => bodies[i] ?? []);
      const course = courseOf(yard, path, round);
      course.push(...besideOf(yard, path, round, course));
      return { bodies: round, path, length: pathLength(path), course };
    });
  });
}

interface Here {
  readonly entry: PieceMethod;
  readonly body: string;
  readonly tight: boolean;
}

function courseOf(yard: Yard, path: Path, bodies: readonly Body[]): CourseStretch[] {
  const total = pathLength(path);
  const count = Math.max(8, Math.ceil(total / STEP));
  const at = (s: number) => hereAt(yard, bodies, pointAlong(path, s));
  const course: CourseStretch[] = [];
  let from = 0;
  let before = at(0);
  const close = (to: number) => {
    if (before && to > from) course.push({ from, to, beside: false, ...before });
  };
  for (let i = 1; i <= count; i++) {
    const s = (i * total) / count;
    const now = i === count ? at(0) : at(s);
    if (same(before, now)) continue;
    let lo = ((i - 1) * total) / count;
    let hi = s;
    for (let n = 0; n < NARROWINGS; n++) {
      const middle = (lo + hi) / 2;
      if (same(at(middle), before)) lo = middle;
      else hi = middle;
    }
    close(hi);
    from = hi;
    before = now;
  }
  close(total);
  return acrossStart(course, total);
}

/**
 * The stretches that have a piece beside them; a strip narrower than STEP may be passed over. Where a stretch of the loop's
 * own place ends, its piece goes on beside it for a little (a corner of lawn behind the end of a deck): no more than half of
 * the band's width of that is left to the stretch itself.
 */
function besideOf(yard: Yard, path: Path, bodies: readonly Body[], course: readonly CourseStretch[]): CourseStretch[] {
  const total = pathLength(path);
  const short = yard.edition.value("perimeter.width") / 2;
  const beside = bodies.flatMap((body) => {
    const pieces = perimeterMethods(yard, body);
    if (pieces.length < 2) return [];
    return pieces.flatMap((entry) => {
      const stretches = holdsWhere({ from: 0, to: total }, STEP, (s) => {
        const p = pointAlong(path, s);
        if (hereAt(yard, bodies, p)?.entry === entry) return false;
        return acrossBand(yard, body, p).some((probe) => regionContains(entry.piece.region, probe));
      });
      // One that runs over the loop's start is one: how long it is decides below.
      return joinedOverStart(stretches, total, 0).map((stretch) => ({
        ...stretch,
        entry,
        body: body.id,
        tight: false,
        beside: true,
      }));
    });
  });
  const meet = (a: number, b: number) => {
    const apart = Math.abs(a - b) % total;
    return Math.min(apart, total - apart) < STEP;
  };
  const goesOn = ({ from, to, entry }: CourseStretch) =>
    to - from <= short && course.some((main) => main.entry === entry && (meet(main.to, from) || meet(main.from, to)));
  return beside.filter((stretch) => !goesOn(stretch));
}

/** Positions straight across a body's band at a place of the loop, from the inside wall out; none where the place is not in it. */
export function acrossBand(yard: Yard, body: Body, p: Point): Point[] {
  const width = yard.edition.value("perimeter.width");
  const { from, length } = pointToArea(p, body.water);
  if (length === 0 || length > width) return [];
  const count = Math.max(2, Math.ceil(width / STEP));
  return Array.from({ length: count }, (_, i): Point => {
    const share = ((i + 1 / 2) * width) / count / length;
    return [from[0] + (p[0] - from[0]) * share, from[1] + (p[1] - from[1]) * share];
  });
}

/** What ends where the loop closes goes on in what starts there. */
function acrossStart(course: CourseStretch[], total: number): CourseStretch[] {
  const first = course[0];
  const last = course[course.length - 1];
  if (!first || !last || first === last || first.from > 0 || last.to < total || !same(first, last)) return course;
  return [...course.slice(1, -1), { ...last, to: total + first.to }];
}

function same(a: Here | null, b: Here | null): boolean {
  return a === b || (a !== null && b !== null && a.entry === b.entry && a.tight === b.tight);
}

/** The piece of the band at a place of the loop; else that of the ground before a wall there; null where there is none. */
function hereAt(yard: Yard, bodies: readonly Body[], p: Point): Here | null {
  const only = bodies.length === 1 ? bodies[0] : undefined;
  const held = only && pieceAt(yard, only, p);
  if (only && held) return { entry: held, body: only.id, tight: false };
  const sorted = bodies
    .map((body) => ({ body, near: pointToArea(p, body.water) }))
    .sort((a, b) => a.near.length - b.near.length);
  for (const { body } of sorted) {
    const entry = pieceAt(yard, body, p);
    if (entry) return { entry, body: body.id, tight: false };
  }
  const nearest = sorted[0];
  if (!nearest || nearest.near.length === 0) return null;
  const { from, length } = nearest.near;
  const share = BEFORE_WALL / length;
  const before: Point = [from[0] + (p[0] - from[0]) * share, from[1] + (p[1] - from[1]) * share];
  const entry = pieceAt(yard, nearest.body, before);
  return entry ? { entry, body: nearest.body.id, tight: true } : null;
}

function pieceAt(yard: Yard, body: Body, p: Point): PieceMethod | null {
  return perimeterMethods(yard, body).find(({ piece }) => regionContains(piece.region, p)) ?? null;
}
