/** The dimension under the pointer: its line or its figure. */
import { distanceBetween } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import type { Dimension, Site } from "../../rules/site/site.ts";
import { finder } from "./anchors.ts";
import { type DimensionLine, dimensionLine } from "./dimension-line.ts";

export interface Drawn {
  readonly dimension: Dimension;
  readonly line: DimensionLine;
}

/** Half the room of a figure beside the middle of its line, screen pixels: along the line, and away from it. */
const FIGURE_ALONG = 26;
const FIGURE_ABOVE = 18;

const kept = new WeakMap<Site, readonly Drawn[]>();

/** The dimensions of a site that are on the sheet, in the order of the file; worked out once for a site. */
export function drawnDimensions(site: Site): readonly Drawn[] {
  if (!site.dimensions?.length) return [];
  const known = kept.get(site);
  if (known) return known;
  const find = finder(site);
  const drawn = site.dimensions.flatMap((dimension): Drawn[] => {
    const line = dimensionLine(dimension, find);
    return line ? [{ dimension, line }] : [];
  });
  kept.set(site, drawn);
  return drawn;
}

export function drawnDimension(site: Site, id: string | null): Drawn | null {
  return id === null ? null : (drawnDimensions(site).find(({ dimension }) => dimension.id === id) ?? null);
}

/**
 * The nearest dimension whose line lies within the slack of a place, or whose figure lies there, and how far away it is.
 * Of several as near the last of the file, which lies on top. `pixel`: inches to a screen pixel.
 */
export function dimensionAt(
  site: Site,
  at: Point,
  slack: number,
  pixel: number,
): { readonly id: string; readonly away: number } | null {
  let best: { id: string; away: number } | null = null;
  for (const { dimension, line } of drawnDimensions(site)) {
    const away = distanceFrom(line, at, pixel);
    if (away > slack || (best && away > best.away)) continue;
    best = { id: dimension.id, away };
  }
  return best;
}

function distanceFrom({ a, b, length }: DimensionLine, at: Point, pixel: number): number {
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const [dx, dy] = [at[0] - a[0], at[1] - a[1]];
  const along = dx * ux + dy * uy;
  const share = Math.min(length, Math.max(0, along));
  const away = distanceBetween(at, [a[0] + ux * share, a[1] + uy * share]);
  // The figure reads from below or from the right: it stands above its line, or to the left of an upright one.
  const isTurned = ux < -1e-9 || (Math.abs(ux) <= 1e-9 && uy < 0);
  const above = (isTurned ? -1 : 1) * (dy * ux - dx * uy);
  const isOnFigure =
    above >= 0 && above <= FIGURE_ABOVE * pixel && Math.abs(along - length / 2) <= FIGURE_ALONG * pixel;
  return isOnFigure ? 0 : away;
}
