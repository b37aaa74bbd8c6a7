import type { Point } from "../../geometry/types.ts";
import { type Edit, refused } from "./edit.ts";
import { mirror, turn } from "./moved.ts";
import { placeElements } from "./place-elements.ts";

/** Turns elements about a point, degrees counter-clockwise. */
export function turnElements(ids: readonly string[], degrees: number, about: Point): Edit {
  return {
    label: "Turn",
    apply(site) {
      if (!Number.isFinite(degrees) || !about.every(Number.isFinite))
        return refused("A turn needs an angle and a place.");
      if (ids.length === 0) return refused("Nothing is selected to be turned.");
      const motion = turn(degrees, about);
      const result = placeElements(site, new Map(ids.map((id) => [id, motion])), "Turn");
      return result.ok && degrees % 360 === 0 ? { ok: true, site } : result;
    },
  };
}

/** Mirrors elements about the line through a point at an angle, degrees counter-clockwise from the right. */
export function mirrorElements(ids: readonly string[], through: Point, degrees: number): Edit {
  return {
    label: "Mirror",
    apply(site) {
      if (!Number.isFinite(degrees) || !through.every(Number.isFinite))
        return refused("A mirror needs a place and a direction.");
      if (ids.length === 0) return refused("Nothing is selected to be mirrored.");
      const motion = mirror(through, degrees);
      return placeElements(site, new Map(ids.map((id) => [id, motion])), "Mirror");
    },
  };
}
