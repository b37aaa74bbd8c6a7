/**
 * Outlines of lines and true arcs: building them from the site file's vertices, their length, area, centroid, whether
 * they hold a point, walking along them, and drawing them with chords.
 *
 * Inches, y up. The outer path of an Area runs counter-clockwise, its holes clockwise. Every figure here is worked out
 * from the arcs themselves; only `flattenPath` and `flattenArea` make chords.
 */
import { bulgedEdge, edgeLength, nearestOnEdge, pointAt, reverseEdge } from "./edge.ts";
import { boundsOfEdges } from "./edge-boxes.ts";
import { edgeTree } from "./edge-tree.ts";
import { nearestEdge } from "./nearest-edge.ts";
import { FLAT_BOW, FLATTEN_TOLERANCE, SERIES_ANGLE } from "./tolerances.ts";
import type { ArcEdge, Area, Edge, Path, PathData, Point, Region, Vertex } from "./types.ts";

export { contains } from "./contains.ts";
export { boundsUnion } from "./points.ts";

/** The path through the file's vertices. Edges of no length are for the reader to refuse; none is dropped here. */
export function pathFrom(data: PathData): Path {
  const { vertices, closed } = data;
  const edges: Edge[] = [];
  const [first] = vertices;
  if (!first) return pathOfEdges(edges, closed);
  const start: Point = [first[0], first[1]];
  let from = start;
  for (let i = 1; i < vertices.length; i++) {
    const [x, y] = vertices[i] as Vertex;
    const to: Point = [x, y];
    edges.push(bulgedEdge(from, to, vertices[i - 1]?.[2] ?? 0));
    from = to;
  }
  if (closed) edges.push(bulgedEdge(from, start, vertices[vertices.length - 1]?.[2] ?? 0));
  return pathOfEdges(edges, closed);
}

/** A path of edges that already follow each other. */
export function pathOfEdges(edges: readonly Edge[], closed: boolean): Path {
  return { edges, closed, bounds: boundsOfEdges(edges) };
}

/** The area inside `outer` and outside `holes`, all closed, in either direction; windings are set right. */
export function areaFrom(outer: PathData, holes: readonly PathData[] = []): Area {
  return areaOfPaths(pathFrom(outer), holes.map(pathFrom));
}

/** The same from paths. */
export function areaOfPaths(outer: Path, holes: readonly Path[] = []): Area {
  return {
    outer: signedArea(outer) < 0 ? reversePath(outer) : outer,
    holes: holes.map((hole) => (signedArea(hole) > 0 ? reversePath(hole) : hole)),
  };
}

export function pathLength(path: Path): number {
  return edgeStarts(path)[path.edges.length] as number;
}

/** The path walked the other way. A closed one keeps its first vertex. */
export function reversePath(path: Path): Path {
  return { edges: path.edges.map(reverseEdge).reverse(), closed: path.closed, bounds: path.bounds };
}

/** A closed path that starts at its vertex number `index`. */
export function startingAt(path: Path, index: number): Path {
  return { ...path, edges: [...path.edges.slice(index), ...path.edges.slice(0, index)] };
}

/** theta - sin(theta), without loss of digits near 0. */
function angleLessSine(theta: number): number {
  if (Math.abs(theta) > SERIES_ANGLE) return theta - Math.sin(theta);
  const square = theta * theta;
  let term = (theta * square) / 6;
  let sum = 0;
  for (let k = 4; Math.abs(term) > Math.abs(sum) * Number.EPSILON; k += 2) {
    sum += term;
    term *= -square / (k * (k + 1));
  }
  return sum;
}

/** Signed area between an arc and its chord: positive when the arc bows to the right of the chord. */
function segmentArea(arc: ArcEdge): number {
  return (arc.radius * arc.radius * angleLessSine(arc.sweep)) / 2;
}

/** Area inside a closed path, square inches, exact with arcs: positive counter-clockwise, negative clockwise. */
export function signedArea({ edges }: Path): number {
  const first = edges[0];
  if (!first) return 0;
  const [x, y] = first.from;
  let area = 0;
  for (let i = 0; i < edges.length; i++) {
    const edge = edges[i] as Edge;
    const { from, to } = edge;
    area += ((from[0] - x) * (to[1] - y) - (to[0] - x) * (from[1] - y)) / 2;
    if (edge.kind === "arc") area += segmentArea(edge);
  }
  return area;
}

/** The area of water: outer less holes, square inches. */
export function areaOf(area: Area): number {
  let sum = signedArea(area.outer);
  for (const hole of area.holes) sum += signedArea(hole);
  return sum;
}

/** Area and first moments of a closed path about its own first vertex. */
function momentsOf(path: Path): { area: number; mx: number; my: number; origin: Point } {
  const origin = path.edges[0]?.from ?? [0, 0];
  let area = 0;
  let mx = 0;
  let my = 0;
  for (const edge of path.edges) {
    const x0 = edge.from[0] - origin[0];
    const y0 = edge.from[1] - origin[1];
    const x1 = edge.to[0] - origin[0];
    const y1 = edge.to[1] - origin[1];
    const triangle = (x0 * y1 - x1 * y0) / 2;
    area += triangle;
    mx += (triangle * (x0 + x1)) / 3;
    my += (triangle * (y0 + y1)) / 3;
    if (edge.kind === "arc") {
      const bow = segmentArea(edge);
      const [cx, cy] = segmentCentroid(edge);
      area += bow;
      mx += bow * (cx - origin[0]);
      my += bow * (cy - origin[1]);
    }
  }
  return { area, mx, my, origin };
}

