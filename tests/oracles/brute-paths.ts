/**
 * Shortest paths by brute force, written on purpose unlike geometry/paths-around-barriers.ts: every line of every barrier
 * becomes a slab 1/256 in. thick (so that touching barriers leave no gap, with no map of corners), paths bend at corners
 * just outside the slabs, and the pool is a dense row of positions along its edge, 1/8 in. apart (1/256 near a barrier).
 *
 * No answer is shorter than the true one but for the chords of the pool's arcs (1/2000 in.), and none is longer by more
 * than 1/256 in. a bend and 1/16 in. for the row of positions.
 */
import type { Barrier, Point } from "../../geometry/types.ts";
import { toPolyline } from "./bulge-chords.ts";

const HALF_SLAB = 1 / 512;
const ROW = 1 / 8;
const FINE_ROW = 1 / 256;

interface Slab {
  readonly at: Point;
  readonly ux: number;
  readonly uy: number;
  readonly halfLength: number;
}

export class BrutePaths {
  private readonly slabs: Slab[] = [];
  private readonly nodes: Point[] = [];
  private readonly toNode: number[];
  private readonly row: Point[] = [];

  /** Loops are the pool's edges as closed rows of chord ends, the first not repeated. */
  constructor(loops: readonly (readonly Point[])[], barriers: readonly Barrier[]) {
    for (const { shape, points } of barriers) {
      const last = shape === "solid" ? points.length : points.length - 1;
      for (let i = 0; i < last; i++) this.addSlab(points[i] as Point, points[(i + 1) % points.length] as Point);
    }
    for (const slab of this.slabs) {
      for (const [along, across] of [
        [1, 1],
        [1, -1],
        [-1, 1],
        [-1, -1],
      ] as const) {
        const corner = inSlab(slab, along * (slab.halfLength + 1e-6), across * (HALF_SLAB + 1e-6));
        if (!this.isInSlab(corner)) this.nodes.push(corner);
      }
    }
    for (const loop of loops) {
      loop.forEach((a, i) => {
        this.addRow(a, loop[(i + 1) % loop.length] as Point, barriers);
      });
    }
    this.toNode = this.nodes.map((node) => this.straightTo(node, Number.POSITIVE_INFINITY));
    this.relax();
  }

  /** Length of the shortest path to `p`, infinite when there is none. */
  lengthTo(p: Point): number {
    let best = Number.POSITIVE_INFINITY;
    const order = this.nodes.map((_, i) => i);
    const lengths = this.nodes.map((node, i) => (this.toNode[i] as number) + apart(node, p));
    order.sort((i, j) => (lengths[i] as number) - (lengths[j] as number));
    for (const i of order) {
      if (lengths[i] === Number.POSITIVE_INFINITY) break;
      if (!this.isBlocked(this.nodes[i] as Point, p)) {
        best = lengths[i] as number;
        break;
      }
    }
    return Math.min(best, this.straightTo(p, best));
  }

  private addSlab(a: Point, b: Point): void {
    const length = apart(a, b);
    this.slabs.push({
      at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
      ux: (b[0] - a[0]) / length,
      uy: (b[1] - a[1]) / length,
      halfLength: length / 2 + HALF_SLAB,
    });
  }

  private addRow(a: Point, b: Point, barriers: readonly Barrier[]): void {
    const length = apart(a, b);
    const chunks = Math.max(1, Math.ceil(length / ROW));
    for (let i = 0; i < chunks; i++) {
      const start = between(a, b, i / chunks);
      const isNear = barriers.some(({ points, shape }) => toPolyline(start, points, shape === "solid") < 2 * ROW);
      const steps = isNear ? Math.ceil(length / chunks / FINE_ROW) : 1;
      for (let j = 0; j < steps; j++) {
        const p = between(a, b, (i + j / steps) / chunks);
        if (!this.isInSlab(p)) this.row.push(p);
      }
    }
  }

