/** Dimensions that somebody drew: they lie where their elements lie now. */
import { boundsOfPoints } from "../../geometry/points.ts";
import type { Bounds } from "../../geometry/types.ts";
import type { Site } from "../../rules/site/site.ts";
import { drawnDimensions } from "../dimensions/dimension-at.ts";
import { drawDimension } from "./dimensions.ts";
import type { Drafting } from "./drafting.ts";

export function drawAttachedDimensions(drafting: Drafting): void {
  for (const { line } of drawnDimensions(drafting.site)) drawDimension(line.from, line.to, line.a, line.b, drafting);
}

/** The box of all dimensions of a site; null without any. */
export function dimensionBounds(site: Site): Bounds | null {
  const points = drawnDimensions(site).flatMap(({ line }) => [line.from, line.to, line.a, line.b]);
  return points.length === 0 ? null : boundsOfPoints(points);
}