/** Centroid of the part between an arc and its chord. */
function segmentCentroid(arc: ArcEdge): Point {
  const half = Math.abs(arc.sweep) / 2;
  const middle = pointAt(arc, 0.5);
  const chordMiddle: Point = [(arc.from[0] + arc.to[0]) / 2, (arc.from[1] + arc.to[1]) / 2];
  // Share of the way from the chord's middle to the arc's middle; it tends to 3/5 as the arc goes flat.
  const fromCenter = (4 * Math.sin(half) ** 3) / (3 * angleLessSine(2 * half));
  const share = half < FLAT_BOW ? 0.6 : (fromCenter - Math.cos(half)) / (1 - Math.cos(half));
  return [chordMiddle[0] + (middle[0] - chordMiddle[0]) * share, chordMiddle[1] + (middle[1] - chordMiddle[1]) * share];
}

/** Center of gravity of an area, holes left out. It need not lie inside. */
export function centroidOf(area: Area): Point {
  let sum = 0;
  let x = 0;
  let y = 0;
  const base = area.outer.edges[0]?.from ?? [0, 0];
  for (const path of [area.outer, ...area.holes]) {
    const moments = momentsOf(path);
    sum += moments.area;
    x += moments.mx + moments.area * (moments.origin[0] - base[0]);
    y += moments.my + moments.area * (moments.origin[1] - base[1]);
  }
  return [base[0] + x / sum, base[1] + y / sum];
}

/** The position `s` inches along the path from its first vertex. Beyond an open path's ends: that end; closed paths go round. */
export function pointAlong(path: Path, s: number): Point {
  const starts = edgeStarts(path);
  const count = path.edges.length;
  const total = starts[count] as number;
  const along = path.closed ? ((s % total) + total) % total : Math.min(Math.max(s, 0), total);
  // The first edge that ends at or beyond the place.
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((starts[middle + 1] as number) >= along) high = middle;
    else low = middle + 1;
  }
  const edge = path.edges[low];
  if (!edge) return [Number.NaN, Number.NaN];
  const start = starts[low] as number;
  const length = (starts[low + 1] as number) - start;
  return pointAt(edge, length === 0 ? 0 : Math.min(1, (along - start) / length));
}

const starts = new WeakMap<Path, Float64Array>();

/** How far along the path each edge starts, and last the path's length. */
function edgeStarts(path: Path): Float64Array {
  const known = starts.get(path);
  if (known) return known;
  const made = new Float64Array(path.edges.length + 1);
  for (const [i, edge] of path.edges.entries()) made[i + 1] = (made[i] as number) + edgeLength(edge);
  starts.set(path, made);
  return made;
}

/** How far along the path, inches from its first vertex, its point nearest to `p` lies. */
export function distanceAlongPath(path: Path, p: Point): number {
  const index = nearestEdge(edgeTree(path), p, Number.POSITIVE_INFINITY);
  const edge = path.edges[index];
  if (!edge) return 0;
  const { t } = nearestOnEdge(edge, p);
  // The end of a closed path is its start.
  if (t === 1 && path.closed && index === path.edges.length - 1) return 0;
  return (edgeStarts(path)[index] as number) + t * edgeLength(edge);
}

/** How many equal chords draw an arc to within `tolerance` inches. */
export function chordCount(arc: ArcEdge, tolerance: number): number {
  const step = Math.min(Math.PI / 4, 4 * Math.asin(Math.sqrt(Math.min(1, tolerance / (2 * arc.radius)))));
  return Math.max(1, Math.ceil(Math.abs(arc.sweep) / step));
}

/**
 * The path's vertices and points on its arcs, so that no chord is farther than `tolerance` inches from its arc. Chords
 * are inscribed. A closed path does not repeat its first position.
 */
export function flattenPath(path: Path, tolerance: number = FLATTEN_TOLERANCE): Point[] {
  const points: Point[] = [];
  for (const edge of path.edges) {
    points.push(edge.from);
    if (edge.kind === "line") continue;
    const chords = chordCount(edge, tolerance);
    for (let i = 1; i < chords; i++) points.push(pointAt(edge, i / chords));
  }
  const last = path.edges[path.edges.length - 1];
  if (!path.closed && last) points.push(last.to);
  return points;
}

/** The area as one GeoJSON polygon, closed rings, arcs drawn by inscribed chords within `tolerance` inches. */
export function flattenArea(area: Area, tolerance: number = FLATTEN_TOLERANCE): Region {
  const rings = [area.outer, ...area.holes].map((path) => {
    const points = flattenPath(path, tolerance);
    const first = points[0];
    return first ? [...points, first] : points;
  });
  return [rings];
}
