/**
 * The shapes every other file of this folder speaks in.
 *
 * Planar, inches, x to the right, y up, angles in radians counter-clockwise from +x.
 */

/** A position in plan, inches. */
export type Point = readonly [x: number, y: number];

/** A vertex of the site file: `bulge` shapes the edge that leaves it (tangent of a quarter of the arc's angle, + counter-clockwise). */
export type Vertex = readonly [x: number, y: number] | readonly [x: number, y: number, bulge: number];

/** A path as the site file stores it. A closed path does not repeat its first vertex. */
export interface PathData {
  readonly vertices: readonly Vertex[];
  readonly closed: boolean;
}

/** A straight edge. */
export interface LineEdge {
  readonly kind: "line";
  readonly from: Point;
  readonly to: Point;
}

/** A circular arc. `sweep` is signed: positive runs counter-clockwise from `startAngle`; |sweep| < 2 pi. */
export interface ArcEdge {
  readonly kind: "arc";
  readonly from: Point;
  readonly to: Point;
  readonly center: Point;
  readonly radius: number;
  readonly startAngle: number;
  readonly sweep: number;
}

export type Edge = LineEdge | ArcEdge;

/** Axis-parallel box, inches. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A chain of edges, each starting where the one before ends (same numbers). Closed: the last ends where the first starts. */
export interface Path {
  readonly edges: readonly Edge[];
  readonly closed: boolean;
  readonly bounds: Bounds;
}

/**
 * An area bounded by true arcs: `outer` runs counter-clockwise, each of `holes` clockwise.
 * A pool's water is an Area whose holes are its islands (an island is ground).
 */
export interface Area {
  readonly outer: Path;
  readonly holes: readonly Path[];
}

/** A closed ring of a flattened region: first point repeated at the end, at least four positions. */
export type Ring = readonly Point[];

/** Planar GeoJSON MultiPolygon coordinates: polygons of rings, the first the outer (counter-clockwise), the others holes (clockwise). */
export type Region = readonly (readonly Ring[])[];

/** The shortest segment between two things: `length` = |to - from|; `from` lies on the first, `to` on the second. */
export interface Witness {
  readonly length: number;
  readonly from: Point;
  readonly to: Point;
}

/** A polyline with its length, as a shortest path returns it. First point at the start named by the function. */
export interface Route {
  readonly length: number;
  readonly points: readonly Point[];
}

/**
 * What a path in plan may not cross. Touching and following its edge is allowed.
 * `solid`: the inside of a closed ring (footprint of a wall or building).
 * `thin`: a line without thickness (the outline of a building that the path may be inside of), open or closed.
 * Rings and lines are flattened from arcs to FLATTEN_TOLERANCE or finer.
 */
export interface Barrier {
  readonly id: string;
  readonly shape: "solid" | "thin";
  /** Flattened positions; solid: not repeating the first, either winding; thin: as drawn (repeat the first to close). */
  readonly points: readonly Point[];
}
