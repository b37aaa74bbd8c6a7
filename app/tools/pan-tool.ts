import type { Tool } from "./tool.ts";

/** Moving the sheet is the canvas's own work; this tool leaves everything else alone. */
export function panTool(): Tool {
  return {
    id: "pan",
    pointerDown() {},
    pointerMove() {},
    pointerUp() {},
    abandonPress() {},
    key: () => false,
    cancel: () => false,
    entry: () => null,
    typed: () => null,
    overlay: () => [],
    cursor: () => "grab",
  };
}
