/**
 * Whether the islands of a pool are ground inside its water: each wholly inside the outline, clear of the inside wall and
 * of the other islands. One that is not leaves no telling what is water. Checked only where each path is sound by itself.
 */
import { pathToPath } from "../../geometry/distance.ts";
import { contains, pathFrom } from "../../geometry/outline.ts";
import { boxIndex } from "../../geometry/spatial-index.ts";
import { SAME_POINT } from "../../geometry/tolerances.ts";
import type { Area, Path, PathData, Point } from "../../geometry/types.ts";
import { MOST_PROBLEMS } from "./limits.ts";
import type { FieldProblem } from "./refusal.ts";

export const ISLAND_IN_WATER = "an island inside the pool's outline that does not touch it";
export const ISLAND_APART = "an island that lies apart from the others";

/** The first thing wrong with each island, in the order of the file. Empty: nothing. */
export function islandProblems(outline: PathData, islands: readonly PathData[]): FieldProblem[] {
  const water: Area = { outer: pathFrom(outline), holes: [] };
  const paths = islands.map(pathFrom);
  const boxes = boxIndex(paths.map(({ bounds }) => bounds));
  const problems: FieldProblem[] = [];
  for (const [i, path] of paths.entries()) {
    if (problems.length > MOST_PROBLEMS) break;
    const field = `islands[${i}]`;
    const misplaced = outOfWater(path, water);
    if (misplaced !== null) {
      problems.push({ field, expected: ISLAND_IN_WATER, got: misplaced });
      continue;
    }
    for (const j of boxes.search(path.bounds)) {
      if (j >= i) break;
      const together = notApart(path, paths[j] as Path, `islands[${j}]`);
      if (together === null) continue;
      problems.push({ field, expected: ISLAND_APART, got: together });
      break;
    }
  }
  return problems;
}

function outOfWater(island: Path, water: Area): string | null {
  const meeting = meetingOf(water.outer, island);
  if (meeting !== null) return `one that meets it at ${written(meeting)}`;
  const start = firstOf(island);
  return contains(water, start) ? null : `one outside it, at ${written(start)}`;
}

function notApart(island: Path, other: Path, name: string): string | null {
  const meeting = meetingOf(other, island);
  if (meeting !== null) return `one that meets ${name} at ${written(meeting)}`;
  if (contains({ outer: other, holes: [] }, firstOf(island))) return `one inside ${name}`;
  return contains({ outer: island, holes: [] }, firstOf(other)) ? `one around ${name}` : null;
}

function meetingOf(a: Path, b: Path): Point | null {
  const { length, from } = pathToPath(a, b);
  return length <= SAME_POINT ? from : null;
}

function firstOf(path: Path): Point {
  const [edge] = path.edges;
  if (!edge) throw new Error("An island without edges.");
  return edge.from;
}

function written([x, y]: Point): string {
  return `[${x}, ${y}]`;
}
