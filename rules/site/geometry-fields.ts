/** Which field of a kind holds its geometry, read off the schemas. */
import { elementSchemas, type Kind } from "./elements.ts";

export type GeometryField = "outline" | "path" | "shape" | "at";

const GEOMETRY_FIELDS: readonly GeometryField[] = ["outline", "path", "shape", "at"];

/** The one field that holds the geometry of a kind. */
export function geometryField(kind: Kind): GeometryField {
  const shape = elementSchemas[kind].shape;
  for (const field of GEOMETRY_FIELDS) if (field in shape) return field;
  throw new Error(`The schema of "${kind}" has no geometry.`);
}

/** The fields of a kind that hold lists of closed outlines inside its own outline: islands, holes. */
export function innerOutlineFields(kind: Kind): ("islands" | "holes")[] {
  const shape = elementSchemas[kind].shape;
  return (["islands", "holes"] as const).filter((field) => field in shape);
}

/** True for a kind whose `vertices` read the third number as a height instead of a bulge. */
export function readsHeights(kind: string): boolean {
  return kind === "overhead-line";
}
