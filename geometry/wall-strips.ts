/**
 * A wall's footprint as the union of the strips of its edges and the corners between them, where its sides cannot be
 * traced. Corners reach STRIP_OVERLAP inches into the strips beside them, because pieces that only touch may come back from
 * the clipping engine as pieces.
 */
import { unionRegions } from "./clipping.ts";
import { edgeLength, lineEdge, movedSideways, tangentAt } from "./edge.ts";
import { areaOfPaths, flattenPath, pathOfEdges } from "./outline.ts";
import { FINE_FLATTEN_TOLERANCE, STRIP_OVERLAP, THINNEST_HALF } from "./tolerances.ts";
import type { Area, Edge, Path, Point, Region, Ring } from "./types.ts";
import { cornerOf } from "./wall-corner.ts";

/**
 * The union, arcs drawn by chords; a wall too thin for the clipping grid is as thick as that shows. Throws when the strips
 * do not hang together, which a path's edges always do.
 */
export function unitedStrips(path: Path, halfThickness: number): Area {
  const half = Math.max(halfThickness, THINNEST_HALF);
  const regions: Region[] = path.edges.map((edge) =>
    asRegion([...sideLine(edge, half), ...sideLine(edge, -half).reverse()]),
  );
  for (const [i, edge] of path.edges.entries()) {
    const before = i > 0 ? path.edges[i - 1] : path.closed ? path.edges[path.edges.length - 1] : undefined;
    if (before) for (const offset of [half, -half]) regions.push(...joint(before, edge, offset));
  }
  const united = unionRegions(regions);
  const polygon = united[0];
  if (!polygon || united.length !== 1) throw new Error(`a wall's strips united to ${united.length} areas instead of 1`);
  const [outer, ...holes] = polygon.map(pathOfRing);
  return areaOfPaths(outer as Path, holes);
}

/** The edge half a thickness to the side, by chords; where an arc is too tight for that, its center. */
function sideLine(edge: Edge, offset: number): Point[] {
  const moved = movedSideways(edge, offset);
  if (moved) return flattenPath(pathOfEdges([moved], false), FINE_FLATTEN_TOLERANCE);
  return edge.kind === "arc" ? [edge.center] : [];
}

/** What lies between two strips on one side of the centerline, reaching into both; nothing at an inner corner. */
function joint(before: Edge, after: Edge, offset: number): Region[] {
  const corner = cornerOf(before, after, offset);
  const end = movedSideways(before, offset)?.to;
  const start = movedSideways(after, offset)?.from;
  if (corner.kind === "inner" || !end || !start) return [];
  const over = corner.kind === "outer" ? corner.over : [];
  const [inBefore, inAfter] = [stepInto(before, 1, -1), stepInto(after, 0, 1)];
  const vertex = before.to;
  return [
    asRegion([
      plus(vertex, inAfter),
      vertex,
      plus(vertex, inBefore),
      plus(end, inBefore),
      end,
      ...over,
      start,
      plus(start, inAfter),
    ]),
  ];
}

/** A short step along the edge from one of its ends: `way` 1 onward, -1 back. */
function stepInto(edge: Edge, t: number, way: number): Point {
  const [ux, uy] = tangentAt(edge, t);
  const step = Math.min(STRIP_OVERLAP, edgeLength(edge) / 2) * way;
  return [ux * step, uy * step];
}

function plus(p: Point, step: Point): Point {
  return [p[0] + step[0], p[1] + step[1]];
}

function asRegion(points: Point[]): Region {
  return [[[...points, points[0] as Point]]];
}

function pathOfRing(ring: Ring): Path {
  const edges = ring.slice(0, -1).map((p, i) => lineEdge(p, ring[i + 1] as Point));
  return pathOfEdges(edges, true);
}
