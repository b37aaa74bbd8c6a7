/**
 * Square grids of bare conductor: straight lines in two directions, a spacing apart, cut to a region.
 *
 * Stages. 1. Each direction by itself: every edge of the region notes where it meets which line; along a line the notes,
 * in order, are pairs of "in" and "out". 2. The origin: upright and level lines do not know of each other, so each is
 * moved by steps of 1/24 of the spacing, counted from either edge, and the positions with the least length are kept; of
 * those the most nearly centered, and of those the pair with the fewest crossings. So a region turned by quarters or
 * mirrored has the same grid. 3. Crossings: the level lines that each upright stretch meets inside the region.
 * Grids that run along a pool's own direction: aligned-grid.ts.
 *
 * Inches. Regions are flattened polygons (types.ts); a grid is laid, not judged, so nothing here decides a rule.
 */
import { sortBy } from "./short-lists.ts";
import { GRID_EDGE, GRID_LEAN, GRID_SAME_LENGTH } from "./tolerances.ts";
import type { Point, Region } from "./types.ts";

/** Positions tried for each direction within one spacing. */
const STEPS = 24;

export interface Grid {
  /** Inches of conductor, both directions. */
  readonly length: number;
  /** Places where an upright line crosses a level one: a connection each. */
  readonly crossings: number;
  /** Stretches, two positions each: upright ones first, from left to right, then level ones from bottom to top. */
  readonly lines: readonly (readonly [Point, Point])[];
  /** A position where two lines of the grid would cross. */
  readonly origin: Point;
  /** Stretches that cross no other and so hang together with nothing. */
  readonly loose: number;
}

/** Lines `spacing` inches apart (> 0) within the region. Without an origin: the one of least length. An empty region has an empty grid. */
export function gridOver(region: Region, spacing: number, origin?: Point): Grid {
  if (!(spacing > 0) || !Number.isFinite(spacing)) throw new Error(`a grid needs a spacing above 0, not ${spacing}`);
  const upright = edgesOf(region, false);
  const level = edgesOf(region, true);
  const { x0, y0, columns, rows, crossings, loose } = fewestCrossings(
    upright,
    level,
    spacing,
    origin ? [origin[0]] : bestOffsets(upright, spacing),
    origin ? [origin[1]] : bestOffsets(level, spacing),
  );
  let length = 0;
  const lines: [Point, Point][] = [];
  for (const { line, from, to } of columns) {
    const x = x0 + line * spacing;
    length += to - from;
    lines.push([
      [x, from],
      [x, to],
    ]);
  }
  for (const { line, from, to } of rows) {
    const y = y0 + line * spacing;
    length += to - from;
    lines.push([
      [from, y],
      [to, y],
    ]);
  }
  return { length, crossings, lines, origin: [x0, y0], loose };
}

/** An edge of the region as seen by lines at constant `u`, running along `v`. */
interface Side {
  readonly u0: number;
  readonly v0: number;
  readonly u1: number;
  readonly v1: number;
  /** 1 where the ring runs from u0 to u1, -1 where it runs back. */
  readonly way: 1 | -1;
}

/** A stretch of line number `line`, between two positions along it. */
interface Stretch {
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

/** The edges of the region's rings, u = x for upright lines and u = y for level ones. Edges along the lines never meet them. */
function edgesOf(region: Region, level: boolean): Side[] {
  const u = level ? 1 : 0;
  const v = level ? 0 : 1;
  const sides: Side[] = [];
  for (const polygon of region) {
    for (const ring of polygon) {
      for (let i = 0; i + 1 < ring.length; i++) {
        const a = ring[i] as Point;
        const b = ring[i + 1] as Point;
        if (a[u] === b[u]) continue;
        sides.push(
          a[u] < b[u]
            ? { u0: a[u], v0: a[v], u1: b[u], v1: b[v], way: 1 }
            : { u0: b[u], v0: b[v], u1: a[u], v1: a[v], way: -1 },
        );
      }
    }
  }
  return sides;
}

function stretches(sides: readonly Side[], offset: number, spacing: number): Stretch[] {
  const meets = new Map<number, number[]>();
  for (const { u0, v0, u1, v1 } of sides) {
    const slope = (v1 - v0) / (u1 - u0);
    // A vertex on a line belongs to the edge that starts there: every line meets each ring an even number of times.
    const last = Math.ceil((u1 - offset) / spacing) - 1;
    for (let line = Math.ceil((u0 - offset) / spacing); line <= last; line++) {
      const at = v0 + slope * (offset + line * spacing - u0);
      const list = meets.get(line);
      if (list) list.push(at);
      else meets.set(line, [at]);
    }
  }
  const found: Stretch[] = [];
  for (const line of [...meets.keys()].sort((a, b) => a - b)) {
    const list = (meets.get(line) as number[]).sort((a, b) => a - b);
    for (let i = 0; i + 1 < list.length; i += 2) {
      const [from, to] = [list[i] as number, list[i + 1] as number];
      if (to - from > GRID_EDGE) found.push({ line, from, to });
    }
  }
  return found;
}

/** The offsets with the least length that leave the lines most nearly centered between the edges: one, or a few that are as good. */
function bestOffsets(sides: readonly Side[], spacing: number): number[] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { u0, u1 } of sides) {
    low = Math.min(low, u0);
    high = Math.max(high, u1);
  }
  if (low > high) return [0];
  const tried: { readonly offset: number; readonly lean: number; length: number }[] = [];
  for (let step = 1; step < 2 * STEPS; step += 2) {
    // Never on an edge itself: half steps from the lowest one and from the highest one.
    const shift = (step * spacing) / (2 * STEPS);
    for (const offset of [low + shift, low + remainder(high - shift - low, spacing)]) {
      const lean = Math.abs(offset - low - remainder(high - offset, spacing));
      tried.push({ offset, lean, length: 0 });
    }
  }
  const ascending = sortBy([...tried], ({ offset }) => offset);
  const lengths = lengthsAt(
    sides,
    Float64Array.from(ascending, ({ offset }) => offset),
    spacing,
  );
  for (const [i, one] of ascending.entries()) one.length = lengths[i] as number;
  const least = Math.min(...tried.map(({ length }) => length)) * (1 + GRID_SAME_LENGTH) + GRID_EDGE;
  const short = tried.filter(({ length }) => length <= least);
  const straightest = Math.min(...short.map(({ lean }) => lean)) + GRID_LEAN;
  const offsets: number[] = [];
  for (const { offset, lean } of short) {
    if (lean <= straightest && offsets.every((other) => Math.abs(other - offset) > GRID_LEAN)) offsets.push(offset);
  }
  return offsets;
}

