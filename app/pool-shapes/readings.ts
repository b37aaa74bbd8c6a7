/**
 * Dimensions as they can be read off an outline whose vertices are those of a shape, where guessing them would lead
 * astray: round ends by the centers of their arcs, a Roman end by its own, L shapes by the corners in which their sides would meet. What is read
 * is only where the search begins; what does not fit is found out there.
 */
import { edgeFromVertices } from "../../geometry/edge.ts";
import { distanceBetween } from "../../geometry/points.ts";
import type { ArcEdge, Edge, Point, Vertex } from "../../geometry/types.ts";
import type { Dimensions } from "./shape.ts";
import type { PoolShapeId } from "./shape-names.ts";

/** What can be read when the shape begins with vertex `first`; empty where nothing can. */
export function readOff(shape: PoolShapeId, vertices: readonly Vertex[], first: number): Dimensions {
  const count = vertices.length;
  const edges = vertices.map((_, i) =>
    edgeFromVertices(vertices[(first + i) % count] as Vertex, vertices[(first + i + 1) % count] as Vertex),
  );
  if (shape === "kidney" || shape === "figure-8") return roundEnds(shape, edges);
  if (shape === "roman-end") return romanEnds(1, edges);
  if (shape === "double-roman-end") return romanEnds(2, edges);
  return shape === "lazy-l" || shape === "true-l" ? arms(edges) : {};
}

function roundEnds(shape: "kidney" | "figure-8", edges: readonly Edge[]): Dimensions {
  const [large, below, small, above] = edges.filter((edge): edge is ArcEdge => edge.kind === "arc");
  if (!large || !below || !small || !above) return {};
  const ends = {
    length: distanceBetween(large.center, small.center) + large.radius + small.radius,
    large: 2 * large.radius,
    small: 2 * small.radius,
  };
  return shape === "kidney"
    ? { ...ends, inner: below.radius, outer: above.radius }
    : { ...ends, neck: distanceBetween(below.center, above.center) - below.radius - above.radius };
}

/** The first of its sides is a shoulder, where the pool is wider than its arc. */
function romanEnds(ends: 1 | 2, edges: readonly Edge[]): Dimensions {
  const at = edges.findIndex((edge) => edge.kind === "arc");
  const [arc, side] = [edges[at], edges[2 * at + 1]];
  if (arc?.kind !== "arc" || side?.kind !== "line") return {};
  const arcWidth = distanceBetween(arc.from, arc.to);
  const arcDepth = (arcWidth / 2) * Math.tan(Math.abs(arc.sweep) / 4);
  const width = distanceBetween(edges[0]?.from ?? arc.from, side.from);
  return { arcWidth, arcDepth, width, length: distanceBetween(side.from, side.to) + ends * arcDepth };
}

/** Sides of an L, and what lies before each of them: a corner, or the arc that rounds it. */
function arms(edges: readonly Edge[]): Dimensions {
  const sides = edges.filter((edge) => edge.kind === "line");
  if (sides.length !== 6) return {};
  const arcBefore = sides.map((side) => {
    const before = edges[(edges.indexOf(side) + edges.length - 1) % edges.length];
    return before?.kind === "arc" ? before.radius : 0;
  });
  const corners = sides.map((side, i) => meeting(sides[(i + 5) % 6] as Edge, side));
  const [p0, p1, p2, p3, , p5] = corners;
  if (!p0 || !p1 || !p2 || !p3 || !p5) return {};
  const way = (a: Point, b: Point) => Math.atan2(b[1] - a[1], b[0] - a[0]);
  const bend = ((way(p1, p2) - way(p0, p1)) * 180) / Math.PI;
  return {
    length: distanceBetween(p0, p1),
    width: distanceBetween(p5, p0),
    legLength: distanceBetween(p1, p2),
    legWidth: distanceBetween(p2, p3),
    bend: ((bend % 360) + 360) % 360,
    radius: arcBefore[1] ?? 0,
    insideRadius: arcBefore[4] ?? 0,
  };
}

/** Where the lines of two sides cross; null for parallel ones. */
function meeting(a: Edge, b: Edge): Point | null {
  const [ax, ay] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const [bx, by] = [b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const cross = ax * by - ay * bx;
  if (cross === 0) return null;
  const t = ((b.from[0] - a.from[0]) * by - (b.from[1] - a.from[1]) * bx) / cross;
  return [a.from[0] + t * ax, a.from[1] + t * ay];
}
