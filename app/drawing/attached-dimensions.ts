/** Dimensions that somebody drew: they lie where their elements lie now. */
import { boundsOfPoints } from "../../geometry/points.ts";
import type { Bounds } from "../../geometry/types.ts";
import type { Site } from "../../rules/site/site.ts";
import { finder } from "../dimensions/anchors.ts";
import { type DimensionLine, dimensionLine } from "../dimensions/dimension-line.ts";
import { drawDimension } from "./dimensions.ts";
import type { Drafting } from "./drafting.ts";

/** The lines of all dimensions of a site whose elements are there, in the order of the file. */
export function dimensionLines(site: Site): { readonly id: string; readonly line: DimensionLine }[] {
  if (!site.dimensions?.length) return [];
  const find = finder(site);
  return site.dimensions.flatMap((dimension) => {
    const line = dimensionLine(dimension, find);
    return line ? [{ id: dimension.id, line }] : [];
  });
}

export function drawAttachedDimensions(drafting: Drafting): void {
  for (const { line } of dimensionLines(drafting.site)) drawDimension(line.from, line.to, line.a, line.b, drafting);
}

/** The box of all dimensions of a site; null without any. */
export function dimensionBounds(site: Site): Bounds | null {
  const points = dimensionLines(site).flatMap(({ line }) => [line.from, line.to, line.a, line.b]);
  return points.length === 0 ? null : boundsOfPoints(points);
}
