/**
 * Areas of axis-parallel rings on whole numbers, by winding numbers of unit cells: no clipping, no sorting, nothing that
 * edges lying on each other could upset.
 */
import type { Point } from "../../geometry/types.ts";

/** How often the ring (first not repeated, spikes and overlaps allowed) winds round the middle of cell [x, y]. */
export function windingAt(ring: readonly Point[], x: number, y: number): number {
  let winding = 0;
  let a = ring[ring.length - 1] as Point;
  for (const b of ring) {
    // upright sides to the right of the cell's middle
    if (a[0] === b[0] && a[0] > x + 0.5) {
      if (a[1] < y + 0.5 && b[1] > y + 0.5) winding++;
      if (b[1] < y + 0.5 && a[1] > y + 0.5) winding--;
    }
    a = b;
  }
  return winding;
}

/** Number of cells within 0..size for which `holds` is true. */
export function countCells(size: number, holds: (x: number, y: number) => boolean): number {
  let count = 0;
  for (let x = 0; x < size; x++) for (let y = 0; y < size; y++) if (holds(x, y)) count++;
  return count;
}
