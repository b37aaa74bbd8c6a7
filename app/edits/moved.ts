/**
 * An element at another place: moved, turned or mirrored, with everything of its geometry alike. What decides a rule
 * (lengths, heights, what it is) stays; an arc keeps its shape, so that mirroring makes its bulge the opposite.
 */
import type { PathData, Point, Vertex } from "../../geometry/types.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import { geometryField, innerOutlineFields, readsHeights } from "../../rules/site/geometry-fields.ts";
import type { AnyElement } from "./edit.ts";

/** What takes the plan to another place without changing a distance. */
export interface Motion {
  at(point: Point): Point;
  /** Left and right change sides. */
  readonly isMirrored: boolean;
}

export function shift(dx: number, dy: number): Motion {
  return { at: ([x, y]) => [x + dx, y + dy], isMirrored: false };
}

/** A turn about a point, degrees counter-clockwise. */
export function turn(degrees: number, [cx, cy]: Point): Motion {
  const [cos, sin] = directionOf(degrees);
  return {
    at: ([x, y]) => [cx + (x - cx) * cos - (y - cy) * sin, cy + (x - cx) * sin + (y - cy) * cos],
    isMirrored: false,
  };
}

/** A mirror that stands on a point and runs at an angle, degrees counter-clockwise from the right. */
export function mirror([cx, cy]: Point, degrees: number): Motion {
  const [cos, sin] = directionOf(2 * degrees);
  return {
    at: ([x, y]) => [cx + (x - cx) * cos + (y - cy) * sin, cy + (x - cx) * sin - (y - cy) * cos],
    isMirrored: true,
  };
}

/** Cosine and sine; exact at quarter turns, so that what was square stays so to the last digit. */
function directionOf(degrees: number): readonly [number, number] {
  const rest = ((degrees % 360) + 360) % 360;
  if (rest === 0) return [1, 0];
  if (rest === 90) return [0, 1];
  if (rest === 180) return [-1, 0];
  if (rest === 270) return [0, -1];
  const angle = (rest * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
}

/** The element moved by (dx, dy) inches; null for a kind whose geometry this version does not know. */
export function moved(element: AnyElement, dx: number, dy: number): AnyElement | null {
  return placed(element, shift(dx, dy));
}

/** The element where a motion takes it; null for a kind whose geometry this version does not know. */
export function placed(element: AnyElement, motion: Motion): AnyElement | null {
  if (!isKnownKind(element.kind)) return null;
  const fields: Record<string, unknown> = { ...element };
  const field = geometryField(element.kind);
  const value = fields[field];
  if (field === "at") fields.at = motion.at(value as Point);
  else if (isPoint(value)) fields[field] = { ...value, point: motion.at(value.point) };
  else fields[field] = placedPath(value as PathData, motion, readsHeights(element.kind));
  for (const inner of innerOutlineFields(element.kind)) {
    const list = fields[inner];
    if (Array.isArray(list)) fields[inner] = (list as PathData[]).map((path) => placedPath(path, motion, false));
  }
  return fields as unknown as AnyElement;
}

function placedPath(path: PathData, motion: Motion, hasHeights: boolean): PathData {
  const vertices = path.vertices.map((vertex): Vertex => {
    const [x, y] = motion.at([vertex[0], vertex[1]]);
    const third = vertex[2];
    if (third === undefined) return [x, y];
    return [x, y, motion.isMirrored && !hasHeights && third !== 0 ? -third : third];
  });
  return { ...path, vertices };
}

function isPoint(value: unknown): value is { readonly point: Point } {
  return typeof value === "object" && value !== null && "point" in value;
}
