/** Draws a rectangle by dragging, by two clicks, or by a first corner and typed sides. */
import type { Point } from "../../geometry/types.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { addElement } from "../edits/add-element.ts";
import { type DrawingTool, draft } from "../edits/templates.ts";
import { parseLength } from "../entry/parse-length.ts";
import { placed } from "./placing.ts";
import type { Overlay, Tool, ToolPorts } from "./tool.ts";

export function rectangleTool(ports: ToolPorts, id: DrawingTool): Tool {
  let first: Point | null = null;
  let at: Point | null = null;
  let reason = "";
  let dragged = false;
  const units = () => ports.document.getState().shown.display?.units ?? "ft-in";

  function finish(other: Point): string | null {
    if (!first) return "Place the first corner on the sheet.";
    const [x0, x1] = [Math.min(first[0], other[0]), Math.max(first[0], other[0])];
    const [y0, y1] = [Math.min(first[1], other[1]), Math.max(first[1], other[1])];
    if (!(x1 > x0) || !(y1 > y0)) return "A rectangle needs two sides longer than zero.";
    const vertices: Point[] = [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ];
    const element = draft(ports.document.getState().history.present, id, { path: { vertices, closed: true } });
    const refusal = ports.document.getState().edit(addElement(element));
    if (refusal) return refusal.reason;
    first = null;
    ports.view.getState().select([element.id]);
    ports.view.getState().setTool("select");
    ports.view.getState().setPanel("element");
    return null;
  }

  function tell(problem: string | null): void {
    if (problem !== null) ports.view.getState().say(problem, "problem");
  }

  return {
    hint: "",
    down(sample) {
      const { point } = placed(ports, sample);
      dragged = false;
      if (first) tell(finish(point));
      else first = point;
    },
    move(sample) {
      const found = placed(ports, sample);
      at = found.point;
      reason = found.reason;
      if (first && (Math.abs(at[0] - first[0]) > sample.slack || Math.abs(at[1] - first[1]) > sample.slack))
        dragged = true;
    },
    up(sample) {
      if (first && dragged && sample.slack > 0 && at) tell(finish(at));
    },
    doubleClick() {},
    key(key) {
      if (key !== "Enter" || !at) return false;
      if (first) tell(finish(at));
      else first = at;
      return true;
    },
    cancel() {
      const had = first !== null;
      first = null;
      return had;
    },
    overlay() {
      const shapes: Overlay[] = [];
      if (first && at) {
        const corners: Point[] = [first, [at[0], first[1]], at, [first[0], at[1]]];
        shapes.push({ kind: "line", points: corners, closed: true, style: "ghost" });
        const text = `${lengthText(Math.abs(at[0] - first[0]), units())} by ${lengthText(Math.abs(at[1] - first[1]), units())}`;
        shapes.push({ kind: "label", at, text });
      } else if (at) {
        shapes.push({ kind: "handle", at, shape: "corner", strong: true });
        if (reason !== "") shapes.push({ kind: "label", at, text: reason });
      }
      return shapes;
    },
    fields() {
      if (!first) return [];
      const shown = (axis: 0 | 1) => lengthText(first && at ? Math.abs(at[axis] - first[axis]) : 0, units());
      return [
        { name: "across", label: "Across", type: "length", shown: shown(0) },
        { name: "up", label: "Up", type: "length", shown: shown(1) },
      ];
    },
    enter(typed) {
      if (!first) return "Place the first corner on the sheet.";
      const across = parseLength(typed.across ?? "", units());
      if (!across.ok) return `Across: ${across.reason}`;
      const up = parseLength(typed.up ?? "", units());
      if (!up.ok) return `Up: ${up.reason}`;
      return finish([first[0] + across.inches, first[1] + up.inches]);
    },
  };
}
