/** Places at exactly a limit's distance from a pool's inside wall, by true lines and arcs. */
import { pointToArea } from "../../geometry/distance.ts";
import { areaFrom } from "../../geometry/outline.ts";
import { boundsDistance, boundsOfPoints, distanceBetween } from "../../geometry/points.ts";
import { LIMIT_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Area, Point } from "../../geometry/types.ts";
import type { PoolElement } from "../../rules/site/elements.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import type { AnyElement } from "../edits/edit.ts";
import { calledAs } from "../edits/element-words.ts";
import type { WaterLimit } from "./limits.ts";

/** Water that a place can lie at a distance from. */
export interface Water {
  readonly area: Area;
  readonly words: string;
}

const waters = new WeakMap<AnyElement, Water>();
const pools = new WeakMap<readonly AnyElement[], readonly AnyElement[]>();

/** Waters within `reach` inches of a place. */
export function watersNear(
  elements: readonly AnyElement[],
  at: Point,
  reach: number,
  without: ReadonlySet<string> = new Set(),
): Water[] {
  let all = pools.get(elements);
  if (!all) {
    all = elements.filter(({ kind }) => kind === "pool");
    pools.set(elements, all);
  }
  return all.flatMap((element) => {
    if (without.has(element.id)) return [];
    const water = waterOf(element);
    return boundsDistance(water.area.outer.bounds, boundsOfPoints([at])) <= reach ? [water] : [];
  });
}

function waterOf(element: AnyElement): Water {
  const known = waters.get(element);
  if (known) return known;
  const { outline, islands } = element as PoolElement;
  const water = { area: areaFrom(outline, islands), words: calledAs(element) };
  waters.set(element, water);
  return water;
}

export interface AtDistance {
  readonly point: Point;
  /** On the wall, nearest to the place. */
  readonly wall: Point;
  readonly words: string;
}

/** A way that the place has to keep to: through `through` in the direction `way` (a unit vector). */
export interface Track {
  readonly through: Point;
  readonly way: Point;
}

/** The nearest place within `tolerance` that lies exactly at a limit from the water; on the track, where one is given. */
export function atWaterDistance(
  at: Point,
  near: readonly Water[],
  limits: readonly WaterLimit[],
  tolerance: number,
  units: Units,
  track?: Track,
): AtDistance | null {
  let best: AtDistance | null = null;
  let least = tolerance;
  for (const water of near) {
    const { length } = pointToArea(at, water.area);
    if (length === 0) continue;
    for (const limit of limits) {
      if (!track && Math.abs(length - limit.distance) > least) continue;
      const point = track ? alongTrack(at, water.area, limit.distance, track) : moved(at, water.area, limit.distance);
      const away = point ? distanceBetween(point, at) : Number.POSITIVE_INFINITY;
      if (!point || away > least) continue;
      const witness = pointToArea(point, water.area);
      if (Math.abs(witness.length - limit.distance) > LIMIT_TOLERANCE) continue;
      least = away;
      const words = `${lengthText(limit.distance, units)} from ${water.words}: ${limit.words}`;
      best = { point, wall: witness.from, words };
    }
  }
  return best;
}

/** Straight away from the wall, or toward it. */
function moved(at: Point, area: Area, distance: number): Point {
  const { from, length } = pointToArea(at, area);
  const share = distance / length;
  return [from[0] + (at[0] - from[0]) * share, from[1] + (at[1] - from[1]) * share];
}

/** Secant steps along the track; null where they find no end. */
function alongTrack(at: Point, area: Area, distance: number, { through, way }: Track): Point | null {
  const place = (s: number): Point => [through[0] + way[0] * s, through[1] + way[1] * s];
  const excess = (s: number) => pointToArea(place(s), area).length - distance;
  let s0 = (at[0] - through[0]) * way[0] + (at[1] - through[1]) * way[1];
  let f0 = excess(s0);
  let s1 = s0 + 1;
  let f1 = excess(s1);
  for (let i = 0; i < MOST_STEPS; i++) {
    if (Math.abs(f1) <= LIMIT_TOLERANCE / 1000) return place(s1);
    if (f1 === f0) return null;
    const next = s1 - (f1 * (s1 - s0)) / (f1 - f0);
    [s0, f0, s1] = [s1, f1, next];
    f1 = excess(s1);
  }
  return Math.abs(f1) <= LIMIT_TOLERANCE ? place(s1) : null;
}

const MOST_STEPS = 24;
