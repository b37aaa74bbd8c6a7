/** Where a path lies in an element, and how to take it out and put another in its place. */
import type { PathData, Point, Vertex } from "../../geometry/types.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import { geometryField, innerOutlineFields, readsHeights } from "../../rules/site/geometry-fields.ts";
import type { AnyElement } from "./edit.ts";

/** One path of an element. `index` is needed for the lists `islands` and `holes` only. */
export interface PathRef {
  readonly field: "outline" | "path" | "shape" | "islands" | "holes";
  readonly index?: number;
}

/** The path there, or null when the element has none there (a point, another kind, an index past the end). */
export function pathOf(element: AnyElement, ref: PathRef): PathData | null {
  if (!isKnownKind(element.kind)) return null;
  const value = (element as Readonly<Record<string, unknown>>)[ref.field];
  const path = ref.field === "islands" || ref.field === "holes" ? listItem(value, ref.index ?? 0) : value;
  return isPath(path) ? path : null;
}

/** The element with another path there; every other field of the element and of the path object stays. */
export function withPath(element: AnyElement, ref: PathRef, path: PathData): AnyElement {
  const fields = element as Readonly<Record<string, unknown>>;
  if (ref.field === "islands" || ref.field === "holes") {
    const list = [...(fields[ref.field] as readonly PathData[])];
    const index = ref.index ?? 0;
    list[index] = { ...list[index], ...path };
    return { ...fields, [ref.field]: list } as AnyElement;
  }
  return { ...fields, [ref.field]: { ...(fields[ref.field] as PathData), ...path } } as AnyElement;
}

/** Every path of an element of a known kind, its own first, then islands or holes. Empty for a point. */
export function pathRefs(element: AnyElement): PathRef[] {
  if (!isKnownKind(element.kind)) return [];
  const field = geometryField(element.kind);
  const refs: PathRef[] = [];
  if (field !== "at" && pathOf(element, { field }) !== null) refs.push({ field });
  for (const inner of innerOutlineFields(element.kind)) {
    const list = (element as Readonly<Record<string, unknown>>)[inner];
    if (Array.isArray(list)) for (let index = 0; index < list.length; index++) refs.push({ field: inner, index });
  }
  return refs;
}

/** The position of an element that is a point, or null. */
export function pointOf(element: AnyElement): Point | null {
  if (!isKnownKind(element.kind)) return null;
  const fields = element as Readonly<Record<string, unknown>>;
  const shape = fields.shape as { readonly point?: Point } | undefined;
  return (fields.at as Point | undefined) ?? shape?.point ?? null;
}

/** True where the third number of a vertex is a height, not a bulge. */
export function hasHeights(element: AnyElement): boolean {
  return readsHeights(element.kind);
}

/** The vertex at another place; its bulge or height stays. */
export function vertexAt(vertex: Vertex, [x, y]: Point): Vertex {
  return vertex[2] === undefined ? [x, y] : [x, y, vertex[2]];
}

function listItem(value: unknown, index: number): unknown {
  return Array.isArray(value) ? value[index] : undefined;
}

function isPath(value: unknown): value is PathData {
  return typeof value === "object" && value !== null && Array.isArray((value as { vertices?: unknown }).vertices);
}
