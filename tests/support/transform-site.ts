/**
 * The same yard drawn another way: turned, mirrored, moved, its outlines started at another vertex or run the other way
 * round. Sites are copied, never changed. None of these changes what the code asks.
 */
import type { PathData, Point } from "../../geometry/types.ts";
import type { KnownElement, UnknownElement } from "../../rules/site/elements.ts";
import { readsHeights } from "../../rules/site/geometry-fields.ts";
import type { Site } from "../../rules/site/site.ts";
import { backwards, placed, startedAt, turnedBy } from "../oracles/variants.ts";

export interface Transform {
  /** Degrees counter-clockwise about the origin. */
  readonly turn?: number;
  /** Across the y axis, before turning. Negates every bulge. */
  readonly mirror?: boolean;
  /** Inches, after turning. */
  readonly move?: Point;
}

type Element = KnownElement | UnknownElement;

/** The site after a transform of its plan. Heights and everything that is not plan geometry stay. */
export function transformSite(site: Site, { turn = 0, mirror = false, move = [0, 0] }: Transform): Site {
  const turned = turnedBy(turn);
  const place = ([x, y]: Point): Point => {
    const [px, py] = turned([mirror ? -x : x, y]);
    return [px + move[0], py + move[1]];
  };
  return mapPlan(site, (path, heights) => placed(path, place, mirror && !heights), place);
}

/** The site with every closed path started at another vertex: `pick` says which, given how many there are. */
export function restartSite(site: Site, pick: (count: number) => number): Site {
  return mapPlan(site, (path) => (path.closed ? startedAt(path, pick(path.vertices.length)) : path));
}

/** The site with every path run the other way. */
export function reverseSite(site: Site): Site {
  return mapPlan(site, (path, heights) =>
    heights ? { ...path, vertices: [...path.vertices].reverse() } : { ...path, ...backwards(path) },
  );
}

/** The site with its plan replaced; `heights` is true for a path whose vertices' third number is a height. */
function mapPlan(
  site: Site,
  path: (data: PathData, heights: boolean) => PathData,
  place: (p: Point) => Point = (p) => p,
): Site {
  return { ...site, elements: site.elements.map((element) => mapElement(element, path, place)) };
}

function mapElement(
  element: Element,
  path: (data: PathData, heights: boolean) => PathData,
  place: (p: Point) => Point,
): Element {
  const mapped: Record<string, unknown> = { ...element };
  const heights = readsHeights(element.kind);
  for (const field of ["outline", "path", "shape"]) {
    const value = mapped[field] as PathData | { readonly point: Point } | undefined;
    if (value === undefined) continue;
    mapped[field] = "point" in value ? { ...value, point: place(value.point) } : path(value, heights);
  }
  for (const field of ["islands", "holes"]) {
    const value = mapped[field] as PathData[] | undefined;
    if (value !== undefined) mapped[field] = value.map((data) => path(data, false));
  }
  if (mapped.at !== undefined) mapped.at = place(mapped.at as Point);
  return mapped as unknown as Element;
}
