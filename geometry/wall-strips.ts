/** A wall's footprint as the union of the strips of its edges and the corners between them, where sides cannot be traced. */
import { unionRegions } from "./clipping.ts";
import { lineEdge, movedSideways } from "./edge.ts";
import { areaOfPaths, flattenPath, pathOfEdges } from "./outline.ts";
import { FINE_FLATTEN_TOLERANCE } from "./tolerances.ts";
import type { Area, Edge, Path, Point, Region, Ring } from "./types.ts";
import { cornerOf } from "./wall-corner.ts";

/** The union, arcs drawn by chords. Throws when the strips do not hang together, which a path's edges always do. */
export function unitedStrips(path: Path, half: number): Area {
  const regions: Region[] = [];
  let last: { left: Point; right: Point } | null = null;
  for (const [i, edge] of path.edges.entries()) {
    const left = sideLine(edge, half);
    const right = sideLine(edge, -half);
    const before = i > 0 ? path.edges[i - 1] : path.closed ? path.edges[path.edges.length - 1] : undefined;
    if (before) {
      // A smooth joint takes the numbers of the strip before, so that no crack opens between two roundings.
      if (last && cornerOf(before, edge, half).kind === "smooth") {
        left[0] = last.left;
        right[0] = last.right;
      }
      for (const offset of [half, -half]) regions.push(...cornerRegions(before, edge, offset));
    }
    last = { left: left[left.length - 1] as Point, right: right[right.length - 1] as Point };
    regions.push(asRegion([...left, ...right.reverse()]));
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

function cornerRegions(before: Edge, after: Edge, offset: number): Region[] {
  const corner = cornerOf(before, after, offset);
  if (corner.kind !== "outer") return [];
  const end = movedSideways(before, offset)?.to;
  const start = movedSideways(after, offset)?.from;
  return end && start ? [asRegion([before.to, end, ...corner.over, start])] : [];
}

function asRegion(points: Point[]): Region {
  return [[[...points, points[0] as Point]]];
}

function pathOfRing(ring: Ring): Path {
  const edges = ring.slice(0, -1).map((p, i) => lineEdge(p, ring[i + 1] as Point));
  return pathOfEdges(edges, true);
}
