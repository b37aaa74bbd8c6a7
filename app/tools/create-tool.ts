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
  if (id === "measure") {
    return deferredTool(id, desk, async () => (await import("./measure-tool.ts")).measureTool);
  }
  if (id === "dimension") {
    return deferredTool(id, desk, async () => (await import("./dimension-tool.ts")).dimensionTool);
  }
  if (id === "split") return deferredTool(id, desk, async () => (await import("./split-tool.ts")).splitTool);
  if (id === "offset") return deferredTool(id, desk, async () => (await import("./offset-tool.ts")).offsetTool);
  if (id === "mirror") return deferredTool(id, desk, async () => (await import("./mirror-tool.ts")).mirrorTool);
  return DRAWN_AS[id] === "point" ? pointTool(desk, id) : pathTool(desk, id);
}
