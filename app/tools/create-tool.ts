/** The tool of a name. */
import { DRAWN_AS } from "../edits/templates.ts";
import type { ToolId } from "../view/view-store.ts";
import { panTool } from "./pan-tool.ts";
import { pathTool } from "./path-tool.ts";
import { pointTool } from "./point-tool.ts";
import { rectangleTool } from "./rectangle-tool.ts";
import { selectTool } from "./select-tool.ts";
import type { Desk, Tool } from "./tool.ts";

export function createTool(id: ToolId, desk: Desk): Tool {
  if (id === "select") return selectTool(desk);
  if (id === "pan") return panTool();
  if (id === "pool-rectangle") return rectangleTool(desk, id);
  return DRAWN_AS[id] === "point" ? pointTool(desk, id) : pathTool(desk, id);
}
