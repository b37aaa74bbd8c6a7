/**
 * Square grids laid along a pool's own direction, so that a yard turned or mirrored on its sheet has the same grid.
 *
 * Stages. 1. Directions: those of the longest straight edges of the outlines, where one is long enough to be laid by;
 * else the direction that the edges of the ground to be covered favor. 2. The ground is turned until that direction is
 * level, the grid laid (grid.ts), and its lines turned back. 3. Of several directions the grid of least length.
 * Ground smaller than one spacing both ways, which the lines of the rest might miss, gets two lines through its middle.
 *
 * Terms. A direction counts modulo a quarter turn: a square grid runs both ways. Inches, radians.
 */

import { edgeLength } from "./edge.ts";
import { type Grid, gridOver } from "./grid.ts";
import { areaOf, flattenArea, pathLength } from "./outline.ts";
import { boundsOfPoints } from "./points.ts";
import { ringArea, ringPerimeter } from "./rings.ts";
import {
  FINE_FLATTEN_TOLERANCE,
  GRID_EDGE,
  GRID_SAME_LENGTH,
  GRID_SLIVER,
  ROUND_OUTLINE,
  SAME_EDGE_LENGTH,
} from "./tolerances.ts";
import type { Area, Bounds, Point, Region } from "./types.ts";

const QUARTER = Math.PI / 2;

/** Least share of its outline's length that a straight edge needs for a grid to be laid by it. */
const LAID_BY = 0.1;

/** A grid with the direction it runs in: radians from +x, at least 0 and less than a quarter turn. */
export interface AlignedGrid extends Omit<Grid, "origin"> {
  readonly direction: number;
}

/** A grid over `region` with lines `spacing` inches apart (> 0), along the direction of the waters beside it. */
export function alignedGrid(region: Region, spacing: number, waters: readonly Area[]): AlignedGrid {
  const straight = straightDirections(waters);
  const grids = (straight.length > 0 ? straight : [favoredDirection(region)]).map((direction): AlignedGrid => {
    const grid = gridWithSmallPieces(turned(region, -direction), spacing);
    return { ...grid, lines: grid.lines.map(([a, b]) => [turn(a, direction), turn(b, direction)] as const), direction };
  });
  const least = Math.min(...grids.map(({ length }) => length)) * (1 + GRID_SAME_LENGTH) + GRID_EDGE;
  const [first, ...others] = grids.filter(({ length }) => length <= least);
  if (!first) throw new Error("a grid was asked for without a direction");
  return others.reduce((best, grid) => (grid.crossings < best.crossings ? grid : best), first);
}

/** Level and upright lines: over ground of a spacing or more either way together, over each smaller piece by itself. */
function gridWithSmallPieces(region: Region, spacing: number): Omit<Grid, "origin"> {
  const small: { readonly polygon: Region[number]; readonly box: Bounds }[] = [];
  const rest = region.filter((polygon) => {
    const box = boundsOfPoints(polygon[0] ?? []);
    if (Math.max(box.maxX - box.minX, box.maxY - box.minY) >= spacing) return true;
    const ring = polygon[0] ?? [];
    if (2 * Math.abs(ringArea(ring)) > GRID_SLIVER * ringPerimeter(ring)) small.push({ polygon, box });
    return false;
  });
  const { origin: _, ...sum } = gridOver(rest, spacing);
  if (small.length === 0) return sum;
  const pieces = small.map(({ polygon, box: { minX, minY, maxX, maxY } }) =>
    gridOver([polygon], spacing, [(minX + maxX) / 2, (minY + maxY) / 2]),
  );
  return {
    length: pieces.reduce((all, { length }) => all + length, sum.length),
    crossings: pieces.reduce((all, { crossings }) => all + crossings, sum.crossings),
    lines: [...sum.lines, ...pieces.flatMap(({ lines }) => lines)],
    loose: pieces.reduce((all, { loose }) => all + loose, sum.loose),
  };
}

/**
 * The grid of a shell `depth` inches deep below `area` (its water outline): over the floor as in plan, and up the
 * developed walls, where uprights stand `spacing` apart along the whole perimeter and level lines run round it at every
 * full spacing of the depth. Islands have walls too. `developed`: square inches of floor and walls.
 */
export function shellGrid(
  area: Area,
  depth: number,
  spacing: number,
): { length: number; crossings: number; developed: number } {
  if (!(depth >= 0) || !Number.isFinite(depth)) throw new Error(`a shell needs a depth of 0 or more, not ${depth}`);
  const floor = alignedGrid(flattenArea(area, FINE_FLATTEN_TOLERANCE), spacing, [area]);
  let developed = Math.max(0, areaOf(area));
  let length = developed > 0 ? floor.length : 0;
  let { crossings } = floor;
  const rows = Math.floor(depth / spacing + GRID_EDGE);
  for (const wall of [area.outer, ...area.holes]) {
    const perimeter = pathLength(wall);
    const uprights = depth > 0 ? Math.ceil(perimeter / spacing - GRID_EDGE) : 0;
    length += uprights * depth + rows * perimeter;
    crossings += uprights * rows;
    developed += perimeter * depth;
  }
  return { length, crossings, developed };
}

/** Directions of the longest straight edges: one, or several that are equally long. Empty where none is long enough. */
function straightDirections(waters: readonly Area[]): number[] {
  const edges = waters.flatMap(({ outer }) => {
    const least = pathLength(outer) * LAID_BY;
    return outer.edges.flatMap((edge) => {
      const length = edgeLength(edge);
      if (edge.kind !== "line" || length < least) return [];
      return [{ length, direction: folded(Math.atan2(edge.to[1] - edge.from[1], edge.to[0] - edge.from[0])) }];
    });
  });
  const longest = Math.max(0, ...edges.map(({ length }) => length)) * (1 - SAME_EDGE_LENGTH);
  const directions: number[] = [];
  for (const { length, direction } of edges) {
    if (length < longest || directions.some((other) => sameDirection(direction, other))) continue;
    directions.push(direction);
  }
  return directions;
}

/** The direction that the edges of a region favor, each by its length; 0 where they favor none. */
function favoredDirection(region: Region): number {
  let [along, across, all] = [0, 0, 0];
  for (const ring of region.flat()) {
    for (let i = 0; i + 1 < ring.length; i++) {
      const [a, b] = [ring[i] as Point, ring[i + 1] as Point];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const fourfold = 4 * Math.atan2(b[1] - a[1], b[0] - a[0]);
      along += length * Math.cos(fourfold);
      across += length * Math.sin(fourfold);
      all += length;
    }
  }
  return Math.hypot(along, across) <= ROUND_OUTLINE * all ? 0 : folded(Math.atan2(across, along) / 4);
}

/** An angle modulo a quarter turn. */
function folded(angle: number): number {
  return ((angle % QUARTER) + QUARTER) % QUARTER;
}

function sameDirection(a: number, b: number): boolean {
  const apart = Math.abs(a - b);
  return Math.min(apart, QUARTER - apart) < SAME_EDGE_LENGTH;
}

function turn([x, y]: Point, angle: number): Point {
  if (angle === 0) return [x, y];
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [x * cos - y * sin, x * sin + y * cos];
}

function turned(region: Region, angle: number): Region {
  return angle === 0 ? region : region.map((polygon) => polygon.map((ring) => ring.map((p) => turn(p, angle))));
}
