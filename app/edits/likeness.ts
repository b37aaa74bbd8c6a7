/** Whether a copy would be the same thing at the same place as what stands there, as when a row is laid twice. */
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { Site } from "../../rules/site/site.ts";
import type { AnyElement } from "./edit.ts";
import { type Motion, placed } from "./moved.ts";

/** Tells of a motion whether something just like each original already stands where the motion would take a copy of it. */
export function copiesStandAt(site: Site, originals: readonly AnyElement[]): (motion: Motion) => boolean {
  const kinds = new Set(originals.map(({ kind }) => kind));
  const there = new Set(site.elements.filter(({ kind }) => kinds.has(kind)).map(likenessOf));
  return (motion) =>
    originals.every((original) => {
      const copy = placed(original, motion);
      return copy !== null && there.has(likenessOf(copy));
    });
}

/** Kind, facts and place of an element in one text: equal for elements that only their names tell apart. */
function likenessOf(element: AnyElement): string {
  const { id: _, ...rest }: Readonly<Record<string, unknown>> = { ...element, name: undefined };
  return JSON.stringify(rest, (_key, value: unknown) =>
    typeof value === "number" ? Math.round(value / SAME_CORNER) : value,
  );
}
