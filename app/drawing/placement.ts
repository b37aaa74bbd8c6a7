/**
 * Finds room for type and number marks so that none lies on another.
 *
 * Stages: what stands fast is blocked (boxes) or inked (sampled lines); then each text or mark asks for a place in the
 * order of its importance; a place once given is blocked for the next. Of the free places near the one wished for, the
 * one that hides least ink and lies nearest wins. Points of paper, y up; boxes and ink lie in a grid of cells.
 */
import { boundsOverlap } from "../../geometry/points.ts";
import type { Bounds, Point } from "../../geometry/types.ts";

const CELL = 24;
/** Ink is sampled this densely, points. */
const INK_STEP = 3;
/** Cost of hiding one sample of ink, in points of distance. */
const INK_COST = 2.2;
const DIRECTIONS = 16;

export interface Wish {
  /** Where the place should be, or what it belongs to. */
  readonly anchor: Point;
  readonly width: number;
  readonly height: number;
  /** Nearest and farthest distance of the center from the anchor. */
  readonly least: number;
  readonly most: number;
  /** Direction that is liked best, radians; others cost up to a few points more. */
  readonly toward?: number;
}

export class Placer {
  private readonly frame: Bounds;
  private readonly boxes = new Map<string, Bounds[]>();
  private readonly ink = new Map<string, Point[]>();

  /** `frame`: no place is given outside it. */
  constructor(frame: Bounds) {
    this.frame = frame;
  }

  /** Nothing may be placed over this box. */
  block(box: Bounds): void {
    for (const key of cellsOf(box)) push(this.boxes, key, box);
  }

  /** Lines that are better not hidden. */
  addInk(line: readonly Point[]): void {
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1], line[i]];
      if (!a || !b) continue;
      const count = Math.min(600, Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / INK_STEP)));
      for (let k = 0; k < count; k++) {
        const t = (k + 0.5) / count;
        const p: Point = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
        if (p[0] >= this.frame.minX && p[0] <= this.frame.maxX && p[1] >= this.frame.minY && p[1] <= this.frame.maxY) {
          push(this.ink, cellKey(p[0], p[1]), p);
        }
      }
    }
  }

  isFree(box: Bounds): boolean {
    const { frame } = this;
    if (box.minX < frame.minX || box.maxX > frame.maxX || box.minY < frame.minY || box.maxY > frame.maxY) return false;
    for (const key of cellsOf(box)) {
      for (const other of this.boxes.get(key) ?? []) if (boundsOverlap(box, other)) return false;
    }
    return true;
  }

  /** Samples of ink that the box would hide. */
  hidden(box: Bounds): number {
    let count = 0;
    for (const key of cellsOf(box)) {
      for (const [x, y] of this.ink.get(key) ?? []) {
        if (x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY) count++;
      }
    }
    return count;
  }

  /** A free place round the anchor, which is then taken; null when there is none within `most`. */
  place(wish: Wish): Point | null {
    let best: { cost: number; center: Point } | null = null;
    for (let radius = wish.least; radius <= wish.most; radius += Math.max(4, radius / 6)) {
      if (best !== null && radius > best.cost) break;
      for (let i = 0; i < (radius === 0 ? 1 : DIRECTIONS); i++) {
        const angle = (i * 2 * Math.PI) / DIRECTIONS;
        // A wide box is moved along its own shape, so that it keeps as clear of the anchor sideways as above.
        const x = wish.anchor[0] + Math.cos(angle) * (radius + (radius === 0 ? 0 : wish.width / 2 - wish.height / 2));
        const y = wish.anchor[1] + Math.sin(angle) * radius;
        const box = boxAround([x, y], wish.width, wish.height);
        if (!this.isFree(box)) continue;
        const turn = wish.toward === undefined ? 0 : 3 * (1 - Math.cos(angle - wish.toward));
        const cost = radius + turn + this.hidden(box) * INK_COST;
        if (best === null || cost < best.cost) best = { cost, center: [x, y] };
      }
    }
    if (best === null) return null;
    this.block(boxAround(best.center, wish.width, wish.height));
    return best.center;
  }

  /** The first of the given centers that is free and hides least, taken; null when none is free. */
  placeAmong(centers: readonly Point[], width: number, height: number): Point | null {
    let best: { cost: number; center: Point } | null = null;
    for (const [i, center] of centers.entries()) {
      const box = boxAround(center, width, height);
      if (!this.isFree(box)) continue;
      const cost = i + this.hidden(box) * INK_COST;
      if (best === null || cost < best.cost) best = { cost, center };
    }
    if (best === null) return null;
    this.block(boxAround(best.center, width, height));
    return best.center;
  }
}

export function boxAround([x, y]: Point, width: number, height: number): Bounds {
  return { minX: x - width / 2, minY: y - height / 2, maxX: x + width / 2, maxY: y + height / 2 };
}

function cellKey(x: number, y: number): string {
  return `${Math.floor(x / CELL)},${Math.floor(y / CELL)}`;
}

function* cellsOf(box: Bounds): Generator<string> {
  for (let i = Math.floor(box.minX / CELL); i <= Math.floor(box.maxX / CELL); i++) {
    for (let j = Math.floor(box.minY / CELL); j <= Math.floor(box.maxY / CELL); j++) yield `${i},${j}`;
  }
}

function push<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}
