/**
 * Shortest straight distances between positions, paths and areas, each with its witness segment. Exact on lines and
 * arcs; boxes only leave out what cannot be nearest. Inside an area every distance to it is 0; inside one of its holes
 * (an island) it is the distance to the hole's edge. Inches.
 */
import { contains } from "./contains.ts";
import { edgeToEdge, edgeToEdgeWithin } from "./edge-distance.ts";
import { edgeTree, visitPairs } from "./edge-tree.ts";
import { nearestEdgeToLine } from "./nearest-edge.ts";
import { pointToArea, pointToPath } from "./point-distance.ts";
import type { Area, LineEdge, Path, Witness } from "./types.ts";

export { lengthWithin } from "./length-within.ts";
export { pointToArea, pointToPath };

const UNKNOWN: Witness = {
  length: Number.POSITIVE_INFINITY,
  from: [Number.NaN, Number.NaN],
  to: [Number.NaN, Number.NaN],
};

/** Shortest segment between two paths: `from` on a, `to` on b; length 0 at a common point where they cross or touch. */
export function pathToPath(a: Path, b: Path): Witness {
  const start = b.edges[0]?.from;
  // The distance of one vertex, quickly found, leaves out most pairs of edges.
  return pathToPathWithin(a, b, start && !onlyLine(b) ? pointToPath(start, a) : UNKNOWN);
}

/** The same, but `known` where nothing is nearer than that. */
function pathToPathWithin(a: Path, b: Path, known: Witness): Witness {
  const line = onlyLine(b);
  if (line) {
    const nearest = a.edges[nearestEdgeToLine(edgeTree(a), line, known.length)];
    const found = nearest && edgeToEdge(nearest, line);
    return found && found.length < known.length ? found : known;
  }
  let best = known;
  visitPairs(edgeTree(a), edgeTree(b), known.length, (one, other) => {
    const found = edgeToEdgeWithin(one, other, best.length);
    if (found && found.length < best.length) best = found;
    return best.length;
  });
  return best;
}

/** The edge of a path that is one straight line, as many a fence and pipe is. */
function onlyLine({ edges }: Path): LineEdge | null {
  const only = edges[0];
  return edges.length === 1 && only?.kind === "line" ? only : null;
}

/** Shortest segment from an area to a path: `from` on the area, `to` on the path; length 0 when any of the path is inside. */
export function pathToArea(path: Path, area: Area): Witness {
  const start = path.edges[0]?.from;
  if (start && contains(area, start)) return { length: 0, from: start, to: start };
  let best = pathToPath(area.outer, path);
  for (const hole of area.holes) best = pathToPathWithin(hole, path, best);
  return best;
}

/** Shortest segment between two areas: `from` on a, `to` on b; length 0 at a common point when they overlap or touch. */
export function areaToArea(a: Area, b: Area): Witness {
  const startA = a.outer.edges[0]?.from;
  const startB = b.outer.edges[0]?.from;
  if (startB && contains(a, startB)) return { length: 0, from: startB, to: startB };
  if (startA && contains(b, startA)) return { length: 0, from: startA, to: startA };
  let best: Witness = pathToPath(a.outer, b.outer);
  for (const hole of a.holes) best = pathToPathWithin(hole, b.outer, best);
  for (const hole of b.holes) best = pathToPathWithin(a.outer, hole, best);
  return best;
}
