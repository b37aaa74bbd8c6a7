/** Draws outlines and lines corner by corner: clicks, typed length and direction, or the crosshair of the keyboard. */
import { distanceBetween } from "../../geometry/points.ts";
import type { Point, Vertex } from "../../geometry/types.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { addElement } from "../edits/add-element.ts";
import { DRAWN_AS, type DrawingTool, draft } from "../edits/templates.ts";
import { parseBearing } from "../entry/parse-bearing.ts";
import { parseLength } from "../entry/parse-length.ts";
import { placed } from "./placing.ts";
import type { Overlay, Sample, Tool, ToolPorts } from "./tool.ts";

/** The bend that an edge gets while A is on: a quarter circle. */
const QUARTER_BEND = Math.tan(Math.PI / 8);

export function outlineTool(ports: ToolPorts, id: DrawingTool): Tool {
  const closes = DRAWN_AS[id] === "outline";
  const least = closes ? 3 : 2;
  let corners: Vertex[] = [];
  let at: Point | null = null;
  let reason = "";
  let guide: readonly [Point, Point] | null = null;
  let bend = 0;
  const units = () => ports.document.getState().shown.display?.units ?? "ft-in";
  const last = (): Point | null => {
    const corner = corners.at(-1);
    return corner ? [corner[0], corner[1]] : null;
  };

  function put(point: Point): void {
    const before = last();
    if (before && distanceBetween(before, point) < 1e-6) return;
    const first = corners[0];
    if (first && corners.length >= least && distanceBetween([first[0], first[1]], point) < 1e-6) {
      bendLast();
      finish(DRAWN_AS[id] !== "open");
      return;
    }
    bendLast();
    corners = [...corners, point];
  }

  /** The edge from the last corner takes the bend that is on. */
  function bendLast(): void {
    const corner = corners.at(-1);
    if (bend !== 0 && corner) corners = [...corners.slice(0, -1), [corner[0], corner[1], bend]];
  }

  function finish(closed: boolean): void {
    const bends = corners.some((corner) => corner.length === 3);
    if (corners.length < (bends && closed ? 2 : closed ? 3 : 2)) {
      ports.view.getState().say(`Place at least ${closed ? "three corners" : "two points"} first.`, "problem");
      return;
    }
    const element = draft(ports.document.getState().history.present, id, {
      path: { vertices: corners, closed },
    });
    const refusal = ports.document.getState().edit(addElement(element));
    if (refusal) {
      ports.view.getState().say(refusal.reason, "problem");
      return;
    }
    corners = [];
    ports.view.getState().select([element.id]);
    ports.view.getState().setTool("select");
    ports.view.getState().setPanel("element");
  }

  function track(sample: Sample): Point {
    const found = placed(ports, sample, last() ?? undefined);
    const first = corners[0];
    const start: Point | null = first ? [first[0], first[1]] : null;
    const closing = start !== null && corners.length >= least && distanceBetween(start, sample.at) <= sample.slack;
    at = closing ? start : found.point;
    reason = closing ? "closes the outline" : found.reason;
    guide = closing ? null : found.guide;
    return at;
  }

  return {
    hint: "",
    down(sample) {
      put(track(sample));
    },
    move(sample) {
      track(sample);
    },
    up() {},
    doubleClick() {
      if (corners.length >= least) finish(closes);
    },
    key(key) {
      if (key === "Enter") {
        if (corners.length >= least) finish(closes);
        else if (at) put(at);
        return true;
      }
      if (key === "Backspace" && corners.length > 0) {
        corners = corners.slice(0, -1);
        return true;
      }
      if (key === "/" && corners.length > 0) {
        bend = bend === 0 ? QUARTER_BEND : bend > 0 ? -QUARTER_BEND : 0;
        return true;
      }
      return false;
    },
    cancel() {
      const had = corners.length > 0;
      corners = [];
      bend = 0;
      return had;
    },
    overlay() {
      const shapes: Overlay[] = [];
      if (guide) shapes.push({ kind: "line", points: guide, closed: false, style: "guide" });
      const points: Vertex[] = at ? [...corners, at] : corners;
      if (points.length > 1) shapes.push({ kind: "line", points: bent(points, bend), closed: false, style: "ghost" });
      for (const corner of corners) {
        shapes.push({ kind: "handle", at: [corner[0], corner[1]], shape: "corner", strong: false });
      }
      const before = last();
      if (at) {
        const length = before ? `${lengthText(distanceBetween(before, at), units())}` : "";
        const text = [length, reason].filter((part) => part !== "").join(" · ");
        shapes.push({ kind: "handle", at, shape: "corner", strong: true });
        if (text !== "") shapes.push({ kind: "label", at, text });
      }
      return shapes;
    },
    fields() {
      const before = last();
      const length = before && at ? distanceBetween(before, at) : 0;
      const angle = before && at ? (Math.atan2(at[1] - before[1], at[0] - before[0]) * 180) / Math.PI : 0;
      if (!before) return [];
      return [
        { name: "length", label: "Length", type: "length", shown: lengthText(length, units()) },
        { name: "bearing", label: "Direction", type: "bearing", shown: `${((angle + 360) % 360).toFixed(1)} deg` },
      ];
    },
    enter(typed) {
      const before = last();
      if (!before) return "Place the first corner on the sheet.";
      const length = parseLength(typed.length ?? "", units());
      if (!length.ok) return length.reason;
      let angle = at ? Math.atan2(at[1] - before[1], at[0] - before[0]) : 0;
      if ((typed.bearing ?? "").trim() !== "") {
        const bearing = parseBearing(typed.bearing ?? "", ports.document.getState().shown.north);
        if (!bearing.ok) return bearing.reason;
        angle = (bearing.degrees * Math.PI) / 180;
      }
      put([before[0] + length.inches * Math.cos(angle), before[1] + length.inches * Math.sin(angle)]);
      return null;
    },
  };
}

/** The points of a line whose edges may be bent, flattened for the eye. */
function bent(vertices: readonly Vertex[], lastBend: number): Point[] {
  const points: Point[] = [];
  vertices.forEach((vertex, i) => {
    const next = vertices[i + 1];
    points.push([vertex[0], vertex[1]]);
    const bulge = i === vertices.length - 2 ? lastBend : (vertex[2] ?? 0);
    if (!next || bulge === 0) return;
    const angle = 4 * Math.atan(bulge);
    const chord: Point = [next[0] - vertex[0], next[1] - vertex[1]];
    const apothem = (1 - bulge * bulge) / (4 * bulge);
    const center: Point = [
      vertex[0] + chord[0] / 2 - chord[1] * apothem,
      vertex[1] + chord[1] / 2 + chord[0] * apothem,
    ];
    const start = Math.atan2(vertex[1] - center[1], vertex[0] - center[0]);
    const radius = distanceBetween(center, [vertex[0], vertex[1]]);
    for (let step = 1; step < 24; step++) {
      const turn = start + (angle * step) / 24;
      points.push([center[0] + radius * Math.cos(turn), center[1] + radius * Math.sin(turn)]);
    }
  });
  return points;
}
