/** Copies of elements, a step aside, turned over a line, or at every place of a row. */
import type { Point } from "../../geometry/types.ts";
import type { Site } from "../../rules/site/site.ts";
import { wholeGroups } from "./arrangement.ts";
import { gone } from "./checked.ts";
import { withCopies } from "./copies.ts";
import { dimensionsOn } from "./dimension-copies.ts";
import { type Edit, refused } from "./edit.ts";
import { elementsOf, elementsWords } from "./element-words.ts";
import { copiesStandAt } from "./likeness.ts";
import { type Motion, mirror, shift } from "./moved.ts";
import { idsWithOpenings } from "./place-elements.ts";

/** How far aside a copy lies, inches: seen at once, and easily typed back. */
export const DUPLICATE_STEP = 24;

/**
 * Copies elements, (dx, dy) inches aside. Copies that name each other (a light its pool, a tie what it joins) name the
 * copies; the ids of the copies are the last ones of the site, in the order of the originals.
 */
export function duplicateElements(ids: readonly string[], dx = DUPLICATE_STEP, dy = -DUPLICATE_STEP): Edit {
  return copying(ids, [shift(dx, dy)], "Duplicate", "copied");
}

/** The same as mirrored copies; the originals stay. */
export function mirrorCopies(ids: readonly string[], through: Point, degrees: number): Edit {
  if (![...through, degrees].every(Number.isFinite)) {
    return { label: "Mirror", apply: () => refused("A mirror needs a place and a direction.") };
  }
  const motion = mirror(through, degrees);
  const edit = copying(ids, [motion], "Mirror a copy of", "mirrored");
  const apply = (site: Site) => {
    const originals = elementsOf(site, ids);
    const isThere = originals.length > 0 && copiesStandAt(site, originals)(motion);
    return isThere ? refused("It already stands on the other side, too.") : edit.apply(site);
  };
  return { ...edit, apply };
}

/** Copies of elements where each motion takes them. Doors and windows go with their wall. */
export function copying(ids: readonly string[], motions: readonly Motion[], verb: string, done: string): Edit {
  return {
    label: verb.replace(/ .*$/, ""),
    apply(site) {
      if (ids.length === 0) return refused(`Nothing is selected to be ${done}.`);
      const chosen = elementsOf(site, ids);
      const missing = ids.find((id) => !chosen.some((element) => element.id === id));
      if (missing !== undefined) return gone(missing);
      const all = idsWithOpenings(site, ids);
      const groups = wholeGroups(site, new Set(all));
      const dimensions = dimensionsOn(site, new Set(all));
      return withCopies(site, elementsOf(site, all), motions, `${verb} ${elementsWords(chosen)}`, groups, {
        dimensions,
      });
    },
  };
}
