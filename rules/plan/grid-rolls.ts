/**
 * How many inches of grid roll the plan's grids take.
 *
 * A roll is as wide as the band or wider and is laid along it, so a stretch takes roll as long as the band's middle line
 * over it, however little of the band's width it covers. Stages. 1. Curves round the waters at a few distances across the
 * band. 2. For each connected piece of ground the share of each curve that lies over it; the greatest share, taken of the
 * middle line, is its run. 3. Where the band is wider than the roll, runs lie side by side. Shells: developed area over the
 * roll's width.
 */
import { clipLines } from "../../geometry/clipping.ts";
import { offsetCurves } from "../../geometry/offset.ts";
import { flattenPath, pathLength } from "../../geometry/outline.ts";
import { FINE_FLATTEN_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Point } from "../../geometry/types.ts";
import type { Yard } from "../measures/yard.ts";
import type { GridRolls } from "../report.ts";
import { rollsFor } from "../takeoff/grid-rolls.ts";
import { copperBy, type GroupGrid } from "./copper-by-choice.ts";

/** Where across the band its ground is looked at, as shares of its width; the middle one is the line that rolls follow. */
const ACROSS = [1 / 2, 1 / 12, 1 / 4, 3 / 4, 11 / 12];

/** The rolls for the plan's grids over bands and for shells of a developed area; null where there is no grid. */
export function gridRolls(yard: Yard, developed: number): GridRolls | null {
  const width = yard.edition.value("grid.rollWidth");
  const beside = Math.ceil(yard.edition.value("perimeter.width") / width);
  const along = yard.kept("grid run", () => {
    let sum = 0;
    for (const grid of copperBy(yard, yard.settings.perimeterMethod).grids) sum += bandRun(yard, grid);
    return sum;
  });
  const run = developed / width + along * beside;
  if (run === 0) return null;
  return {
    width,
    run,
    spacing: yard.edition.value("grid.spacing"),
    tolerance: yard.edition.value("grid.tolerance"),
    rolls: rollsFor(run, yard.settings.gridRolls),
  };
}

/** Inches along the band's middle line that a group's grid takes. */
function bandRun(yard: Yard, { group, region }: GroupGrid): number {
  if (region.length === 0) return 0;
  const width = yard.edition.value("perimeter.width");
  const waters = group.map(({ water }) => water);
  const curves = ACROSS.map((share) => {
    const { loops } = offsetCurves(waters, share * width);
    const lines = loops.map(({ path }) => closed(flattenPath(path, FINE_FLATTEN_TOLERANCE)));
    return { lines, length: loops.reduce((sum, { path }) => sum + pathLength(path), 0) };
  });
  const middle = curves[0]?.length ?? 0;
  let run = 0;
  for (const polygon of region) {
    const shares = curves.map(({ lines, length }) => (length > 0 ? over(lines, polygon) / length : 0));
    run += middle * Math.max(...shares);
  }
  return run;
}

function over(lines: readonly Point[][], polygon: readonly (readonly Point[])[]): number {
  let length = 0;
  for (const line of clipLines([...lines], [polygon]).inside) {
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1] as Point, line[i] as Point];
      length += Math.hypot(b[0] - a[0], b[1] - a[1]);
    }
  }
  return length;
}

function closed(points: readonly Point[]): Point[] {
  return points[0] ? [...points, points[0]] : [];
}
