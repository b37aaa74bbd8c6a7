/**
 * What a first attempt on a general-purpose library would do, for comparison of time only: the same questions asked of
 * @turf/turf in the plain way. Inches are put on the equator as degrees, since the library is geodesic; its answers are
 * not used (its distances and areas are wrong on planar inches).
 */
import {
  area,
  buffer,
  difference,
  featureCollection,
  intersect,
  length,
  lineString,
  nearestPointOnLine,
  point,
  pointToLineDistance,
  polygon,
  polygonToLine,
} from "@turf/turf";
import type { Feature, MultiPolygon, Polygon } from "geojson";
import { flattenPath, pathFrom } from "../../geometry/outline.ts";
import type { PathData, Point } from "../../geometry/types.ts";
import { shapeOf } from "../../rules/measures/shapes.ts";
import { isKnown } from "../../rules/measures/yard.ts";
import type { Site } from "../../rules/site/site.ts";

const METERS_PER_INCH = 0.0254;
const DEGREES_PER_INCH = METERS_PER_INCH / 111_195;

type Shape = Feature<Polygon | MultiPolygon>;

const degrees = (points: readonly Point[]) => points.map(([x, y]) => [x * DEGREES_PER_INCH, y * DEGREES_PER_INCH]);

function ringed(data: PathData): Shape {
  const points = degrees(flattenPath(pathFrom(data)));
  return polygon([[...points, points[0] as number[]]]);
}

/** Band, ring, surfaces, grid lengths and every distance of a site. Returns how many answers it got, and how many calls threw. */
export function naivePipeline(site: Site): { readonly answers: number; readonly thrown: number } {
  let answers = 0;
  let thrown = 0;
  const attempt = <T>(work: () => T): T | null => {
    try {
      const result = work();
      answers += 1;
      return result;
    } catch (error) {
      if (!(error instanceof Error)) throw error;
      thrown += 1;
      return null;
    }
  };
  const elements = site.elements.filter(isKnown);
  for (const pool of elements) {
    if (pool.kind !== "pool") continue;
    const water = ringed(pool.outline);
    const grown = (inches: number) =>
      attempt(() => buffer(water, inches * METERS_PER_INCH, { units: "meters", steps: 64 }) as Shape);
    let band = grown(36);
    if (band) band = attempt(() => difference(featureCollection([band as Shape, water]))) as Shape | null;
    const reach = grown(60);
    for (const element of elements) {
      if (element.kind !== "building" || !band) continue;
      const built = ringed(element.outline);
      band = attempt(() => difference(featureCollection([band as Shape, built]))) as Shape | null;
      if (reach) attempt(() => difference(featureCollection([reach, built])));
    }
    for (const element of elements) {
      if (element.kind !== "surface" || !band) continue;
      const piece = attempt(() => intersect(featureCollection([band as Shape, ringed(element.outline)])));
      if (piece) attempt(() => area(piece));
    }
    for (const inches of [18, 21, 24]) {
      const ring = grown(inches);
      if (ring) attempt(() => length(polygonToLine(ring) as Parameters<typeof length>[0], { units: "meters" }));
    }
    const shore = polygonToLine(water as Feature<Polygon>) as Parameters<typeof pointToLineDistance>[1];
    for (const element of elements) {
      if (element === pool) continue;
      const shape = shapeOf(element);
      const places: Point[] =
        shape.kind === "point" ? [shape.at] : flattenPath(shape.kind === "path" ? shape.path : shape.area.outer, 1);
      for (const place of places) {
        const at = point(degrees([place])[0] as number[]);
        attempt(() => pointToLineDistance(at, shore, { units: "meters" }));
      }
      const first = places[0];
      if (first) attempt(() => nearestPointOnLine(shore, point(degrees([first])[0] as number[])));
      if (shape.kind === "path" && places.length > 1)
        attempt(() => length(lineString(degrees(places)), { units: "meters" }));
    }
  }
  return { answers, thrown };
}
