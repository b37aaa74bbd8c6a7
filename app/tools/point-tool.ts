/** Places one element at a point. */
import type { Point } from "../../geometry/types.ts";
import { addElement } from "../edits/add-element.ts";
import { type DrawingTool, draft } from "../edits/templates.ts";
import { placed } from "./placing.ts";
import type { Overlay, Tool, ToolPorts } from "./tool.ts";

export function pointTool(ports: ToolPorts, id: DrawingTool): Tool {
  let at: Point | null = null;
  let reason = "";

  function place(point: Point): void {
    const element = draft(ports.document.getState().history.present, id, { point });
    const refusal = ports.document.getState().edit(addElement(element));
    if (refusal) {
      ports.view.getState().say(refusal.reason, "problem");
      return;
    }
    ports.view.getState().select([element.id]);
    ports.view.getState().setTool("select");
    ports.view.getState().setPanel("element");
  }

  return {
    hint: "",
    down(sample) {
      place(placed(ports, sample).point);
    },
    move(sample) {
      const found = placed(ports, sample);
      at = found.point;
      reason = found.reason;
    },
    up() {},
    doubleClick() {},
    key(key) {
      if (key !== "Enter" || !at) return false;
      place(at);
      return true;
    },
    cancel: () => false,
    overlay() {
      if (!at) return [];
      const shapes: Overlay[] = [{ kind: "handle", at, shape: "corner", strong: true }];
      if (reason !== "") shapes.push({ kind: "label", at, text: reason });
      return shapes;
    },
    fields: () => [],
    enter: () => null,
  };
}
