/** Which boxes lie in or near a place: a packed tree over the boxes of many objects, built once. */
import Flatbush from "flatbush";
import { sortNumbers } from "./short-lists.ts";
import type { Bounds, Point } from "./types.ts";

export interface BoxIndex {
  /** Numbers of the items whose boxes touch `box`, ascending. */
  search(box: Bounds): number[];
  /** Whether any item's box touches `box`. */
  touches(box: Bounds): boolean;
  /** Numbers of the items nearest to `p` by their boxes, nearest first, at most `count` and no farther than `within` inches. */
  neighbors(p: Point, count?: number, within?: number): number[];
}

/** An index over boxes; items are known by their place in `items`. */
export function boxIndex(items: readonly Bounds[]): BoxIndex {
  if (items.length === 0) return { search: () => [], touches: () => false, neighbors: () => [] };
  const tree = new Flatbush(items.length);
  for (const box of items) tree.add(box.minX, box.minY, box.maxX, box.maxY);
  tree.finish();
  return {
    search: (box) => sortNumbers(tree.search(box.minX, box.minY, box.maxX, box.maxY)),
    touches: (box) => {
      let found = false;
      tree.search(box.minX, box.minY, box.maxX, box.maxY, () => {
        found = true;
        return false;
      });
      return found;
    },
    neighbors: (p, count = Number.POSITIVE_INFINITY, within = Number.POSITIVE_INFINITY) =>
      tree.neighbors(p[0], p[1], count, within),
  };
}
