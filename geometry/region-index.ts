/**
 * The straight sides of a region's rings, filed by place: for asking about many positions and lines.
 *
 * Stages. 1. Each ring gets a tree of boxes over its sides in their order, a plain binary heap: node i holds the box around
 * its children 2i + 1 and 2i + 2, leaves are runs of LEAF sides. 2. Lines ask for the sides whose boxes they touch. 3. A
 * position is held where a ray to the right of it crosses an odd number of sides: a run of sides that lies wholly to the
 * right crosses the ray an odd number of times when its ends lie on different sides of it, and is not looked into.
 */
import { turnOf } from "./orientation.ts";
import type { Bounds, Point, Region, Ring } from "./types.ts";

export interface RegionIndex {
  /** Calls `visit` with every side whose box touches `box`. */
  visitSides(box: Bounds, visit: (from: Point, to: Point) => void): void;
  /** Whether the box of any side touches that of the segment from a to b. */
  touchesSides(a: Point, b: Point): boolean;
  /** Whether a ray to the right of a position crosses an odd number of sides. */
  holds(x: number, y: number): boolean;
}

const indexes = new WeakMap<Region, RegionIndex>();

/** The index of a region, built at the first question about it. */
export function regionIndex(region: Region): RegionIndex {
  const known = indexes.get(region);
  if (known) return known;
  const rings: RingTree[] = [];
  for (const polygon of region) for (const ring of polygon) if (ring.length > 0) rings.push(new RingTree(ring));
  const index: RegionIndex = {
    visitSides: (box, visit) => {
      for (const ring of rings) ring.visitSides(box, visit);
    },
    touchesSides: (a, b) => {
      const minX = Math.min(a[0], b[0]);
      const minY = Math.min(a[1], b[1]);
      const maxX = Math.max(a[0], b[0]);
      const maxY = Math.max(a[1], b[1]);
      for (const ring of rings) if (ring.touchesSides(minX, minY, maxX, maxY)) return true;
      return false;
    },
    holds: (x, y) => {
      let inside = false;
      for (const ring of rings) if (ring.isCrossedOddly(x, y)) inside = !inside;
      return inside;
    },
  };
  indexes.set(region, index);
  return index;
}

/** True when the region holds `p` (inside an odd number of its rings); on the boundary either answer is possible. */
export function regionContains(region: Region, p: Point): boolean {
  return regionIndex(region).holds(p[0], p[1]);
}

const LEAF = 4;

/** Nodes that wait to be looked into; a tree is far less deep. */
const waiting = new Int32Array(64);

class RingTree {
  /** Corners without repeats, the first once more at the end: side i runs from corner i to the next. */
  readonly #corners: Point[] = [];
  readonly #sides: number;
  readonly #firstLeaf: number;
  readonly #boxes: Float64Array;

