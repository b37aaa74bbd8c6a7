/** One command for each tool. */
import { POOL_SHAPES } from "../pool-shapes/shape-names.ts";
import type { ToolId } from "../view/view-store.ts";
import { ALWAYS, type Command } from "./command.ts";

/** Every tool in the order of a menu: what it is called and its key. */
export const TOOLS: readonly { readonly tool: ToolId; readonly label: string; readonly key: string }[] = [
  { tool: "select", label: "Select and move", key: "S" },
  { tool: "pan", label: "Move the sheet", key: "H" },
  { tool: "pool-rectangle", label: "Pool, rectangle", key: "P" },
  { tool: "pool-outline", label: "Pool, free outline", key: "O" },
  { tool: "pool-shape", label: "Pool by its dimensions", key: "Y" },
  { tool: "pool-curves", label: "Pool, flowing curves", key: "Shift+O" },
  { tool: "inset", label: "Step or ledge", key: "I" },
  { tool: "surface", label: "Deck or other surface", key: "D" },
  { tool: "building", label: "Building", key: "B" },
  { tool: "wall", label: "Wall", key: "W" },
  { tool: "opening", label: "Door or window", key: "Shift+B" },
  { tool: "fence", label: "Fence", key: "F" },
  { tool: "structure", label: "Diving or play structure", key: "Shift+D" },
  { tool: "metal-point", label: "Metal part", key: "M" },
  { tool: "metal-line", label: "Metal, along a line", key: "Shift+M" },
  { tool: "metal-area", label: "Metal, whole outline", key: "Shift+A" },
  { tool: "equipment", label: "Equipment", key: "E" },
  { tool: "underwater-light", label: "Underwater light", key: "L" },
  { tool: "device", label: "Electrical device", key: "R" },
  { tool: "overhead-line", label: "Overhead line", key: "Shift+L" },
  { tool: "underground-run", label: "Underground run", key: "U" },
  { tool: "water-bond", label: "Water contact", key: "Shift+W" },
  { tool: "conductor", label: "Copper, as laid", key: "C" },
  { tool: "tie", label: "Connection, as made", key: "T" },
  { tool: "keep-out", label: "No-copper area", key: "X" },
  { tool: "measure", label: "Measure", key: "Shift+R" },
  { tool: "dimension", label: "Dimension", key: "Shift+E" },
  { tool: "offset", label: "Offset an outline or line", key: "Shift+F" },
  { tool: "split", label: "Cut in two", key: "Shift+C" },
  { tool: "mirror", label: "Mirror over a drawn line", key: "Shift+G" },
];

const tapingCommand: Command = {
  id: "tape-in",
  label: "Tape points in",
  group: "Draw",
  key: "Shift+T",
  available: ALWAYS,
  run: (editor) => editor.openDialog("taping"),
};

/** One command for each shape that is placed by its dimensions. */
const shapeChoices: readonly Command[] = POOL_SHAPES.map(({ id, label }) => ({
  id: `pool-shape-${id}`,
  label: `Pool by its dimensions: ${label.toLowerCase()}`,
  group: "Draw",
  available: ALWAYS,
  run({ view }) {
    const { tool, setShape, setTool } = view.getState();
    setShape(id);
    // A pool whose dimensions are being changed takes the other shape.
    if (tool !== "pool-shape") setTool("pool-shape");
  },
}));

const toolChoices: readonly Command[] = TOOLS.map(({ tool, label, key }) => ({
  id: `tool-${tool}`,
  label,
  group: tool === "select" || tool === "pan" ? "Select" : "Draw",
  key,
  available: ALWAYS,
  run({ canvas, view }) {
    canvas?.cancel();
    view.getState().setTool(tool);
  },
}));

const underlayCommand: Command = {
  id: "underlay",
  label: "Picture underneath",
  group: "Draw",
  key: "Shift+U",
  available: ALWAYS,
  run: (editor) => editor.openDialog("underlay"),
};

export const toolCommands: readonly Command[] = [...toolChoices, ...shapeChoices, tapingCommand, underlayCommand];
