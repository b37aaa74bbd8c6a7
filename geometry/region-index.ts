/** The straight sides of a region's rings, filed by place: for asking about many positions and lines. */
import Flatbush from "flatbush";
import { orientation } from "./orientation.ts";
import type { Bounds, Point, Region } from "./types.ts";

export interface RegionIndex {
  /** Calls `visit` with every side whose box touches `box`. */
  visitSides(box: Bounds, visit: (from: Point, to: Point) => void): void;
}

const indexes = new WeakMap<Region, RegionIndex>();

/** The index of a region, built at the first question about it. */
export function regionIndex(region: Region): RegionIndex {
  const known = indexes.get(region);
  if (known) return known;
  const index = buildIndex(region);
  indexes.set(region, index);
  return index;
}

function buildIndex(region: Region): RegionIndex {
  const starts: Point[] = [];
  const ends: Point[] = [];
  for (const polygon of region) {
    for (const ring of polygon) {
      let from = ring[ring.length - 1];
      for (const to of ring) {
        if (from && (from[0] !== to[0] || from[1] !== to[1])) {
          starts.push(from);
          ends.push(to);
        }
        from = to;
      }
    }
  }
  if (starts.length === 0) return { visitSides: () => undefined };
  const tree = new Flatbush(starts.length);
  for (const [i, [x0, y0]] of starts.entries()) {
    const [x1, y1] = ends[i] as Point;
    tree.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
  }
  tree.finish();
  return {
    visitSides: (box, visit) => {
      for (const i of tree.search(box.minX, box.minY, box.maxX, box.maxY)) visit(starts[i] as Point, ends[i] as Point);
    },
  };
}

/** True when the region holds `p` (inside an odd number of its rings); on the boundary either answer is possible. */
export function regionContains(region: Region, p: Point): boolean {
  let inside = false;
  const ray = { minX: p[0], minY: p[1], maxX: Number.POSITIVE_INFINITY, maxY: p[1] };
  regionIndex(region).visitSides(ray, (a, b) => {
    if (a[1] > p[1] === b[1] > p[1]) return;
    const side = orientation(a, b, p);
    if (b[1] > a[1] ? side > 0 : side < 0) inside = !inside;
  });
  return inside;
}
