import { type Edit, refused } from "./edit.ts";
import { shift } from "./moved.ts";
import { placeElements } from "./place-elements.ts";

/** Moves elements by (dx, dy), inches. Heights, bulges and everything else of them stay. */
export function moveElements(ids: readonly string[], dx: number, dy: number): Edit {
  return {
    label: "Move",
    apply(site) {
      if (!Number.isFinite(dx) || !Number.isFinite(dy)) return refused("A move needs a distance.");
      if (ids.length === 0) return refused("Nothing is selected to be moved.");
      const motion = shift(dx, dy);
      const result = placeElements(site, new Map(ids.map((id) => [id, motion])), "Move");
      return result.ok && dx === 0 && dy === 0 ? { ok: true, site } : result;
    },
  };
}
