/**
 * The straight sides of a region's rings, filed by place: for asking about many positions and lines.
 */
import { RingTree } from "./ring-tree.ts";
import type { Bounds, Point, Region } from "./types.ts";

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
