/** The tool of a name. */
import { DRAWN_AS } from "../edits/templates.ts";
import type { ToolId } from "../view/view-store.ts";
import { deferredTool } from "./deferred-tool.ts";
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
  if (id === "pool-shape") {
    return deferredTool(id, desk, async () => (await import("../pool-shapes/shape-tool.ts")).shapeTool);
  }
  if (id === "pool-curves") {
    return deferredTool(id, desk, async () => (await import("../pool-shapes/curves-tool.ts")).curvesTool);
  }
  return DRAWN_AS[id] === "point" ? pointTool(desk, id) : pathTool(desk, id);
}
