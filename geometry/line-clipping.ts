/**
 * Open lines cut by a region, without the clipping engine: exact signs, no grid, and nothing that a line doubling back
 * on itself could upset.
 *
 * Stages. 0. A segment that no side comes near is where the one before was, if that is so of it too. 1. Every other is
 * cut wherever a side of the region touches it; sides that run along it are noted. 2. The middle of each piece tells
 * whether it is inside; a piece along a side is. 3. Pieces of one kind that follow each other are joined, across the
 * line's own vertices too.
 */
import { orientation } from "./orientation.ts";
import { between, boundsOfPoints, distanceBetween } from "./points.ts";
import { regionContains, regionIndex } from "./region-index.ts";
import { sortNumbers } from "./short-lists.ts";
import { SAME_POINT } from "./tolerances.ts";
import type { Point, Region } from "./types.ts";

/** The stretches of the lines inside the region (its boundary included) and those outside, in the order of the lines. */
export function clipLines(
  lines: readonly (readonly Point[])[],
  region: Region,
): { inside: Point[][]; outside: Point[][] } {
  const result = { inside: [] as Point[][], outside: [] as Point[][] };
  const index = regionIndex(region);
  for (const line of lines) {
    let open: Point[] | null = null;
    let openInside = false;
    // Whether nothing of the region's sides comes near the segment before: its end lies on none of them.
    let wasClear = false;
    for (let i = 0; i + 1 < line.length; i++) {
      const a = line[i] as Point;
      const b = line[i + 1] as Point;
      const isClear = !index.touchesSides(a, b);
      if (open && isClear && wasClear) {
        if (a[0] !== b[0] || a[1] !== b[1]) open.push(b);
        continue;
      }
      wasClear = isClear;
      for (const piece of piecesOf(a, b, region)) {
        if (open && openInside === piece.inside) {
          if (piece.joinsStraight) open.pop();
          open.push(piece.to);
          continue;
        }
        open = [piece.from, piece.to];
        openInside = piece.inside;
        (piece.inside ? result.inside : result.outside).push(open);
      }
    }
  }
  return result;
}

interface Piece {
  readonly from: Point;
  readonly to: Point;
  readonly inside: boolean;
  /** The piece goes on from the one before within the same segment. */
  readonly joinsStraight: boolean;
}

function piecesOf(a: Point, b: Point, region: Region): Piece[] {
  const length = distanceBetween(a, b);
  if (length === 0) return [];
  const { cuts, along } = cutsOf(a, b, region);
  const pieces: Piece[] = [];
  let start = 0;
  for (const end of cuts) {
    // Cuts closer than a vertex are one; the last stretch always ends exactly at b.
    if ((end - start) * length <= SAME_POINT || (end < 1 && (1 - end) * length <= SAME_POINT)) continue;
    const middle = (start + end) / 2;
    const inside =
      along.some(([t0, t1]) => t0 <= middle && middle <= t1) || regionContains(region, between(a, b, middle));
    pieces.push({ from: between(a, b, start), to: between(a, b, end), inside, joinsStraight: pieces.length > 0 });
    start = end;
  }
  return pieces;
}

/** Shares of the segment at which sides touch it, ascending and ending in 1, and the stretches along which sides run. */
function cutsOf(a: Point, b: Point, region: Region): { cuts: number[]; along: [number, number][] } {
  const cuts = [1];
  const along: [number, number][] = [];
  const squared = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2;
  const shareOf = (p: Point): number => {
    const share = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / squared;
    return Math.min(1, Math.max(0, share));
  };
  regionIndex(region).visitSides(boundsOfPoints([a, b]), (c, d) => {
    const sideC = orientation(a, b, c);
    const sideD = orientation(a, b, d);
    if (sideC === 0 && sideD === 0) {
      const [t0, t1] = [shareOf(c), shareOf(d)];
      cuts.push(t0, t1);
      along.push(t0 <= t1 ? [t0, t1] : [t1, t0]);
      return;
    }
    if (sideC === 0) cuts.push(shareOf(c));
    if (sideD === 0) cuts.push(shareOf(d));
    if (sideC > 0 === sideD > 0 || sideC === 0 || sideD === 0) return;
    const sideA = orientation(c, d, a);
    const sideB = orientation(c, d, b);
    if (sideA > 0 === sideB > 0 && sideA !== 0 && sideB !== 0) return;
    cuts.push(sideA === sideB ? 0 : Math.min(1, Math.max(0, sideA / (sideA - sideB))));
  });
  return { cuts: sortNumbers(cuts), along };
}
