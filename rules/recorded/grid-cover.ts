/**
 * The ground that recorded perimeter grids cover. A closed grid covers the area inside its path; an open one is the middle
 * line of a roll and covers the roll's width.
 */
import { regionContains } from "../../geometry/clipping.ts";
import { areaOfPaths, flattenArea } from "../../geometry/outline.ts";
import type { Point, Region } from "../../geometry/types.ts";
import { wallFootprint } from "../../geometry/wall-footprint.ts";
import type { Yard } from "../measures/yard.ts";
import { perimeterCopper } from "./bearers.ts";
import { standingOfFacts } from "./fact.ts";
import { layingFacts } from "./laying.ts";
import { leastOf, type Standing } from "./standing.ts";
import { wireOf } from "./wire.ts";

export interface GridCover {
  readonly id: string;
  readonly region: Region;
  readonly standing: Standing;
}

/** The recorded perimeter grids whose wire and laying are right: surely, or as far as the facts given go. */
export function gridCover(yard: Yard, surely: boolean): GridCover[] {
  const covers: GridCover[] = [];
  for (const grid of perimeterCopper(yard)) {
    if (grid.role !== "grid") continue;
    const wire = wireOf(yard, grid);
    const standing = leastOf([wire.standing, wire.bare, standingOfFacts(layingFacts(yard, grid))]);
    if (standing === "no" || (surely && standing !== "sure")) continue;
    const shape = yard.shape(grid);
    if (shape.kind !== "path") continue;
    const area = shape.path.closed
      ? areaOfPaths(shape.path)
      : wallFootprint(shape.path, yard.edition.value("grid.rollWidth"));
    covers.push({ id: grid.id, region: flattenArea(area), standing });
  }
  return covers;
}

/** The grids that cover a position. */
export function gridsAt(covers: readonly GridCover[], p: Point): string[] {
  return covers.filter(({ region }) => regionContains(region, p)).map(({ id }) => id);
}
