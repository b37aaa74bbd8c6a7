/**
 * What a path of the site file must be, beyond its types: vertices that are finite and within reach, edges that have
 * a length, arcs that stay within reach, and, for an outline, an area whose edge nowhere meets itself.
 *
 * The checks run in that order, and a later one only where the earlier ones found nothing, since each needs what the
 * one before it holds.
 */
import { edgeFromVertices } from "../../geometry/edge.ts";
import { edgeBounds } from "../../geometry/edge-boxes.ts";
import { samePoint } from "../../geometry/points.ts";
import { findSelfCrossing } from "../../geometry/self-crossing.ts";
import type { PathData, Point, Vertex } from "../../geometry/types.ts";
import { LARGEST_NUMBER, MOST_PROBLEMS, MOST_VERTICES } from "./limits.ts";
import { type FieldProblem, shown } from "./refusal.ts";
import { isPlainObject } from "./size-check.ts";

export interface PathRule {
  /** What `closed` must be; null: either. */
  readonly closed: boolean | null;
  /** An outline bounds an area: it may not meet itself. */
  readonly outline: boolean;
  /** What the third number of a vertex is. */
  readonly third: "bulge" | "height";
}

/** Everything wrong with one path, `field` being where it lies in its element (`islands[1]`). Empty: nothing. */
export function pathProblems(value: unknown, field: string, rule: PathRule): FieldProblem[] {
  const problems = structureProblems(value, field, rule);
  if (problems.length > 0) return problems;
  const data = value as PathData;
  problems.push(...edgeProblems(data, field, rule));
  if (problems.length > 0 || rule.third === "height") return problems;
  problems.push(...areaProblems(data, field));
  if (problems.length > 0 || !rule.outline) return problems;
  const crossing = findSelfCrossing(data);
  if (crossing !== null) {
    problems.push({
      field,
      expected: "an outline that does not cross or touch itself",
      got: `the edges that leave vertices[${crossing.edgeA}] and vertices[${crossing.edgeB}] meet at [${crossing.at[0]}, ${crossing.at[1]}]`,
    });
  }
  return problems;
}

function structureProblems(value: unknown, field: string, rule: PathRule): FieldProblem[] {
  if (!isPlainObject(value)) {
    return [{ field, expected: `${pathWords(rule)} with "vertices" and "closed"`, got: shown(value) }];
  }
  const problems: FieldProblem[] = [];
  const { vertices, closed } = value;
  if (!Array.isArray(vertices)) {
    problems.push({ field: `${field}.vertices`, expected: "a list of vertices", got: shown(vertices) });
  } else if (vertices.length < 2) {
    problems.push({ field: `${field}.vertices`, expected: "at least 2 vertices", got: `${vertices.length}` });
  } else if (vertices.length > MOST_VERTICES) {
    const expected = `at most ${MOST_VERTICES} vertices`;
    problems.push({ field: `${field}.vertices`, expected, got: `${vertices.length}` });
  } else {
    for (let i = 0; i < vertices.length && problems.length <= MOST_PROBLEMS; i++) {
      if (!isVertex(vertices[i])) {
        const largest = LARGEST_NUMBER.toLocaleString("en-US");
        const expected = `[x, y] or [x, y, ${rule.third === "height" ? "z" : "bulge"}], numbers from -${largest} to ${largest}`;
        problems.push({ field: `${field}.vertices[${i}]`, expected, got: shown(vertices[i]) });
      }
    }
  }
  if (typeof closed !== "boolean") {
    problems.push({ field: `${field}.closed`, expected: "true or false", got: shown(closed) });
  } else if (rule.closed !== null && closed !== rule.closed) {
    const why = rule.closed ? "an outline is closed" : "this path is open";
    problems.push({ field: `${field}.closed`, expected: `${rule.closed} (${why})`, got: shown(closed) });
  }
  return problems;
}

function pathWords(rule: PathRule): string {
  return rule.closed === null ? "a path" : rule.closed ? "a closed outline" : "an open path";
}

function isVertex(value: unknown): boolean {
  return (
    Array.isArray(value) &&
    (value.length === 2 || value.length === 3) &&
    value.every((n) => typeof n === "number" && Math.abs(n) <= LARGEST_NUMBER)
  );
}

/** Edges of no length, and arcs that leave the space a site may use. */
function edgeProblems({ vertices, closed }: PathData, field: string, rule: PathRule): FieldProblem[] {
  const problems: FieldProblem[] = [];
  const count = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < count && problems.length <= MOST_PROBLEMS; i++) {
    const next = (i + 1) % vertices.length;
    const from = vertices[i] as Vertex;
    const to = vertices[next] as Vertex;
    if (samePoint(planPoint(from), planPoint(to))) {
      if (rule.third === "height" && from[2] !== to[2]) continue;
      problems.push(noLength(vertices, field, i, next));
    } else if (rule.third === "bulge") {
      const { minX, minY, maxX, maxY } = edgeBounds(edgeFromVertices(from, to));
      const farthest = Math.max(-minX, -minY, maxX, maxY);
      if (!(farthest <= LARGEST_NUMBER)) {
        problems.push({
          field: `${field}.vertices[${i}]`,
          expected: `an arc that stays within ${LARGEST_NUMBER.toLocaleString("en-US")} in. of the origin`,
          got: `bulge ${from[2]}, which reaches ${farthest}`,
        });
      }
    }
  }
  return problems;
}

function noLength(vertices: readonly Vertex[], field: string, i: number, next: number): FieldProblem {
  const at = shown(planPoint(vertices[i] as Vertex));
  if (next === 0) {
    return {
      field: `${field}.vertices[${i}]`,
      expected: "a last vertex that differs from the first (a closed path does not repeat its first vertex)",
      got: `the first vertex again, ${at}`,
    };
  }
  return {
    field: `${field}.vertices[${next}]`,
    expected: "a vertex that differs from the one before it (an edge needs a length)",
    got: `the same position again, ${at}`,
  };
}

function planPoint(vertex: Vertex): Point {
  return [vertex[0], vertex[1]];
}

/** A closed path of two vertices bounds an area only where an arc keeps its two edges apart. */
function areaProblems({ vertices, closed }: PathData, field: string): FieldProblem[] {
  if (!closed || vertices.length !== 2) return [];
  const there = vertices[0]?.[2] ?? 0;
  const back = vertices[1]?.[2] ?? 0;
  if (there !== -back) return [];
  const expected = "at least 3 vertices, or an arc, so that a closed path encloses an area";
  return [{ field: `${field}.vertices`, expected, got: "2 vertices and the same edge there and back" }];
}
