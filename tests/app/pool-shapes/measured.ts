import { type Dimensions, fullDimensions } from "../../../app/pool-shapes/shape.ts";
import type { PoolShapeId } from "../../../app/pool-shapes/shape-names.ts";
import { SHAPES } from "../../../app/pool-shapes/shapes.ts";
import { tangentAt } from "../../../geometry/edge.ts";
import { areaFrom, pathFrom, pathLength, signedArea } from "../../../geometry/outline.ts";
import type { PathData } from "../../../geometry/types.ts";

/** The outline of a shape by its dimensions; those left out are as they start. Throws what it was refused for. */
export function drawn(id: PoolShapeId, typed: Dimensions = {}): PathData {
  const shape = SHAPES[id];
  const shaped = shape.outline(fullDimensions(shape, typed), "ft-in");
  if (!shaped.ok) throw new Error(shaped.reason);
  return shaped.outline;
}

/** Why a shape is refused. Throws when it is not. */
export function refusalOf(id: PoolShapeId, typed: Dimensions): { field: string; reason: string } {
  const shape = SHAPES[id];
  const shaped = shape.outline(fullDimensions(shape, typed), "ft-in");
  if (shaped.ok) throw new Error("it was drawn");
  return shaped;
}

export function lengthOf(outline: PathData): number {
  return pathLength(pathFrom(outline));
}

/** Square inches; negative when the outline runs clockwise. */
export function areaInside(outline: PathData): number {
  return signedArea(pathFrom(outline));
}

export function sizeOf(outline: PathData): [number, number] {
  const { minX, minY, maxX, maxY } = areaFrom(outline).outer.bounds;
  return [maxX - minX, maxY - minY];
}

/** The largest angle, radians, by which the outline turns at a vertex. */
export function sharpestCorner(outline: PathData): number {
  const { edges } = pathFrom(outline);
  const turns = edges.map((edge, i) => {
    const next = edges[(i + 1) % edges.length];
    if (!next) throw new Error("no edge");
    const [a, b] = [tangentAt(edge, 1), tangentAt(next, 0)];
    return Math.abs(Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]));
  });
  return Math.max(...turns);
}
