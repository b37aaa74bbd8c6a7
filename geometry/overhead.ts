/**
 * The least distance in space between the spans of an overhead line and what lies below it: an area that reaches from
 * its level downwards (a water surface, a platform with its posts). Exact on lines and arcs.
 *
 * Terms. Span: the wire between two vertices; its plan is a straight segment, its height a parabola through the heights of
 * the vertices that hangs `sag` below the straight at mid-span. Share: how far along the span, 0..1. Prism: the ground that
 * the clearance reaches over, with everything above it; only the parts of a span in the prism count.
 *
 * Stages. 1. The shares between which a span lies in the prism. 2. Candidates, the shares at which the distance can be
 * least: ends of those parts, the lowest point, where the wire crosses the level or the area's edge in plan, and for every
 * line, vertex and arc of the edge the roots of the derivative of the squared distance (of degree 3 for lines and vertices;
 * squared to degree 8 for arcs). 3. The distance at every candidate; the least is the answer.
 */
import { lengthWithin, pathToArea, pointToArea } from "./distance.ts";
import { edgeLength } from "./edge.ts";
import { crossings } from "./edge-crossings.ts";
import { pathOfEdges } from "./outline.ts";
import { between, distanceBetween } from "./points.ts";
import { derivative, type Polynomial, product, rootsAndTurns, sum, valueAt } from "./polynomial.ts";
import { LIMIT_TOLERANCE } from "./tolerances.ts";
import type { Area, Edge, LineEdge, Path, Point } from "./types.ts";

/** A position in space, inches. */
export type SpacePoint = readonly [x: number, y: number, z: number];

export interface Span {
  readonly from: SpacePoint;
  readonly to: SpacePoint;
  /** How far it hangs below the straight at mid-span, inches. */
  readonly sag: number;
}

/** The nearest place: `from` on the area in plan, `to` on the wire in plan, with the wire's height there. */
export interface Clearance {
  /** In space, inches. */
  readonly distance: number;
  readonly from: Point;
  readonly to: Point;
  readonly height: number;
}

/** A stretch of a span, in shares of it. */
export interface Stretch {
  readonly span: Span;
  readonly start: number;
  readonly end: number;
}

/** The spans of a line through its vertices, each with the same sag. */
export function spansOf(vertices: readonly SpacePoint[], sag: number): Span[] {
  return vertices.slice(1).map((to, i) => ({ from: vertices[i] as SpacePoint, to, sag }));
}

/** Height of the wire at a share of the span, as a polynomial: straight between the ends, less 4 sag t (1 - t). */
function heightOf({ from, to, sag }: Span): Polynomial {
  return [from[2], to[2] - from[2] - 4 * sag, 4 * sag];
}

export function heightAt(span: Span, share: number): number {
  return valueAt(heightOf(span), share);
}

export function planEdge({ from, to }: Span): LineEdge {
  return { kind: "line", from: [from[0], from[1]], to: [to[0], to[1]] };
}

/** The stretches of the spans whose plan lies at most `distance` from the area (0 inside), as in `lengthWithin`. */
export function stretchesWithin(spans: readonly Span[], area: Area, distance: number): Stretch[] {
  return spans.flatMap((span) => {
    const edge = planEdge(span);
    const path = pathOfEdges([edge], false);
    const length = edgeLength(edge);
    const stretches = lengthWithin(path, area, distance).pieces.map((piece): Stretch => {
      const first = piece.edges[0]?.from ?? edge.from;
      const last = piece.edges[piece.edges.length - 1]?.to ?? edge.to;
      return {
        span,
        start: distanceBetween(edge.from, first) / length,
        end: distanceBetween(edge.from, last) / length,
      };
    });
    if (stretches.length > 0) return stretches;
    // A wire that only touches the edge of the prism does so in one point.
    const nearest = pathToArea(path, area);
    const share = distanceBetween(edge.from, nearest.to) / length;
    return nearest.length <= distance + LIMIT_TOLERANCE ? [{ span, start: share, end: share }] : [];
  });
}

/** Lowest height of the wire over a stretch. */
export function lowestHeight({ span, start, end }: Stretch): number {
  const height = heightOf(span);
  const shares = [start, end, ...rootsAndTurns(derivative(height), start, end)];
  return Math.min(...shares.map((share) => valueAt(height, share)));
}

/** The least distance in space from the stretches to the area at `level` and below it; null where there is no stretch. */
export function clearanceOver(stretches: readonly Stretch[], area: Area, level: number): Clearance | null {
  let best: Clearance | null = null;
  for (const stretch of stretches) {
    for (const share of candidates(stretch, area, level)) {
      const found = clearanceAt(stretch.span, share, area, level);
      if (!best || found.distance < best.distance) best = found;
    }
  }
  return best;
}

function clearanceAt(span: Span, share: number, area: Area, level: number): Clearance {
  const edge = planEdge(span);
  const at = between(edge.from, edge.to, share);
  const plan = pointToArea(at, area);
  const height = heightAt(span, share);
  return { distance: Math.hypot(plan.length, Math.max(0, height - level)), from: plan.from, to: at, height };
}

/** Stage 2. */
function candidates(stretch: Stretch, area: Area, level: number): number[] {
  const { span, start, end } = stretch;
  const edge = planEdge(span);
  const length = edgeLength(edge);
  const height = heightOf(span);
  const above = sum(height, [level], -1);
  const shares = [start, end, ...rootsAndTurns(above, start, end)];
  const aboveSquared = product(above, above);
  for (const path of [area.outer, ...area.holes]) {
    for (const side of path.edges) {
      for (const crossing of crossings(edge, side)) shares.push(distanceBetween(edge.from, crossing) / length);
      // Above the level the height counts, below it the plan alone.
      for (const rise of [aboveSquared, [0]])
        for (const stationary of stationaries(edge, side, rise)) shares.push(...rootsAndTurns(stationary, start, end));
    }
  }
  return shares.filter((share) => share >= start && share <= end);
}

/** Polynomials whose roots hold the least squared distances from a moving point over `edge` to a side, `rise` being its squared height. */
function stationaries(edge: LineEdge, side: Edge, rise: Polynomial): Polynomial[] {
  const x: Polynomial = [edge.from[0] - side.from[0], edge.to[0] - edge.from[0]];
  const y: Polynomial = [edge.from[1] - side.from[1], edge.to[1] - edge.from[1]];
  const toVertex = sum(product(x, x), product(y, y));
  const found = [derivative(sum(toVertex, rise))];
  if (side.kind === "line") {
    const length = edgeLength(side);
    const [nx, ny] = [(side.to[1] - side.from[1]) / length, (side.from[0] - side.to[0]) / length];
    const off = sum(product([nx], x), product([ny], y));
    found.push(derivative(sum(product(off, off), rise)));
    return found;
  }
  const cx: Polynomial = [edge.from[0] - side.center[0], edge.to[0] - edge.from[0]];
  const cy: Polynomial = [edge.from[1] - side.center[1], edge.to[1] - edge.from[1]];
  const squared = sum(product(cx, cx), product(cy, cy));
  // (sqrt(q) - r)^2 + h has the derivative (1 - r / sqrt(q)) q' + h'; times sqrt(q) and squared it is (q' + h')^2 q - r^2 q'^2.
  const slope = derivative(squared);
  const both = sum(slope, derivative(rise));
  const left = product(product(both, both), squared);
  found.push(sum(left, product(slope, slope), -(side.radius * side.radius)));
  return found;
}

/** The plan of a line's spans as one path. */
export function planPath(spans: readonly Span[]): Path {
  return pathOfEdges(spans.map(planEdge), false);
}
