import type { Tool } from "./tool.ts";

/** Moving the sheet is the canvas's own work: this tool only says so. */
export function panTool(): Tool {
  return {
    hint: "Drag to move the sheet; the wheel or two fingers zoom.",
    down() {},
    move() {},
    up() {},
    doubleClick() {},
    key: () => false,
    cancel: () => false,
    overlay: () => [],
    fields: () => [],
    enter: () => null,
  };
}