function remainder(value: number, divisor: number): number {
  return ((value % divisor) + divisor) % divisor;
}

/**
 * Length of all lines inside for each of some offsets, which ascend and lie within one spacing: one sum over the edges, since
 * what enters by one edge leaves by another that runs the other way. An edge that is narrower than the spacing is met
 * at few of the offsets, and only those are looked at.
 */
function lengthsAt(sides: readonly Side[], offsets: Float64Array, spacing: number): Float64Array {
  const sums = new Float64Array(offsets.length);
  const least = offsets[0] as number;
  for (let s = 0; s < sides.length; s++) {
    const side = sides[s] as Side;
    const width = side.u1 - side.u0 + 2 * GRID_EDGE;
    if (width >= spacing) {
      for (let i = 0; i < offsets.length; i++) addLength(sums, i, side, offsets[i] as number, spacing);
      continue;
    }
    // Where the edge begins among the offsets; it may go on at the first of them.
    const begin = remainder(side.u0 - GRID_EDGE - least, spacing);
    let i = firstFrom(offsets, least + begin);
    for (; i < offsets.length && (offsets[i] as number) - least <= begin + width; i++)
      addLength(sums, i, side, offsets[i] as number, spacing);
    for (i = 0; i < offsets.length && (offsets[i] as number) - least <= begin + width - spacing; i++)
      addLength(sums, i, side, offsets[i] as number, spacing);
  }
  return sums.map(Math.abs);
}

/** The first of ascending values that is at least `value`. */
function firstFrom(values: Float64Array, value: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function addLength(sums: Float64Array, i: number, side: Side, offset: number, spacing: number): void {
  const { u0, v0, u1, v1, way } = side;
  const first = Math.ceil((u0 - offset) / spacing);
  const last = Math.ceil((u1 - offset) / spacing) - 1;
  if (last < first) return;
  const middle = offset + ((first + last) / 2) * spacing;
  sums[i] = (sums[i] as number) + way * (last - first + 1) * (v0 + ((v1 - v0) / (u1 - u0)) * (middle - u0));
}

interface Laid {
  readonly x0: number;
  readonly y0: number;
  readonly columns: readonly Stretch[];
  readonly rows: readonly Stretch[];
  readonly crossings: number;
  readonly loose: number;
}

/** Of offsets that are as good in each direction, the pair that makes the fewest crossings. */
function fewestCrossings(
  upright: readonly Side[],
  level: readonly Side[],
  spacing: number,
  xs: readonly number[],
  ys: readonly number[],
): Laid {
  let best: Laid | null = null;
  for (const x0 of xs) {
    const columns = stretches(upright, x0, spacing);
    for (const y0 of ys) {
      const rows = stretches(level, y0, spacing);
      const counted = countCrossings(columns, rows, x0, y0, spacing);
      if (best === null || counted.crossings < best.crossings) best = { x0, y0, columns, rows, ...counted };
    }
  }
  if (best === null) throw new Error("a grid was asked for without a place to begin");
  return best;
}

function countCrossings(
  columns: readonly Stretch[],
  rows: readonly Stretch[],
  x0: number,
  y0: number,
  spacing: number,
): { crossings: number; loose: number } {
  const byRow = new Map<number, number[]>();
  rows.forEach(({ line }, i) => {
    const list = byRow.get(line);
    if (list) list.push(i);
    else byRow.set(line, [i]);
  });
  const crossed = new Set<number>();
  let crossings = 0;
  let loose = 0;
  for (const { line, from, to } of columns) {
    const x = x0 + line * spacing;
    let here = 0;
    const last = Math.floor((to + GRID_EDGE - y0) / spacing);
    for (let row = Math.ceil((from - GRID_EDGE - y0) / spacing); row <= last; row++) {
      for (const i of byRow.get(row) ?? []) {
        const { from: left, to: right } = rows[i] as Stretch;
        if (x < left - GRID_EDGE || x > right + GRID_EDGE) continue;
        here++;
        crossed.add(i);
      }
    }
    crossings += here;
    if (here === 0) loose++;
  }
  return { crossings, loose: loose + rows.length - crossed.size };
}
