import { expect } from "vitest";
import { ringArea } from "../../geometry/rings.ts";
import type { Region } from "../../geometry/types.ts";

/** Rings closed, outlines counter-clockwise, holes clockwise; nothing empty. */
export function expectWellFormed(result: Region): void {
  for (const polygon of result) {
    expect(polygon.length).toBeGreaterThan(0);
    for (const [i, ring] of polygon.entries()) {
      expect(ring.length).toBeGreaterThanOrEqual(4);
      expect(ring[0]).toEqual(ring[ring.length - 1]);
      expect(ringArea(ring) > 0).toBe(i === 0);
    }
  }
}
