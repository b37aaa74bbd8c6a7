/** Paints what the tool draws over the plan, and the outline of what is selected. */

import { isKnown } from "../../rules/measures/yard.ts";
import { areaSteps, pathSteps } from "../drawing/steps.ts";
import type { Editor } from "../editor.ts";
import { keptShape } from "../hit-test/hit-test.ts";
import type { Overlay } from "../tools/tool.ts";
import { CANVAS_FONT, type Paint, paintItems } from "./painter.ts";
import { toScreen } from "./screen-view.ts";

const DASHES = { ghost: [], chosen: [], box: [4, 3], guide: [2, 4] } as const;

export function paintOverlay(
  paint: Paint,
  overlay: readonly Overlay[],
  selection: readonly string[],
  editor: Editor,
): void {
  const { hovered } = editor.view.getState();
  for (const element of editor.document.getState().shown.elements) {
    const chosen = selection.includes(element.id);
    if ((!chosen && element.id !== hovered) || !isKnown(element)) continue;
    const shape = keptShape(element);
    if (shape.kind === "point") ring(paint, shape.at, chosen ? 13 : 11, chosen ? 2 : 1);
    else {
      const steps = shape.kind === "path" ? pathSteps(shape.path) : areaSteps(shape.area);
      if (chosen) paintItems(paint, [{ kind: "shape", role: "focus", steps }]);
      else paintItems(paint, [{ kind: "shape", role: "witness", steps }]);
    }
  }
  for (const shape of overlay) {
    if (shape.kind === "line") line(paint, shape);
    else if (shape.kind === "handle") handle(paint, shape);
    else label(paint, shape);
  }
}

function plain({ context, pixelRatio }: Paint): void {
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
}

function ring(paint: Paint, at: readonly [number, number], radius: number, weight: number): void {
  const { context, palette, view } = paint;
  plain(paint);
  const [x, y] = toScreen(view, at);
  context.setLineDash([]);
  context.lineWidth = weight;
  context.strokeStyle = palette.texts.measure;
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context.stroke();
}

function line(paint: Paint, shape: Extract<Overlay, { kind: "line" }>): void {
  const { context, palette, view } = paint;
  plain(paint);
  context.setLineDash([...DASHES[shape.style]]);
  context.lineWidth = shape.style === "guide" ? 1 : 2;
  context.strokeStyle = palette.texts.measure;
  context.beginPath();
  for (const point of shape.points) context.lineTo(...(toScreen(view, point) as [number, number]));
  if (shape.closed) context.closePath();
  context.stroke();
  context.setLineDash([]);
}

function handle(paint: Paint, { at, shape, strong }: Extract<Overlay, { kind: "handle" }>): void {
  const { context, palette, view } = paint;
  plain(paint);
  const [x, y] = toScreen(view, at);
  const size = shape === "corner" ? 4.5 : 3.5;
  context.lineWidth = 1.5;
  context.strokeStyle = palette.texts.measure;
  context.fillStyle = strong ? palette.texts.measure : palette.paper;
  context.beginPath();
  if (shape === "corner") context.rect(x - size, y - size, 2 * size, 2 * size);
  else context.arc(x, y, size, 0, 2 * Math.PI);
  context.fill();
  context.stroke();
}

function label(paint: Paint, { at, text }: Extract<Overlay, { kind: "label" }>): void {
  if (text === "") return;
  const { context, palette, view } = paint;
  plain(paint);
  const [x, y] = toScreen(view, at);
  context.font = `500 12px ${CANVAS_FONT}`;
  context.letterSpacing = "0px";
  context.textAlign = "left";
  context.textBaseline = "middle";
  const width = context.measureText(text).width;
  const left = x + 14 + width + 12 > view.width ? x - width - 26 : x + 14;
  context.fillStyle = palette.texts.measure;
  context.beginPath();
  context.roundRect(left, y - 30, width + 12, 20, 3);
  context.fill();
  context.fillStyle = palette.paper;
  context.fillText(text, left + 6, y - 20);
}
