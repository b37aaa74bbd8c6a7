/** Dimensions drawn, moved and taken away. */

import { MOST_ENTRIES } from "../../rules/site/limits.ts";
import { type Dimension, dimensionSchema, type Site } from "../../rules/site/site.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { finder, withDimensions } from "../dimensions/anchors.ts";
import { type DimensionWay, dimensionLine } from "../dimensions/dimension-line.ts";
import { type Edit, refused } from "./edit.ts";
import { newDimensionId } from "./new-id.ts";

export function addDimension(drawn: Omit<Dimension, "id">): Edit {
  return {
    label: "Draw a dimension",
    apply(site) {
      const before = site.dimensions ?? [];
      if (before.length >= MOST_ENTRIES) return refused("The site holds no more dimensions.");
      const dimension = { id: newDimensionId(site), ...drawn } as Dimension;
      if (!dimensionSchema.safeParse(dimension).success) return refused("That dimension would lie outside the site.");
      const line = dimensionLine(dimension, finder(site));
      if (!line) return refused("A dimension goes from one place to another.");
      const label = `Draw dimension ${lengthText(line.length, site.display?.units ?? "ft-in")}`;
      return { ok: true, site: withDimensions(site, [...before, dimension]), label };
    },
  };
}

export function moveDimension(id: string, way: DimensionWay): Edit {
  return {
    label: "Move a dimension",
    apply(site) {
      const dimension = site.dimensions?.find((one) => one.id === id);
      if (!dimension) return refused("That dimension is gone.");
      const { direction: _, ...rest } = dimension;
      const changed = { ...rest, ...way } as Dimension;
      if (!dimensionSchema.safeParse(changed).success) return refused("That dimension would lie outside the site.");
      return { ok: true, site: replaced(site, changed) };
    },
  };
}

export function removeDimension(id: string): Edit {
  return {
    label: "Take a dimension away",
    apply(site) {
      const left = site.dimensions?.filter((one) => one.id !== id) ?? [];
      if (left.length === (site.dimensions?.length ?? 0)) return refused("That dimension is gone.");
      return { ok: true, site: withDimensions(site, left) };
    },
  };
}

function replaced(site: Site, dimension: Dimension): Site {
  const all = site.dimensions ?? [];
  return withDimensions(
    site,
    all.map((one) => (one.id === dimension.id ? dimension : one)),
  );
}
