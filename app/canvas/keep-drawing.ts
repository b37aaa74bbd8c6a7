/** What is being drawn corner by corner, handed to the files to be kept, and taken up again where the page went meanwhile. */
import { DRAWN_AS, type DrawingTool } from "../edits/templates.ts";
import type { KeptDrawing } from "../files/kept-drawing.ts";
import type { ToolHost } from "../tools/tool-host.ts";
import type { ViewStore } from "../view/view-store.ts";

/** Hands over what the tool has begun after each change of it. Returns what ends that. */
export function keepDrawings(host: ToolHost, keep: (drawing: KeptDrawing | null) => void): () => void {
  return host.state.subscribe(() => {
    const begun = host.tool.begun?.() ?? null;
    keep(begun === null ? null : { tool: host.tool.id, begun });
  });
}

/** Goes on with a drawing as it was kept; false when it is none that this version can take up. */
export function goOnWith(drawing: KeptDrawing, host: ToolHost, view: ViewStore): boolean {
  const { tool, begun } = drawing;
  if (!Object.hasOwn(DRAWN_AS, tool) || !isSound(begun)) return false;
  view.getState().setTool(tool as DrawingTool);
  if (!host.tool.takeUp) return false;
  const [x = 0, y = 0] = placesOf(begun).at(-1) ?? [];
  host.goOn(begun, [x, y]);
  return true;
}

/** Corners of a line or outline, or points that curves run through; whatever else the tool had noted is plain and finite. */
function isSound(begun: unknown): boolean {
  if (!isPlain(begun, 0)) return false;
  const { drawn, earlier } = begun as Readonly<Record<string, unknown>>;
  if (drawn === undefined) return arePlaces(partOf(begun, "corners"));
  return Array.isArray(earlier) && [drawn, ...earlier].every((one) => arePlaces(partOf(one, "points")));
}

/** The places of a sound drawing, in their order. */
function placesOf(begun: unknown): readonly (readonly number[])[] {
  return (partOf(begun, "corners") ?? partOf(partOf(begun, "drawn"), "points")) as readonly (readonly number[])[];
}

function partOf(value: unknown, name: string): unknown {
  return typeof value === "object" && value !== null ? (value as Readonly<Record<string, unknown>>)[name] : undefined;
}

function arePlaces(value: unknown): boolean {
  const isPlace = (place: unknown) =>
    Array.isArray(place) && (place.length === 2 || place.length === 3) && place.every(Number.isFinite);
  return Array.isArray(value) && value.every(isPlace);
}

/** Deeper than anything that a tool notes. */
const DEEPEST = 8;

function isPlain(value: unknown, depth: number): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (typeof value !== "object" || value === null) return typeof value !== "undefined";
  return depth < DEEPEST && Object.values(value).every((inner) => isPlain(inner, depth + 1));
}
