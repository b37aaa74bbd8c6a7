/**
 * Outlines and lines at a distance from others: a deck's edge, a coping, a fence along another.
 *
 * Terms. Round corners: every place lies exactly at the distance. Square corners: where the exact offset goes round a
 * corner between two straight edges, the edges are carried on until they meet.
 *
 * Stages for an outline: the exact offset of the area (offset.ts), or of the ground inside it; then square corners. For
 * an open line: each edge is moved sideways; neighbors are cut where they cross, or joined round the corner; a result
 * that comes nearer to the line than the distance is none.
 */
import { arcAround, movedSideways, nearestOnEdge, partOfEdge, pointAt, tangentAt } from "./edge.ts";
import { crossings } from "./edge-crossings.ts";
import { offsetCurves } from "./offset.ts";
import { areaOfPaths, pathOfEdges, reversePath, signedArea } from "./outline.ts";
import { pointToPath } from "./point-distance.ts";
import { distanceBetween, grownBounds } from "./points.ts";
import { SAME_CORNER, STRAIGHT_ANGLE } from "./tolerances.ts";
import type { ArcEdge, Edge, Path, Point } from "./types.ts";

export type CornerStyle = "round" | "square";

/** A corner sharper than this (a right angle and a half, radians) is never carried on to a point. */
const SHARPEST = (3 * Math.PI) / 4;

/** The outlines at `d` inches outside (d > 0) or inside (d < 0) a closed path, counter-clockwise, largest first. Empty: nothing is left inside. */
export function parallelOutlines(outline: Path, d: number, corners: CornerStyle): Path[] {
  const outer = signedArea(outline) < 0 ? reversePath(outline) : outline;
  const found = d > 0 ? outward(outer, d) : inward(outer, -d);
  return found
    .map((path) => (corners === "square" ? squared(path, Math.abs(d)) : path))
    .sort((a, b) => signedArea(b) - signedArea(a));
}

/** Pockets that a narrow inlet closes off are left out. */
function outward(outer: Path, d: number): Path[] {
  return offsetCurves([areaOfPaths(outer)], d)
    .loops.filter(({ area }) => area > 0)
    .map(({ path }) => path);
}

function inward(outer: Path, d: number): Path[] {
  // The ground inside a frame far outside: what lies inside the outline is offset as an island is.
  const { minX, minY, maxX, maxY } = grownBounds(outer.bounds, 4 * d);
  const frame: Point[] = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
  const sides = frame.map((from, i): Edge => ({ kind: "line", from, to: frame[(i + 1) % 4] as Point }));
  const ground = areaOfPaths(pathOfEdges(sides, true), [reversePath(outer)]);
  return offsetCurves([ground], d)
    .loops.filter(({ area }) => area < 0)
    .map(({ path }) => reversePath(path));
}

/** The path with its edges carried on where it went round a corner between two straight ones. */
function squared(path: Path, d: number): Path {
  const { edges } = path;
  const count = edges.length;
  const kept = edges.map((edge) => edge);
  const gone = new Set<number>();
  edges.forEach((edge, i) => {
    const [b, a] = [(i + count - 1) % count, (i + 1) % count];
    const [before, after] = [edges[b], edges[a]];
    if (before?.kind !== "line" || after?.kind !== "line" || !isCorner(edge, before, after, d)) return;
    const tip = tipOf(before, after);
    const [from, to] = [kept[b], kept[a]];
    if (from) kept[b] = { kind: "line", from: from.from, to: tip };
    if (to) kept[a] = { kind: "line", from: tip, to: to.to };
    gone.add(i);
  });
  return pathOfEdges(
    kept.filter((_, i) => !gone.has(i)),
    path.closed,
  );
}

