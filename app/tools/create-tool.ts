/** The tool of a name. */
import { DRAWN_AS } from "../edits/templates.ts";
import type { ToolId } from "../view/view-store.ts";
import { outlineTool } from "./outline-tool.ts";
import { panTool } from "./pan-tool.ts";
import { pointTool } from "./point-tool.ts";
import { rectangleTool } from "./rectangle-tool.ts";
import { selectTool } from "./select-tool.ts";
import type { Tool, ToolPorts } from "./tool.ts";

export function createTool(id: ToolId, ports: ToolPorts): Tool {
  if (id === "select") return selectTool(ports);
  if (id === "pan") return panTool();
  if (id === "pool-rectangle") return rectangleTool(ports, id);
  return DRAWN_AS[id] === "point" ? pointTool(ports, id) : outlineTool(ports, id);
}
