/** jsts as an oracle: a general geometry library that the project itself does not run on. Planar, on chords. */
import GeoJSONReader from "jsts/org/locationtech/jts/io/GeoJSONReader.js";
import GeoJSONWriter from "jsts/org/locationtech/jts/io/GeoJSONWriter.js";
import BufferOp from "jsts/org/locationtech/jts/operation/buffer/BufferOp.js";
import BufferParameters from "jsts/org/locationtech/jts/operation/buffer/BufferParameters.js";
import DistanceOp from "jsts/org/locationtech/jts/operation/distance/DistanceOp.js";
import OverlayOp from "jsts/org/locationtech/jts/operation/overlay/OverlayOp.js";
import RelateOp from "jsts/org/locationtech/jts/operation/relate/RelateOp.js";
import IsValidOp from "jsts/org/locationtech/jts/operation/valid/IsValidOp.js";
import type { Point, Region } from "../../geometry/types.ts";

/** What the tests use of a jsts geometry. */
export interface Shape {
  getArea(): number;
  getLength(): number;
}

// The package's own types know neither the static methods nor the geometries that come out of them.
const untyped = {
  BufferOp,
  BufferParameters,
  DistanceOp,
  GeoJSONReader,
  GeoJSONWriter,
  IsValidOp,
  OverlayOp,
  RelateOp,
  // biome-ignore lint/suspicious/noExplicitAny: see above
} as any;

const read = (geometry: unknown): Shape => new untyped.GeoJSONReader().read(geometry);

export const regionShape = (region: Region): Shape => read({ type: "MultiPolygon", coordinates: region });
export const ringShape = (ring: readonly Point[]): Shape =>
  read({ type: "Polygon", coordinates: [[...ring, ring[0] as Point]] });
export const lineShape = (line: readonly Point[]): Shape => read({ type: "LineString", coordinates: line });
export const pointShape = (p: Point): Shape => read({ type: "Point", coordinates: p });

export const union = (a: Shape, b: Shape): Shape => untyped.OverlayOp.union(a, b);
export const intersection = (a: Shape, b: Shape): Shape => untyped.OverlayOp.intersection(a, b);
export const difference = (a: Shape, b: Shape): Shape => untyped.OverlayOp.difference(a, b);
export const distance = (a: Shape, b: Shape): number => untyped.DistanceOp.distance(a, b);
export const covers = (a: Shape, b: Shape): boolean => untyped.RelateOp.covers(a, b);
export const isValid = (a: Shape): boolean => new untyped.IsValidOp(a).isValid();

/** Widened by `d`, corners round with `segments` chords to a quarter turn. The outline is not simplified first (by 1 % of d otherwise). */
export function buffer(a: Shape, d: number, segments = 256): Shape {
  const parameters = new untyped.BufferParameters(segments);
  parameters.setSimplifyFactor(0);
  return untyped.BufferOp.bufferOp(a, d, parameters);
}

/** A line's strip of half-width `d` with butt ends and mitred joins. */
export function mitredStrip(line: readonly Point[], d: number, miterLimit: number): Shape {
  const { CAP_FLAT, JOIN_MITRE } = untyped.BufferParameters;
  const parameters = new untyped.BufferParameters(256, CAP_FLAT, JOIN_MITRE, miterLimit);
  parameters.setSimplifyFactor(0);
  return untyped.BufferOp.bufferOp(lineShape(line), d, parameters);
}

/** True when a ring of positions (first not repeated) neither crosses nor touches itself. */
export function isSimpleRing(ring: readonly Point[]): boolean {
  return ring.length >= 3 && isValid(ringShape(ring));
}