/** An arc round a corner: of the distance itself, smooth with straight edges on both sides. */
function isCorner(edge: Edge, before: Edge, after: Edge, d: number): edge is ArcEdge {
  if (edge.kind !== "arc" || Math.abs(edge.radius - d) > SAME_CORNER || Math.abs(edge.sweep) > SHARPEST) return false;
  const smooth = (a: Point, b: Point) => Math.abs(a[0] * b[1] - a[1] * b[0]) <= SAME_CORNER;
  return smooth(tangentAt(before, 1), tangentAt(edge, 0)) && smooth(tangentAt(edge, 1), tangentAt(after, 0));
}

/** Where two straight edges meet when they are carried on. */
function tipOf(before: Edge, after: Edge): Point {
  const [ux, uy] = tangentAt(before, 1);
  const [vx, vy] = tangentAt(after, 0);
  const [dx, dy] = [after.from[0] - before.to[0], after.from[1] - before.to[1]];
  const far = (dx * vy - dy * vx) / (ux * vy - uy * vx);
  return [before.to[0] + far * ux, before.to[1] + far * uy];
}

/** The line at `d` inches to the left (d < 0: right) of an open one, in its direction; null where its bends leave no room. */
export function parallelLine(line: Path, d: number, corners: CornerStyle): Path | null {
  let edges: Edge[] = [];
  for (const [i, edge] of line.edges.entries()) {
    const next = movedSideways(edge, d);
    if (!next) return null;
    const last = edges.at(-1);
    if (!last) {
      edges.push(next);
      continue;
    }
    const joined = join(last, next, line.edges[i - 1] as Edge, edge, d);
    if (!joined) return null;
    edges = [...edges.slice(0, -1), ...joined];
  }
  const found = pathOfEdges(edges, false);
  const isClear = edges.every((edge) =>
    [0, 0.25, 0.5, 0.75, 1].every((t) => pointToPath(pointAt(edge, t), line).length >= Math.abs(d) - SAME_CORNER),
  );
  if (!isClear) return null;
  return corners === "square" ? squaredLine(found, Math.abs(d)) : found;
}

/** Two moved edges, with what joins them: nothing, an arc round the corner, or both cut where they cross. */
function join(a: Edge, b: Edge, before: Edge, after: Edge, d: number): Edge[] | null {
  const [tx, ty] = tangentAt(before, 1);
  const [ux, uy] = tangentAt(after, 0);
  const turn = Math.atan2(tx * uy - ty * ux, tx * ux + ty * uy);
  if (Math.abs(turn) <= STRAIGHT_ANGLE || distanceBetween(a.to, b.from) <= SAME_CORNER) return [a, withStart(b, a.to)];
  const corner = before.to;
  if (turn > 0 !== d > 0) {
    const start = Math.atan2(a.to[1] - corner[1], a.to[0] - corner[0]);
    return [a, arcAround(corner, Math.abs(d), start, turn, { from: a.to, to: b.from }), b];
  }
  const [at] = crossings(a, b).sort((p, q) => distanceBetween(p, corner) - distanceBetween(q, corner));
  if (!at) return null;
  const [ta, tb] = [nearestOnEdge(a, at).t, nearestOnEdge(b, at).t];
  if (ta <= 0 || tb >= 1) return null;
  return [withEnd(partOfEdge(a, 0, ta), at), withStart(partOfEdge(b, tb, 1), at)];
}

function withStart(edge: Edge, from: Point): Edge {
  return { ...edge, from };
}

function withEnd(edge: Edge, to: Point): Edge {
  return { ...edge, to };
}

function squaredLine(path: Path, d: number): Path {
  const { edges } = path;
  const kept: Edge[] = [];
  for (const [i, edge] of edges.entries()) {
    const [before, after] = [edges[i - 1], edges[i + 1]];
    const last = kept.at(-1);
    if (last && before?.kind === "line" && after?.kind === "line" && isCorner(edge, before, after, d)) {
      kept[kept.length - 1] = { kind: "line", from: last.from, to: tipOf(before, after) };
      continue;
    }
    const start = last?.to;
    kept.push(start && edge.kind === "line" ? { kind: "line", from: start, to: edge.to } : edge);
  }
  return pathOfEdges(kept, false);
}
