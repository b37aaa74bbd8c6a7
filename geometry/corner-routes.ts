/**
 * The shortest way from an outline to every barrier corner round which a path can bend, nearest corner first.
 *
 * Stages. 1. Each turning corner waits with the straight distance to the outline, which no path can beat. 2. The one with
 * the least waiting distance is taken: when that distance was only the bound, its nearest seen point of the outline
 * replaces it and it waits again; otherwise it is settled. 3. A settled corner offers its distance plus the straight leg
 * to every corner that it sees. This is Dijkstra's method, run only as far as anybody asks.
 *
 * Terms. Turning corner: a Sector of more than a half turn (barrier-map.ts). Taut: at a bend the path's straight
 * continuation stays on free ground on either side of the corner; only such legs can be part of a shortest path.
 */
import type { BarrierMap, Sector } from "./barrier-map.ts";
import { distanceBetween } from "./points.ts";
import { nearestSeen, type Outline, straightDistance } from "./seen-outline.ts";
import { canSee, directionIn, type Eye } from "./sight.ts";
import { SIGHT_SLACK } from "./tolerances.ts";
import type { Point } from "./types.ts";

/** A turning corner with its shortest way: straight from `from`, which is a point of the outline or the corner `by`. */
export interface SettledCorner {
  readonly sector: Sector;
  /** The corner as the start of a leg. */
  readonly eye: Eye;
  readonly distance: number;
  readonly from: Point;
  readonly by: SettledCorner | null;
}

interface Waiting {
  readonly sector: Sector;
  distance: number;
  /** True while `distance` is only the bound of stage 1. */
  bound: boolean;
  from: Point;
  by: SettledCorner | null;
}

export class CornerRoutes {
  private readonly map: BarrierMap;
  private readonly outline: Outline;
  private readonly waiting: Waiting[];
  private readonly found: SettledCorner[] = [];

  constructor(map: BarrierMap, outline: Outline) {
    this.map = map;
    this.outline = outline;
    this.waiting = map.turning.map((sector) => ({
      sector,
      distance: straightDistance(outline, sector.at),
      bound: true,
      from: sector.at,
      by: null,
    }));
  }

  /** The corners settled so far, nearest first. */
  get settled(): readonly SettledCorner[] {
    return this.found;
  }

  /** The corner number `index` in order of distance, or null when there is none within `limit` inches. */
  corner(index: number, limit: number): SettledCorner | null {
    while (this.found.length <= index) {
      if (!this.settleNext(limit)) return null;
    }
    const corner = this.found[index];
    return corner && corner.distance <= limit ? corner : null;
  }

  /** Settles the next corner in order of distance; false when none is left within `limit` inches. */
  settleNext(limit: number): boolean {
    for (;;) {
      const next = this.takeLeast(limit);
      if (!next) return false;
      if (!next.bound) {
        const { sector, distance, from, by } = next;
        const settled = { sector, eye: { at: sector.at, sector }, distance, from, by };
        this.found.push(settled);
        this.offerFrom(settled);
        return true;
      }
      this.measure(next);
    }
  }

  /** Takes the least waiting one out of the list when it is within the limit. */
  private takeLeast(limit: number): Waiting | null {
    let least = -1;
    let distance = Number.POSITIVE_INFINITY;
    this.waiting.forEach((one, i) => {
      if (one.distance < distance) {
        distance = one.distance;
        least = i;
      }
    });
    if (least < 0 || distance > limit) return null;
    const taken = this.waiting[least] as Waiting;
    const last = this.waiting.pop() as Waiting;
    if (last !== taken) this.waiting[least] = last;
    return taken;
  }

  private measure(one: Waiting): void {
    const { sector } = one;
    one.bound = false;
    one.distance = Number.POSITIVE_INFINITY;
    // Corners settled while this one was only bounded make their offers now.
    for (const settled of this.found) this.offer(settled, one);
    const seen = nearestSeen(this.map, this.outline, { at: sector.at, sector }, one.distance);
    if (seen) {
      one.distance = seen.distance;
      one.from = seen.point;
      one.by = null;
    }
    this.waiting.push(one);
  }

  private offerFrom(settled: SettledCorner): void {
    for (const one of this.waiting) if (!one.bound) this.offer(settled, one);
  }

  private offer(settled: SettledCorner, one: Waiting): void {
    const leg = distanceBetween(settled.sector.at, one.sector.at);
    const distance = settled.distance + leg;
    if (distance >= one.distance || !isTaut(settled, one.sector, leg)) return;
    const { sector } = settled;
    if (!canSee(this.map, settled.eye, { at: one.sector.at, sector: one.sector })) return;
    one.distance = distance;
    one.from = sector.at;
    one.by = settled;
  }
}

function isTaut(settled: SettledCorner, to: Sector, leg: number): boolean {
  if (leg <= SIGHT_SLACK) return false;
  const from = settled.sector;
  const angle = Math.atan2(to.at[1] - from.at[1], to.at[0] - from.at[0]);
  const goesOn = directionIn(to, angle, leg) !== 0 && directionIn(to, angle + Math.PI, leg) !== 0;
  if (!goesOn || directionIn(from, angle, leg) === 0) return false;
  return settled.distance <= SIGHT_SLACK || directionIn(from, angle + Math.PI, leg) !== 0;
}
