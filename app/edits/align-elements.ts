/** Lining elements up and spacing them out. Groups go as one. */
import { boundsUnion } from "../../geometry/points.ts";
import type { Bounds } from "../../geometry/types.ts";
import { type Edit, refused } from "./edit.ts";
import { type Unit, unitsOf } from "./element-box.ts";
import { type Motion, shift } from "./moved.ts";
import { placeElements } from "./place-elements.ts";

export const ALIGNMENTS = ["left", "middle", "right", "top", "center", "bottom"] as const;
/** `middle`: on one upright line; `center`: on one level line. */
export type Alignment = (typeof ALIGNMENTS)[number];

const ALIGN_VERBS: Readonly<Record<Alignment, string>> = {
  left: "Line up the left sides of",
  middle: "Line up the middles, left to right, of",
  right: "Line up the right sides of",
  top: "Line up the tops of",
  center: "Line up the middles, top to bottom, of",
  bottom: "Line up the bottoms of",
};

/** Lines elements up on a side of the box round all of them, or on its middle. */
export function alignElements(ids: readonly string[], alignment: Alignment): Edit {
  return {
    label: "Line up",
    apply(site) {
      const units = unitsOf(site, ids);
      if ("ok" in units) return units;
      if (units.length < 2) return refused("Lining up needs at least two things that are not one group.");
      const to = place(boundsUnion(units.map(({ box }) => box)), alignment);
      const motions = new Map<string, Motion>();
      for (const unit of units) {
        const by = to - place(unit.box, alignment);
        take(motions, unit, isSideways(alignment) ? by : 0, isSideways(alignment) ? 0 : by);
      }
      return motions.size === 0 ? { ok: true, site } : placeElements(site, motions, ALIGN_VERBS[alignment]);
    },
  };
}

/** Spaces elements out between the outermost two, with the same gap between each and the next. */
export function distributeElements(ids: readonly string[], way: "across" | "up"): Edit {
  return {
    label: "Space out",
    apply(site) {
      const units = unitsOf(site, ids);
      if ("ok" in units) return units;
      if (units.length < 3) return refused("Spacing out needs at least three things that are not one group.");
      const low = ({ box }: Unit) => (way === "across" ? box.minX : box.minY);
      const high = ({ box }: Unit) => (way === "across" ? box.maxX : box.maxY);
      const sorted = [...units].sort((a, b) => low(a) + high(a) - low(b) - high(b));
      const start = Math.min(...sorted.map(low));
      const end = Math.max(...sorted.map(high));
      const taken = sorted.reduce((sum, unit) => sum + high(unit) - low(unit), 0);
      const gap = (end - start - taken) / (sorted.length - 1);
      const motions = new Map<string, Motion>();
      let at = start;
      for (const unit of sorted) {
        const by = at - low(unit);
        take(motions, unit, way === "across" ? by : 0, way === "across" ? 0 : by);
        at += high(unit) - low(unit) + gap;
      }
      return motions.size === 0 ? { ok: true, site } : placeElements(site, motions, "Space out");
    },
  };
}

/** Below this nothing is moved: rounding of what already lies there, inches. */
const NOTHING = 1e-9;

function take(motions: Map<string, Motion>, unit: Unit, dx: number, dy: number): void {
  if (Math.abs(dx) < NOTHING && Math.abs(dy) < NOTHING) return;
  const motion = shift(dx, dy);
  for (const id of unit.ids) motions.set(id, motion);
}

function isSideways(alignment: Alignment): boolean {
  return alignment === "left" || alignment === "middle" || alignment === "right";
}

function place({ minX, minY, maxX, maxY }: Bounds, alignment: Alignment): number {
  switch (alignment) {
    case "left":
      return minX;
    case "right":
      return maxX;
    case "top":
      return maxY;
    case "bottom":
      return minY;
    case "middle":
      return (minX + maxX) / 2;
    case "center":
      return (minY + maxY) / 2;
  }
}
