/**
 * Takes the hairlines off clipped ground: what is left where two pieces of ground, or ground and water, meet in a line that
 * falls between the steps of the clipping grid. Whether such a line comes out as a slit, as a bridge or as nothing depends
 * on how the yard is turned; a ring round the ground may not.
 *
 * Stages. 1. The pieces are united. Where slits are narrower than two HAIRLINE, or bridges as narrow, they are united once
 * more on a grid that is turned. 2. What has hairlines however it is turned (grounds that touch along a line) loses them:
 * slits are closed, then bridges cut. 3. Of each ring, spikes and slits narrower than RING_SPIKE.
 */
import { differenceRegions, offsetRegion, unionRegions } from "./clipping.ts";
import { boundsOfPoints, distanceBetween, grownBounds } from "./points.ts";
import { ringArea, ringPerimeter } from "./rings.ts";
import { boxIndex } from "./spatial-index.ts";
import { CLIP_UNITS_PER_INCH, HAIRLINE, RING_SPIKE, SHORTEST_HAIRLINE } from "./tolerances.ts";
import { GRID_TURNS, movedRegion, turnedRegion } from "./turned-region.ts";
import type { Point, Region } from "./types.ts";

/** The union of pieces that may overlap, without hairlines. */
export function unitedGround(pieces: Region): Region {
  let fallback: { readonly united: Region; readonly clean: Region } | null = null;
  for (const angle of GRID_TURNS) {
    const united = unionRegions([turnedRegion(pieces, angle)]);
    const clean = withoutHairlines(united);
    if (hasSameEdge(united, clean)) return turnedRegion(united, -angle);
    fallback ??= { united, clean };
  }
  if (fallback === null) return [];
  const taken = withHairlinesTaken(fallback.united, fallback.clean);
  // Grounds that touch without a slit between are one only when they are widened.
  return ringsOf(taken).length === ringsOf(fallback.clean).length ? taken : fallback.clean;
}

/** The ground less its hairlines and nothing else: corners that lost their sharp tips with them keep these. */
function withHairlinesTaken(united: Region, clean: Region): Region {
  const [before, after] = [scaled(united, FINER), scaled(clean, FINER)];
  const hairlines = (difference: Region) => {
    const thick = offsetRegion(offsetRegion(difference, -HAIRLINE), 2 * HAIRLINE);
    return thick.filter(([ring = []]) => ringPerimeter(ring) / 2 >= SHORTEST_HAIRLINE * FINER);
  };
  const slits = hairlines(differenceRegions(after, before));
  const bridges = hairlines(differenceRegions(before, after));
  return scaled(differenceRegions(unionRegions([before, slits]), bridges), 1 / FINER);
}

/** As many rings, of the same length in all: nothing was closed or cut. */
function hasSameEdge(a: Region, b: Region): boolean {
  const length = (region: Region) => ringsOf(region).reduce((sum, ring) => sum + ringPerimeter(ring), 0);
  return ringsOf(a).length === ringsOf(b).length && Math.abs(length(a) - length(b)) < SHORTEST_HAIRLINE;
}

/** The rings that hold something. */
function ringsOf(region: Region): Region[number][number][] {
  return region.flat().filter((ring) => Math.abs(ringArea(ring)) > HAIRLINE * ringPerimeter(ring));
}

/** How many times finer than the clipping grid the ground is widened and narrowed: sharp corners come back where they were. */
const FINER = 16;

/** The ground without hairlines. Corners sharper than an eighth of a right angle are cut off by some HAIRLINE. */
function withoutHairlines(ground: Region): Region {
  const widened = (region: Region, d: number) => offsetRegion(region, d * FINER, 1 / CLIP_UNITS_PER_INCH);
  const fine = scaled(ground, FINER);
  const clean = widened(widened(widened(fine, HAIRLINE), -2 * HAIRLINE), HAIRLINE);
  return onCorners(scaled(clean, 1 / FINER), ground);
}

function scaled(region: Region, by: number): Region {
  return movedRegion(region, ([x, y]) => [x * by, y * by]);
}

/** Corners that came out round go back to where they were. */
function onCorners(ground: Region, before: Region): Region {
  const corners = before.flat(2);
  const index = boxIndex(corners.map((p) => boundsOfPoints([p])));
  return movedRegion(ground, (p) => {
    let best = p;
    let away = RING_SPIKE;
    for (const i of index.search(grownBounds(boundsOfPoints([p]), RING_SPIKE))) {
      const corner = corners[i] as Point;
      const distance = distanceBetween(corner, p);
      if (distance > away) continue;
      best = corner;
      away = distance;
    }
    return best;
  });
}

/** The ring (first position not repeated) without hairlines; empty when it is nothing else. */
export function withoutSpikes(ring: readonly Point[]): Point[] {
  let points = [...ring];
  for (;;) {
    const kept = onePass(points);
    if (kept.length < 3) return [];
    if (kept.length === points.length) return kept;
    points = kept;
  }
}

/** Drops every position at which the ring turns straight back, looking at the positions kept so far. */
function onePass(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const p of points) {
    while (kept.length >= 2 && turnsBack(kept[kept.length - 2] as Point, kept[kept.length - 1] as Point, p)) kept.pop();
    const last = kept[kept.length - 1];
    if (!last || distanceBetween(last, p) > RING_SPIKE) kept.push(p);
  }
  // Across the seam.
  let start = 0;
  while (kept.length - start >= 3) {
    const last = kept[kept.length - 1] as Point;
    const first = kept[start] as Point;
    const isRepeat = distanceBetween(last, first) <= RING_SPIKE;
    if (isRepeat || turnsBack(kept[kept.length - 2] as Point, last, first)) kept.pop();
    else if (turnsBack(last, first, kept[start + 1] as Point)) start++;
    else break;
  }
  return kept.slice(start);
}

/** Whether a -> b -> c comes back along itself, within RING_SPIKE. */
function turnsBack(a: Point, b: Point, c: Point): boolean {
  const [inX, inY] = [b[0] - a[0], b[1] - a[1]];
  const [outX, outY] = [c[0] - b[0], c[1] - b[1]];
  if (inX * outX + inY * outY >= 0) return false;
  // The end of the shorter leg lies beside the longer one.
  const longer = Math.max(Math.hypot(inX, inY), Math.hypot(outX, outY));
  const shorter = Math.min(Math.hypot(inX, inY), Math.hypot(outX, outY));
  return Math.abs(inX * outY - inY * outX) <= RING_SPIKE * longer && shorter > 0;
}
