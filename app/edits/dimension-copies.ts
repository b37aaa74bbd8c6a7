/** Dimensions that hang on nothing but copied elements are copied along: each lies to its copy as it lay to the original. */
import type { Point } from "../../geometry/types.ts";
import { MOST_ENTRIES } from "../../rules/site/limits.ts";
import type { Dimension, DimensionAnchor, Site } from "../../rules/site/site.ts";
import { finder, withDimensions } from "../dimensions/anchors.ts";
import { type DimensionWay, dimensionLine, wayOfLine } from "../dimensions/dimension-line.ts";
import type { AnyElement } from "./edit.ts";
import type { Motion } from "./moved.ts";
import { newDimensionId } from "./new-id.ts";

/** The dimensions of a site whose two ends lie on elements of a set. */
export function dimensionsOn(site: Pick<Site, "dimensions">, ids: { has(id: string): boolean }): Dimension[] {
  const isOn = ({ element }: DimensionAnchor) => element !== undefined && ids.has(element);
  return (site.dimensions ?? []).filter(({ from, to }) => isOn(from) && isOn(to));
}

/**
 * The site with copies of dimensions, for one set of copied elements: `renamed` from the ids of the originals, which
 * `originals` finds, to those of the copies. What the copies would measure otherwise (across, where they were turned)
 * stays out, as does what the site has no room for.
 */
export function withCopiedDimensions(
  site: Site,
  dimensions: readonly Dimension[],
  originals: readonly AnyElement[],
  motion: Motion,
  renamed: ReadonlyMap<string, string>,
): Site {
  const find = finder({ elements: [...originals] });
  let grown = site;
  for (const dimension of dimensions) {
    const there = grown.dimensions ?? [];
    if (there.length >= MOST_ENTRIES) break;
    const line = dimensionLine(dimension, find);
    const way: DimensionWay | null =
      line &&
      wayOfLine(
        { from: motion.at(line.from), to: motion.at(line.to), a: motion.at(line.a), b: motion.at(line.b) },
        dimension.direction !== undefined,
      );
    if (!line || !way) continue;
    const { direction: _, ...rest } = dimension;
    // Where it lies now: where it was drawn once, the site may not reach.
    const anchored = (anchor: DimensionAnchor, at: Point): DimensionAnchor => ({
      ...anchor,
      element: renamed.get(anchor.element ?? "") ?? anchor.element,
      at: [...motion.at(at)],
    });
    const copy: Dimension = {
      ...rest,
      id: newDimensionId(grown),
      from: anchored(dimension.from, line.from),
      to: anchored(dimension.to, line.to),
      ...way,
    };
    grown = withDimensions(grown, [...there, copy]);
  }
  return grown;
}
