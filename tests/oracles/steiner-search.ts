/**
 * A reference for trees of branches: Dreyfus and Wagner's method on a stated graph (S. E. Dreyfus, R. A. Wagner, "The Steiner
 * problem in graphs", Networks 1, 1971). The graph: parts, network and solids' corners, and a square lattice of places
 * `spacing` inches apart over everything; every pair that sees each other is an edge. Its own sight test, on rectangles or convex solids.
 */
import type { Point } from "../../geometry/types.ts";

export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** True when the segment passes through the inside of the box (Liang and Barsky's clipping). */
function passesThrough(a: Point, b: Point, box: Box): boolean {
  let [t0, t1] = [0, 1];
  for (const [p, d, low, high] of [
    [a[0], b[0] - a[0], box.x0, box.x1],
    [a[1], b[1] - a[1], box.y0, box.y1],
  ] as const) {
    if (Math.abs(d) < 1e-12) {
      if (p <= low + 1e-9 || p >= high - 1e-9) return false;
      continue;
    }
    const [near, far] = d > 0 ? [(low - p) / d, (high - p) / d] : [(high - p) / d, (low - p) / d];
    t0 = Math.max(t0, near);
    t1 = Math.min(t1, far);
  }
  return t1 - t0 > 1e-9;
}

/** True when the segment crosses no box. */
export function clearOfBoxes(a: Point, b: Point, boxes: readonly Box[]): boolean {
  return !boxes.some((box) => passesThrough(a, b, box));
}

function nearestOnLine(p: Point, a: Point, b: Point): Point {
  const squared = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2;
  const t = squared === 0 ? 0 : ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / squared;
  const share = Math.max(0, Math.min(1, t));
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

/** What stands in the way: corners that a way may bend at, and whether a straight line crosses nothing. */
export interface Ground {
  readonly corners: readonly Point[];
  readonly isClear: (a: Point, b: Point) => boolean;
}

function boxedGround(boxes: readonly Box[]): Ground {
  return {
    corners: boxes.flatMap(({ x0, y0, x1, y1 }): Point[] => [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ]),
    isClear: (a, b) => clearOfBoxes(a, b, boxes),
  };
}

/** Ground with solids of any convex shape, counter-clockwise, that stand apart. */
export function convexGround(solids: readonly (readonly Point[])[]): Ground {
  return {
    corners: solids.flat(),
    isClear: (a, b) => !solids.some((solid) => passesConvex(a, b, solid)),
  };
}

/** True when the segment passes through the inside: what the lines of all sides leave of it (Cyrus and Beck's clipping). */
function passesConvex(a: Point, b: Point, solid: readonly Point[]): boolean {
  let [t0, t1] = [0, 1];
  for (const [i, u] of solid.entries()) {
    const v = solid[(i + 1) % solid.length] as Point;
    const length = Math.hypot(v[0] - u[0], v[1] - u[1]);
    const inside = (p: Point) => ((v[0] - u[0]) * (p[1] - u[1]) - (v[1] - u[1]) * (p[0] - u[0])) / length - 1e-7;
    const [da, db] = [inside(a), inside(b)];
    if (da <= 0 && db <= 0) return false;
    if (da < 0) t0 = Math.max(t0, da / (da - db));
    if (db < 0) t1 = Math.min(t1, da / (da - db));
  }
  return t1 - t0 > 1e-9;
}

/**
 * Least length plus `allowance` for every place away from parts and network where branches meet, of a tree from `network`
 * (a polyline) to all `parts` clear of `boxes`.
 */
export function searchedTree(
  network: readonly Point[],
  parts: readonly Point[],
  boxes: readonly Box[],
  allowance: number,
  spacing: number,
): number {
  return searchedTreeOn(boxedGround(boxes), network, parts, allowance, spacing);
}

/** The same on any ground. */
export function searchedTreeOn(
  { corners, isClear }: Ground,
  network: readonly Point[],
  parts: readonly Point[],
  allowance: number,
  spacing: number,
): number {
  const all = [...network, ...parts];
  const nodes: Point[] = [...parts, ...corners];
  const [xs, ys] = [all.map((p) => p[0]), all.map((p) => p[1])];
  for (let x = Math.min(...xs); x <= Math.max(...xs) + spacing; x += spacing) {
    for (let y = Math.min(...ys); y <= Math.max(...ys) + spacing; y += spacing) nodes.push([x, y]);
  }
  const count = nodes.length;
  const length = new Float64Array(count * count).fill(Number.POSITIVE_INFINITY);
  for (let i = 0; i < count; i++) {
    for (let j = i; j < count; j++) {
      const [a, b] = [nodes[i] as Point, nodes[j] as Point];
      if (isClear(a, b)) length[i * count + j] = length[j * count + i] = Math.hypot(b[0] - a[0], b[1] - a[1]);
    }
  }
  const full = 2 ** parts.length;
  const cost: Float64Array[] = Array.from({ length: full }, () =>
    new Float64Array(count).fill(Number.POSITIVE_INFINITY),
  );
  for (let set = 1; set < full; set++) {
    const here = cost[set] as Float64Array;
    parts.forEach((_, k) => {
      if (set === 1 << k) here[k] = 0;
    });
    for (let half = (set - 1) & set; half > set - half - 1 && half > 0; half = (half - 1) & set) {
      const [one, other] = [cost[half] as Float64Array, cost[set ^ half] as Float64Array];
      for (let v = 0; v < count; v++) {
        const joined = (one[v] as number) + (other[v] as number) + (v < parts.length ? 0 : allowance);
        if (joined < (here[v] as number)) here[v] = joined;
      }
    }
    spread(here, length, count);
  }
  // Parts may be reached in separate trees: the network joins them for nothing.
  const toNetwork = nodes.map((p) => {
    let best = Number.POSITIVE_INFINITY;
    for (let i = 1; i < network.length; i++) {
      const foot = nearestOnLine(p, network[i - 1] as Point, network[i] as Point);
      const away = Math.hypot(foot[0] - p[0], foot[1] - p[1]);
      if (away < best && isClear(p, foot)) best = away;
    }
    return best;
  });
  const joined = new Float64Array(full).fill(Number.POSITIVE_INFINITY);
  joined[0] = 0;
  for (let set = 1; set < full; set++) {
    const here = cost[set] as Float64Array;
    let best = Number.POSITIVE_INFINITY;
    for (let v = 0; v < count; v++) best = Math.min(best, (here[v] as number) + (toNetwork[v] as number));
    for (let half = (set - 1) & set; half > 0; half = (half - 1) & set) {
      best = Math.min(best, (joined[half] as number) + (joined[set ^ half] as number));
    }
    joined[set] = best;
  }
  return joined[full - 1] as number;
}

/** Dijkstra's method from all nodes at their costs. */
function spread(cost: Float64Array, length: Float64Array, count: number): void {
  const done = new Uint8Array(count);
  for (let round = 0; round < count; round++) {
    let at = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let v = 0; v < count; v++) {
      if (!done[v] && (cost[v] as number) < least) {
        least = cost[v] as number;
        at = v;
      }
    }
    if (at < 0) return;
    done[at] = 1;
    for (let v = 0; v < count; v++) {
      const through = least + (length[at * count + v] as number);
      if (through < (cost[v] as number)) cost[v] = through;
    }
  }
}
