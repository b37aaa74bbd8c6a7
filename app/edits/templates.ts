/**
 * What a newly drawn element starts with: its geometry, its type field, and nothing that is not known yet. Where a type
 * field has no word for "unknown", the start is what people draw most, or, where that could hide a danger (overhead
 * lines, buried cable, forming shells), the option that asks for most.
 */

import { pointToPath } from "../../geometry/distance.ts";
import { areaFrom, contains, pathFrom } from "../../geometry/outline.ts";
import type { PathData, Point } from "../../geometry/types.ts";
import type { ElementOf, Kind, KnownElement, PoolElement } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";
import type { ToolId, WorkingTool } from "../view/view-store.ts";
import { poolAround } from "./inset-place.ts";
import { newId } from "./new-id.ts";

/** A tool that draws something. */
export type DrawingTool = Exclude<ToolId, "select" | "pan" | WorkingTool>;

/** What was drawn: a path or a point. */
export type Drawn = { readonly path: PathData } | { readonly point: Point };

/** How each tool's drawing is made: a point, an open line, a line that may be closed, or an outline. */
export const DRAWN_AS: Readonly<Record<DrawingTool, "point" | "open" | "line" | "outline">> = {
  "pool-rectangle": "outline",
  "pool-outline": "outline",
  "pool-shape": "outline",
  "pool-curves": "outline",
  surface: "outline",
  wall: "line",
  building: "outline",
  opening: "open",
  fence: "line",
  structure: "outline",
  "metal-point": "point",
  "metal-line": "line",
  "metal-area": "outline",
  equipment: "point",
  "underwater-light": "point",
  device: "point",
  "overhead-line": "open",
  "underground-run": "open",
  "water-bond": "point",
  inset: "outline",
  "keep-out": "outline",
  tie: "point",
  conductor: "line",
};

const POOL_TOOLS = ["pool-rectangle", "pool-outline", "pool-shape", "pool-curves"] as const;

/** Whether a tool draws a pool. */
export function drawsPool(tool: ToolId): tool is (typeof POOL_TOOLS)[number] {
  return (POOL_TOOLS as readonly ToolId[]).includes(tool);
}

/** The kind of element that a tool draws. */
export function kindOf(tool: DrawingTool): Kind {
  if (drawsPool(tool)) return "pool";
  if (tool === "metal-point" || tool === "metal-line" || tool === "metal-area") return "metal";
  return tool;
}

/** A wall as it is usually built: one block, inches. Drawn at once, so it is seen and changed. Common practice, no source. */
const STARTING_THICKNESS = 8;

/** The fields beside id, kind and geometry that an element starts with. */
const STARTING_FIELDS: { readonly [K in Kind]: Partial<ElementOf<K>> } = {
  pool: { body: "pool", shell: "unknown" },
  inset: {},
  surface: { material: "concrete" },
  building: {},
  wall: { thickness: STARTING_THICKNESS },
  fence: {},
  opening: { opening: "hinged-door" },
  structure: { structure: "diving-board" },
  metal: {},
  equipment: { unit: "pump" },
  "underwater-light": { formingShell: "metal" },
  device: { device: "receptacle" },
  "overhead-line": { class: "to-50kv" },
  "underground-run": { method: "direct-burial" },
  "water-bond": {},
  conductor: { role: "ring" },
  tie: { joins: [] },
  "keep-out": {},
};

/**
 * A new element for `addElement`, with a free id. `fields` come over the starting ones (a chosen material, the ends of
 * a tie). A light, step or water contact belongs to the pool that it lies in or is nearest to. Throws a RangeError when
 * the tool draws a point and was given a path, or the other way round.
 */
export function draft(
  site: Site,
  tool: DrawingTool,
  drawn: Drawn,
  fields: Readonly<Record<string, unknown>> = {},
): KnownElement {
  const kind = kindOf(tool);
  const as = DRAWN_AS[tool];
  const start: Record<string, unknown> = { id: newId(site, kind), kind, ...geometryOf(tool, kind, as, drawn) };
  Object.assign(start, STARTING_FIELDS[kind]);
  if (kind === "inset" || kind === "underwater-light" || kind === "water-bond") {
    const around = kind === "inset" && "path" in drawn ? poolAround(site, drawn.path) : null;
    const pool = around ?? poolAt(site, "point" in drawn ? drawn.point : firstPoint(drawn.path));
    if (pool !== null) start.pool = pool;
  }
  return Object.assign(start, fields) as unknown as KnownElement;
}

function geometryOf(tool: DrawingTool, kind: Kind, as: string, drawn: Drawn): Record<string, unknown> {
  if ("point" in drawn !== (as === "point")) {
    throw new RangeError(`The tool "${tool}" draws ${as === "point" ? "a point" : "a path"}.`);
  }
  if ("point" in drawn) return kind === "metal" ? { shape: { point: drawn.point } } : { at: drawn.point };
  const closed = as === "outline" ? true : as === "open" ? false : drawn.path.closed;
  const path = { vertices: drawn.path.vertices, closed };
  if (kind !== "metal") return as === "outline" ? { outline: path } : { path };
  return { shape: tool === "metal-line" && closed ? { ...path, line: true } : path };
}

/** The pool that holds the point, else the nearest; null without one. */
export function poolAt(site: Site, at: Point): string | null {
  let nearest: { id: string; distance: number } | null = null;
  for (const element of site.elements) {
    if (element.kind !== "pool") continue;
    const { id, outline } = element as PoolElement;
    const inside = contains(areaFrom(outline), at);
    const distance = inside ? 0 : pointToPath(at, pathFrom(outline)).length;
    if (nearest === null || distance < nearest.distance) nearest = { id, distance };
  }
  return nearest?.id ?? null;
}

function firstPoint(path: PathData): Point {
  const first = path.vertices[0];
  if (!first) throw new RangeError("A drawn path has no points.");
  return [first[0], first[1]];
}
