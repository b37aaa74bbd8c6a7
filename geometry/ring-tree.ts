/**
 * The sides of one straight-sided ring, filed by place.
 *
 * Stages. 1. A tree of boxes over the sides in their order, a plain binary heap: node i holds the box around its children
 * 2i + 1 and 2i + 2, leaves are runs of LEAF sides. 2. Lines ask for the sides whose boxes they touch. 3. Whether the ring
 * holds a position is told by a ray to the right of it: a run of sides that lies wholly to the right crosses the ray as
 * its two ends say, and is not looked into.
 */
import { turnOf } from "./orientation.ts";
import type { Bounds, Point } from "./types.ts";

const LEAF = 4;

/** Nodes that wait to be looked into; a tree is far less deep. */
const waiting = new Int32Array(64);

export class RingTree {
  /** Corners without repeats, the first once more at the end: side i runs from corner i to the next. */
  readonly #corners: Point[] = [];
  readonly #sides: number;
  readonly #firstLeaf: number;
  readonly #boxes: Float64Array;

  /** The first position may be repeated at the end or not. */
  constructor(ring: readonly Point[]) {
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

  /** How often the ring runs round a position, counter-clockwise positive; on the ring itself any answer is possible. */
  windingRound(x: number, y: number): number {
    const boxes = this.#boxes;
    let winding = 0;
    let top = 0;
    waiting[0] = 0;
    while (top >= 0) {
      const node = waiting[top] as number;
      top -= 1;
      const at = node * 4;
      if ((boxes[at + 1] as number) > y || (boxes[at + 3] as number) <= y || (boxes[at + 2] as number) < x) continue;
      const first = this.#firstSide(node);
      const end = this.#endSide(node);
      if ((boxes[at] as number) > x) {
        winding += riseOver(this.#corners[first] as Point, this.#corners[end] as Point, y);
        continue;
      }
      if (node < this.#firstLeaf) {
        waiting[top + 1] = 2 * node + 1;
        waiting[top + 2] = 2 * node + 2;
        top += 2;
        continue;
      }
      for (let i = first; i < end; i++) {
        const a = this.#corners[i] as Point;
        const b = this.#corners[i + 1] as Point;
        const rise = riseOver(a, b, y);
        if (rise !== 0 && turnOf(a[0], a[1], b[0], b[1], x, y) * rise > 0) winding += rise;
      }
    }
    return winding;
  }

  /** Whether a ray to the right of a position crosses an odd number of sides: each turns the winding by one. */
  isCrossedOddly(x: number, y: number): boolean {
    return this.windingRound(x, y) % 2 !== 0;
  }
}

/** 1 from a position at or below a level to one above it, -1 the other way, else 0. */
function riseOver(a: Point, b: Point, y: number): number {
  return a[1] > y === b[1] > y ? 0 : b[1] > y ? 1 : -1;
}