  constructor(ring: Ring) {
    const corners = this.#corners;
    for (let i = 0; i < ring.length; i++) {
      const p = ring[i] as Point;
      const last = corners[corners.length - 1];
      if (last === undefined || last[0] !== p[0] || last[1] !== p[1]) corners.push(p);
    }
    const first = corners[0] as Point;
    const last = corners[corners.length - 1] as Point;
    if (first[0] !== last[0] || first[1] !== last[1]) corners.push(first);
    this.#sides = corners.length - 1;
    let leaves = 1;
    while (leaves * LEAF < this.#sides) leaves *= 2;
    this.#firstLeaf = leaves - 1;
    this.#boxes = new Float64Array((this.#firstLeaf + leaves) * 4);
    for (let node = this.#firstLeaf + leaves - 1; node >= 0; node--) this.#setBox(node);
  }

  #setBox(node: number): void {
    let minX = Number.POSITIVE_INFINITY;
    let minY = Number.POSITIVE_INFINITY;
    let maxX = Number.NEGATIVE_INFINITY;
    let maxY = Number.NEGATIVE_INFINITY;
    const boxes = this.#boxes;
    if (node < this.#firstLeaf) {
      for (let i = (2 * node + 1) * 4; i < (2 * node + 3) * 4; i += 4) {
        minX = Math.min(minX, boxes[i] as number);
        minY = Math.min(minY, boxes[i + 1] as number);
        maxX = Math.max(maxX, boxes[i + 2] as number);
        maxY = Math.max(maxY, boxes[i + 3] as number);
      }
    } else {
      const start = (node - this.#firstLeaf) * LEAF;
      const end = Math.min(start + LEAF, this.#sides);
      for (let i = start; start < end && i <= end; i++) {
        const [x, y] = this.#corners[i] as Point;
        minX = Math.min(minX, x);
        minY = Math.min(minY, y);
        maxX = Math.max(maxX, x);
        maxY = Math.max(maxY, y);
      }
    }
    boxes[node * 4] = minX;
    boxes[node * 4 + 1] = minY;
    boxes[node * 4 + 2] = maxX;
    boxes[node * 4 + 3] = maxY;
  }

  /** The first of the sides under a node. */
  #firstSide(node: number): number {
    let first = node;
    while (first < this.#firstLeaf) first = 2 * first + 1;
    return Math.min((first - this.#firstLeaf) * LEAF, this.#sides);
  }

  /** The number after the last of the sides under a node. */
  #endSide(node: number): number {
    let last = node;
    while (last < this.#firstLeaf) last = 2 * last + 2;
    return Math.min((last - this.#firstLeaf + 1) * LEAF, this.#sides);
  }

  visitSides(box: Bounds, visit: (from: Point, to: Point) => void, node = 0): void {
    const boxes = this.#boxes;
    const at = node * 4;
    if ((boxes[at] as number) > box.maxX || (boxes[at + 2] as number) < box.minX) return;
    if ((boxes[at + 1] as number) > box.maxY || (boxes[at + 3] as number) < box.minY) return;
    if (node < this.#firstLeaf) {
      this.visitSides(box, visit, 2 * node + 1);
      this.visitSides(box, visit, 2 * node + 2);
      return;
    }
    const end = this.#endSide(node);
    for (let i = this.#firstSide(node); i < end; i++) {
      const a = this.#corners[i] as Point;
      const b = this.#corners[i + 1] as Point;
      if (Math.min(a[0], b[0]) > box.maxX || Math.max(a[0], b[0]) < box.minX) continue;
      if (Math.min(a[1], b[1]) > box.maxY || Math.max(a[1], b[1]) < box.minY) continue;
      visit(a, b);
    }
  }

  touchesSides(minX: number, minY: number, maxX: number, maxY: number): boolean {
    const boxes = this.#boxes;
    let top = 0;
    waiting[0] = 0;
    while (top >= 0) {
      const node = waiting[top] as number;
      top -= 1;
      const at = node * 4;
      if ((boxes[at] as number) > maxX || (boxes[at + 2] as number) < minX) continue;
      if ((boxes[at + 1] as number) > maxY || (boxes[at + 3] as number) < minY) continue;
      if (node < this.#firstLeaf) {
        waiting[top + 1] = 2 * node + 1;
        waiting[top + 2] = 2 * node + 2;
        top += 2;
        continue;
      }
      const end = this.#endSide(node);
      for (let i = this.#firstSide(node); i < end; i++) {
        const a = this.#corners[i] as Point;
        const b = this.#corners[i + 1] as Point;
        if (Math.min(a[0], b[0]) > maxX || Math.max(a[0], b[0]) < minX) continue;
        if (Math.min(a[1], b[1]) <= maxY && Math.max(a[1], b[1]) >= minY) return true;
      }
    }
    return false;
  }

  isCrossedOddly(x: number, y: number): boolean {
    const boxes = this.#boxes;
    let odd = false;
    let top = 0;
    waiting[0] = 0;
    while (top >= 0) {
      const node = waiting[top] as number;
      top -= 1;
      const at = node * 4;
      if ((boxes[at + 1] as number) > y || (boxes[at + 3] as number) <= y || (boxes[at + 2] as number) < x) continue;
      if ((boxes[at] as number) > x) {
        const from = this.#corners[this.#firstSide(node)] as Point;
        const to = this.#corners[this.#endSide(node)] as Point;
        if (from[1] > y !== to[1] > y) odd = !odd;
        continue;
      }
      if (node < this.#firstLeaf) {
        waiting[top + 1] = 2 * node + 1;
        waiting[top + 2] = 2 * node + 2;
        top += 2;
        continue;
      }
      const end = this.#endSide(node);
      for (let i = this.#firstSide(node); i < end; i++) {
        const a = this.#corners[i] as Point;
        const b = this.#corners[i + 1] as Point;
        if (a[1] > y === b[1] > y) continue;
        const side = turnOf(a[0], a[1], b[0], b[1], x, y);
        if (b[1] > a[1] ? side > 0 : side < 0) odd = !odd;
      }
    }
    return odd;
  }
}