  private isInSlab(p: Point): boolean {
    return this.slabs.some(({ at, ux, uy, halfLength }) => {
      const along = (p[0] - at[0]) * ux + (p[1] - at[1]) * uy;
      const across = (p[1] - at[1]) * ux - (p[0] - at[0]) * uy;
      return Math.abs(along) < halfLength && Math.abs(across) < HALF_SLAB;
    });
  }

  /** Whether more than a touch of the segment lies in a slab: the part of it inside all four sides. */
  private isBlocked(a: Point, b: Point): boolean {
    for (const { at, ux, uy, halfLength } of this.slabs) {
      const alongA = (a[0] - at[0]) * ux + (a[1] - at[1]) * uy;
      const alongB = (b[0] - at[0]) * ux + (b[1] - at[1]) * uy;
      if ((alongA > halfLength && alongB > halfLength) || (alongA < -halfLength && alongB < -halfLength)) continue;
      const acrossA = (a[1] - at[1]) * ux - (a[0] - at[0]) * uy;
      const acrossB = (b[1] - at[1]) * ux - (b[0] - at[0]) * uy;
      if ((acrossA > HALF_SLAB && acrossB > HALF_SLAB) || (acrossA < -HALF_SLAB && acrossB < -HALF_SLAB)) continue;
      const [from, to] = inside(alongA, alongB, halfLength);
      const [start, end] = inside(acrossA, acrossB, HALF_SLAB);
      if (Math.min(to, end) - Math.max(from, start) > 1e-12) return true;
    }
    return false;
  }

  private straightTo(p: Point, within: number): number {
    let least = within;
    let nearest: Point | null = null;
    for (const at of this.row) {
      const length = apart(at, p);
      if (length < least) {
        least = length;
        nearest = at;
      }
    }
    if (!nearest || !this.isBlocked(nearest, p)) return nearest ? least : Number.POSITIVE_INFINITY;
    const near: { length: number; at: Point }[] = [];
    for (const at of this.row) {
      const length = apart(at, p);
      if (length < within) near.push({ length, at });
    }
    near.sort((one, other) => one.length - other.length);
    for (const { length, at } of near) if (!this.isBlocked(at, p)) return length;
    return Number.POSITIVE_INFINITY;
  }

  /** Every node takes the way over every other until nothing gets shorter. */
  private relax(): void {
    const { nodes, toNode } = this;
    const open = nodes.map((_, i) => i);
    const sees = new Map<number, boolean>();
    while (open.length > 0) {
      open.sort((i, j) => (toNode[j] as number) - (toNode[i] as number));
      const i = open.pop() as number;
      if (toNode[i] === Number.POSITIVE_INFINITY) return;
      for (const j of open) {
        const length = (toNode[i] as number) + apart(nodes[i] as Point, nodes[j] as Point);
        if (length >= (toNode[j] as number)) continue;
        const key = Math.min(i, j) * nodes.length + Math.max(i, j);
        let seen = sees.get(key);
        if (seen === undefined) {
          seen = !this.isBlocked(nodes[i] as Point, nodes[j] as Point);
          sees.set(key, seen);
        }
        if (seen) toNode[j] = length;
      }
    }
  }
}

/** Shares of a segment, whose ends lie at `a` and `b` on an axis, between which it is within `half` of 0. */
function inside(a: number, b: number, half: number): [number, number] {
  if (a === b) return Math.abs(a) < half ? [0, 1] : [1, 0];
  const t = (-half - a) / (b - a);
  const u = (half - a) / (b - a);
  return [Math.max(0, Math.min(t, u)), Math.min(1, Math.max(t, u))];
}

function inSlab({ at, ux, uy }: Slab, along: number, across: number): Point {
  return [at[0] + ux * along - uy * across, at[1] + uy * along + ux * across];
}

function apart(a: Point, b: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  return Math.sqrt(dx * dx + dy * dy);
}

function between(a: Point, b: Point, t: number): Point {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}
