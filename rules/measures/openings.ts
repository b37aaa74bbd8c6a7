/** Cuts open passages out of the line of a wall or building. */

import { flattenPath, pathFrom } from "../../geometry/outline.ts";
import { distanceBetween } from "../../geometry/points.ts";
import { FINE_FLATTEN_TOLERANCE, SEALED_GAP } from "../../geometry/tolerances.ts";
import type { Path, Point } from "../../geometry/types.ts";
import { wallFootprint } from "../../geometry/wall-footprint.ts";
import type { OpeningElement } from "../site/elements.ts";

/** How far an opening's ends may lie off the line of the wall that it is in, beyond half the wall's thickness, inches. */
const OPENING_OFF_LINE = 6;

export interface PiecesOfLine {
  readonly lines: readonly Point[][];
  /** Footprints of the pieces at a wall's thickness, not repeating the first position. */
  footprints(thickness: number): Point[][];
}

/**
 * What is left of `path` when the openings that lie on it are cut out; null when none does. A rest shorter than SEALED_GAP
 * beside an opening comes from rounding and is none.
 */
export function withoutOpenings(
  path: Path,
  halfThickness: number,
  openings: readonly OpeningElement[],
): PiecesOfLine | null {
  const points = flattenPath(path, FINE_FLATTEN_TOLERANCE);
  if (path.closed && points[0]) points.push(points[0]);
  const stations = stationsOf(points);
  const total = stations[stations.length - 1] ?? 0;
  const gaps: [number, number][] = [];
  for (const opening of openings) {
    const ends = opening.path.vertices;
    const first = ends[0];
    const last = ends[ends.length - 1];
    if (!first || !last) continue;
    const a = project([first[0], first[1]], points, stations);
    const b = project([last[0], last[1]], points, stations);
    if (Math.max(a.off, b.off) > halfThickness + OPENING_OFF_LINE) continue;
    const [lo, hi] = a.s < b.s ? [a.s, b.s] : [b.s, a.s];
    if (path.closed && hi - lo > total / 2) gaps.push([0, lo], [hi, total]);
    else gaps.push([lo, hi]);
  }
  if (gaps.length === 0) return null;
  gaps.sort((p, q) => p[0] - q[0]);
  const kept: [number, number][] = [];
  let from = 0;
  for (const [lo, hi] of gaps) {
    if (lo - from > SEALED_GAP) kept.push([from, lo]);
    from = Math.max(from, hi);
  }
  if (total - from > SEALED_GAP) kept.push([from, total]);
  const lines = kept.map(([lo, hi]) => between(lo, hi, points, stations));
  return {
    lines,
    footprints: (thickness) =>
      lines.map((vertices) =>
        flattenPath(wallFootprint(pathFrom({ vertices, closed: false }), thickness).outer, FINE_FLATTEN_TOLERANCE),
      ),
  };
}

function stationsOf(points: readonly Point[]): number[] {
  const stations = [0];
  for (let i = 1; i < points.length; i++) {
    stations.push((stations[i - 1] ?? 0) + distanceBetween(points[i - 1] as Point, points[i] as Point));
  }
  return stations;
}

function project(p: Point, points: readonly Point[], stations: readonly number[]): { s: number; off: number } {
  let best = { s: 0, off: Number.POSITIVE_INFINITY };
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as Point;
    const b = points[i] as Point;
    const dx = b[0] - a[0];
    const dy = b[1] - a[1];
    const span = dx * dx + dy * dy;
    const t = span === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / span));
    const off = Math.hypot(p[0] - a[0] - dx * t, p[1] - a[1] - dy * t);
    if (off < best.off) best = { s: (stations[i - 1] as number) + t * Math.sqrt(span), off };
  }
  return best;
}

function between(lo: number, hi: number, points: readonly Point[], stations: readonly number[]): Point[] {
  const at = (s: number): Point => {
    let i = 1;
    while (i < stations.length - 1 && (stations[i] as number) < s) i++;
    const s0 = stations[i - 1] as number;
    const s1 = stations[i] as number;
    const t = s1 === s0 ? 0 : (s - s0) / (s1 - s0);
    const a = points[i - 1] as Point;
    const b = points[i] as Point;
    return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  };
  const inner = points.filter((_, i) => (stations[i] as number) > lo && (stations[i] as number) < hi);
  return [at(lo), ...inner, at(hi)];
}
