/** Shortest straight distances from a position, exact on lines and arcs. The rest of the distances: distance.ts. */
import { contains } from "./contains.ts";
import { nearestOnEdge } from "./edge.ts";
import { edgeTree } from "./edge-tree.ts";
import { nearestEdge } from "./nearest-edge.ts";
import type { Area, Path, Point, Witness } from "./types.ts";

/** Nearest point of a path: `from` on the path, `to` = p. Length exactly 0 within SAME_POINT of the path. */
export function pointToPath(p: Point, path: Path): Witness {
  return pointToPathWithin(p, path, { length: Number.POSITIVE_INFINITY, from: p, to: p });
}

/** The same, but `known` where nothing of the path is nearer than that. */
function pointToPathWithin(p: Point, path: Path, known: Witness): Witness {
  const nearest = path.edges[nearestEdge(edgeTree(path), p, known.length)];
  if (!nearest) return known;
  const found = nearestOnEdge(nearest, p);
  return { length: found.distance, from: found.point, to: p };
}

/** Nearest point of an area: `from` on its boundary, `to` = p; both p and length 0 when p is inside or on the edge. */
export function pointToArea(p: Point, area: Area): Witness {
  if (contains(area, p)) return { length: 0, from: p, to: p };
  let best = pointToPath(p, area.outer);
  for (const hole of area.holes) best = pointToPathWithin(p, hole, best);
  return best;
}
