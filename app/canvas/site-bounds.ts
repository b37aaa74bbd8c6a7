/** What there is to show of a site when the whole of it is fitted into the view. */
import { boundsOfPoints, boundsUnion, grownBounds } from "../../geometry/points.ts";
import type { Bounds, Point } from "../../geometry/types.ts";
import type { Site, Underlay } from "../../rules/site/site.ts";
import { elementBounds } from "../drawing/element-bounds.ts";
import { placeOf } from "../underlay/place-underlay.ts";

/** The reach of fixed metal round a pool, inches, about: so that the view does not jump when the report comes. */
const ROUND_A_POOL = 66;
/** What an empty sheet shows: a yard of 60 by 45 ft round the origin, inches. */
const EMPTY_YARD: Bounds = { minX: -360, minY: -270, maxX: 360, maxY: 270 };
/** How much of an overhead or underground line outside the yard is shown, inches: it may run on far beyond. */
const ROUND_THE_YARD = 120;

/** The box round the yard with all that stands in it, and with its lines as far as they run near it; else round the picture underneath. */
export function siteBounds({ elements, underlay }: Pick<Site, "elements" | "underlay">): Bounds {
  const yard: Bounds[] = [];
  const lines: Bounds[] = [];
  for (const element of elements) {
    const box = elementBounds(element);
    if (box === null) continue;
    if (element.kind === "overhead-line" || element.kind === "underground-run") lines.push(box);
    else yard.push(element.kind === "pool" ? grownBounds(box, ROUND_A_POOL) : box);
  }
  if (yard.length === 0) {
    if (lines.length > 0) return boundsUnion(lines);
    return underlay && underlay.hidden !== true ? pictureBounds(underlay) : EMPTY_YARD;
  }
  const box = boundsUnion(yard);
  const near = grownBounds(box, ROUND_THE_YARD);
  return boundsUnion([box, ...lines.flatMap((line) => overlap(line, near) ?? [])]);
}

/** The box round a picture that lies underneath. */
function pictureBounds(underlay: Underlay): Bounds {
  const { width, height } = underlay;
  const corners: readonly Point[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  return boundsOfPoints(corners.map((corner) => placeOf(underlay, corner)));
}

/** What two boxes share; null when they lie apart. */
function overlap(a: Bounds, b: Bounds): Bounds | null {
  const shared = {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
  return shared.minX > shared.maxX || shared.minY > shared.maxY ? null : shared;
}
