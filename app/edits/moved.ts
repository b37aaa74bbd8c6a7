/** An element at another place, with everything of its geometry moved alike. */
import type { PathData, Point, Vertex } from "../../geometry/types.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import { geometryField, innerOutlineFields } from "../../rules/site/geometry-fields.ts";
import type { AnyElement } from "./edit.ts";

/** The element moved by (dx, dy) inches; null for a kind whose geometry this version does not know. */
export function moved(element: AnyElement, dx: number, dy: number): AnyElement | null {
  if (!isKnownKind(element.kind)) return null;
  const fields: Record<string, unknown> = { ...element };
  const field = geometryField(element.kind);
  const value = fields[field];
  if (field === "at") fields.at = movedPoint(value as Point, dx, dy);
  else if (isPoint(value)) fields[field] = { ...value, point: movedPoint(value.point, dx, dy) };
  else fields[field] = movedPath(value as PathData, dx, dy);
  for (const inner of innerOutlineFields(element.kind)) {
    const list = fields[inner];
    if (Array.isArray(list)) fields[inner] = (list as PathData[]).map((path) => movedPath(path, dx, dy));
  }
  return fields as unknown as AnyElement;
}

function movedPoint([x, y]: Point, dx: number, dy: number): Point {
  return [x + dx, y + dy];
}

function movedPath(path: PathData, dx: number, dy: number): PathData {
  const vertices = path.vertices.map(
    (vertex): Vertex =>
      vertex[2] === undefined ? [vertex[0] + dx, vertex[1] + dy] : [vertex[0] + dx, vertex[1] + dy, vertex[2]],
  );
  return { ...path, vertices };
}

function isPoint(value: unknown): value is { readonly point: Point } {
  return typeof value === "object" && value !== null && "point" in value;
}
