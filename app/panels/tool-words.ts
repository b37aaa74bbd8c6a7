/** The tools as the bar shows them: short names, groups, and one sentence on what to do with each. */
import { TOOLS } from "../commands/tool-commands.ts";
import type { ToolId } from "../view/view-store.ts";

/** The groups of the bar; what is used less stands in its menu. */
export const TOOL_GROUPS: readonly (readonly ToolId[])[] = [
  ["select", "pan"],
  ["pool-rectangle", "pool-outline", "surface", "building", "wall", "fence"],
  ["metal-point", "equipment", "underwater-light", "device"],
  ["conductor", "tie"],
];

const SHORT: Partial<Readonly<Record<ToolId, string>>> = {
  select: "Select",
  pan: "Move",
  "pool-rectangle": "Pool",
  "pool-outline": "Free pool",
  surface: "Deck",
  building: "Building",
  wall: "Wall",
  fence: "Fence",
  "metal-point": "Metal",
  equipment: "Equipment",
  "underwater-light": "Light",
  device: "Device",
  conductor: "Copper",
  tie: "Tie",
  measure: "Measure",
  dimension: "Dimension",
};

/** The tools in the menu beside the bar, in the order of the commands. */
export const FURTHER_TOOLS: readonly ToolId[] = TOOLS.map(({ tool }) => tool).filter(
  (tool) => !TOOL_GROUPS.some((group) => group.includes(tool)),
);

/** A word or two for a button. */
export function shortLabel(tool: ToolId): string {
  return SHORT[tool] ?? labelOf(tool);
}

export function labelOf(tool: ToolId): string {
  return TOOLS.find((entry) => entry.tool === tool)?.label ?? tool;
}

const CLOSE =
  "Click each corner, or drag a rectangle; pull as you press to bend a side. Enter or a click on the first corner closes it; Backspace takes a corner back.";
const LINE =
  "Click each point; pull as you press to bend. Enter or a double click ends the line; Backspace takes a point back.";
const POINT = "Click where it stands.";

/** What to do with each tool, one sentence or two. */
export const TOOL_HINTS: Readonly<Record<ToolId, string>> = {
  select:
    "Click to select, drag to move; drag a corner to reshape. Shift adds to the selection; with Ctrl a box begins anywhere.",
  pan: "Drag the sheet. The wheel zooms.",
  "pool-rectangle": "Drag from corner to corner, or click both, or type how far across and up.",
  "pool-outline": CLOSE,
  "pool-shape":
    "Type its dimensions, then click where it lies; Q turns it, V mirrors it, N holds it at another corner.",
  "pool-curves":
    "Click along the wall: each curve goes on smoothly from the last. Enter or a click on the first point closes it; Backspace takes a point back.",
  inset: `${CLOSE} It lies inside a pool.`,
  surface: CLOSE,
  wall: LINE,
  building: CLOSE,
  opening: "Click the two ends of the opening.",
  fence: LINE,
  structure: CLOSE,
  "metal-point": POINT,
  "metal-line": LINE,
  "metal-area": CLOSE,
  equipment: POINT,
  "underwater-light": "Click the pool's wall where the light sits.",
  device: POINT,
  "overhead-line": `${LINE} Its clearance is a question until its heights are typed under Facts.`,
  "underground-run": LINE,
  "water-bond": "Click where the fitting touches the water.",
  conductor: LINE,
  tie: "Click where the connection was made.",
  "keep-out": CLOSE,
  measure: "Click or pull from one place to another: length and direction, nothing is kept.",
  dimension:
    "Click both ends, then where its line runs. An end on a corner, an edge or a part stays on it; Shift keeps the line straight from end to end.",
  offset: "Point out on which side and how far, and click; or type the distance.",
  mirror:
    "Click what is mirrored, unless it is selected; then two places of the line, or pull along it; K keeps the original.",
  split: "Click a line where it is cut; click an outline at both ends of the cut.",
};

/** What is said instead while everything that is picked is added to the selection. */
export const ADDING_HINT = "Pick what to add or to let go; drag a box round several.";

/** What is said instead while a pool that stands already is given other dimensions. */
export const RESHAPING_HINT =
  "Type what is different, or take another shape; then Change the pool. Select leaves it as it was.";

/** What is said otherwise where a finger points: taps for clicks. */
const BY_FINGER: readonly (readonly [string, string])[] = [
  ["Enter or a click on the first corner closes it", "A tap on the first corner closes it"],
  ["Enter or a double click ends the line", "Two quick taps end the line"],
  ["The wheel zooms.", "Two fingers zoom."],
  ["Click to select, drag to move", "Tap to select, drag to move; two fingers move the sheet"],
];
/** Names of keys; a letter that stands alone is one, save those that are words. */
const NEEDS_KEYS = /\b(Enter|Backspace|Shift|Alt|Ctrl|Tab|arrow|wheel|[B-HJ-Z])\b/;

/** What to do with a tool by finger or stylus: no keys, and taps for clicks. */
export function touchHint(tool: ToolId): string {
  const words = BY_FINGER.reduce((text, [from, to]) => text.replace(from, to), TOOL_HINTS[tool]);
  const parts = words.match(/[^.;]+[.;]?/g) ?? [];
  return parts
    .filter((part) => !NEEDS_KEYS.test(part))
    .join("")
    .trim()
    .replace(/;$/, ".")
    .replace(/\bClick\b/g, "Tap")
    .replace(/\bclick\b/g, "tap");
}
