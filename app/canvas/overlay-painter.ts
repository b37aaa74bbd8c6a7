/** Paints what lies over the plan: the grid while drawing, the selection, and what the tool in hand shows. */
import { pointAt, tangentAt } from "../../geometry/edge.ts";
import { pathOfEdges } from "../../geometry/outline.ts";
import type { Edge, Point } from "../../geometry/types.ts";
import { pathSteps } from "../drawing/steps.ts";
import type { AnyElement } from "../edits/edit.ts";
import { keptShape } from "../hit-test/kept-shape.ts";
import type { GridLines } from "../snapping/grid.ts";
import type { OverlayShape } from "../tools/tool.ts";
import { CANVAS_FONT, type Paint } from "./painter.ts";
import { siteBounds, toScreen } from "./screen-view.ts";

/** Lines of the grid across the view. */
export function paintGrid(paint: Paint, { spacing, strong }: GridLines): void {
  const { context, palette, view, pixelRatio } = paint;
  const { minX, minY, maxX, maxY } = siteBounds(view);
  plain(paint);
  context.strokeStyle = palette.texts.ink;
  context.lineWidth = 1;
  context.setLineDash([]);
  for (const isMajor of [false, true]) {
    context.globalAlpha = isMajor ? 0.13 : 0.055;
    context.beginPath();
    const crisp = (at: number) => (Math.round(at * pixelRatio) + 0.5) / pixelRatio;
    for (let i = Math.ceil(minX / spacing); i * spacing <= maxX; i++) {
      if ((i % strong === 0) !== isMajor) continue;
      const x = crisp(toScreen(view, [i * spacing, 0])[0]);
      context.moveTo(x, 0);
      context.lineTo(x, view.height);
    }
    for (let i = Math.ceil(minY / spacing); i * spacing <= maxY; i++) {
      if ((i % strong === 0) !== isMajor) continue;
      const y = crisp(toScreen(view, [0, i * spacing])[1]);
      context.moveTo(0, y);
      context.lineTo(view.width, y);
    }
    context.stroke();
  }
  context.globalAlpha = 1;
}

/** The outline of an element that is selected, or that the pointer or a list is on. */
export function paintOutline(paint: Paint, element: AnyElement, isSelected: boolean): void {
  const shape = keptShape(element);
  if (!shape) return;
  if (shape.kind !== "point") {
    const paths = shape.kind === "path" ? [shape.path] : [shape.area.outer, ...shape.area.holes];
    for (const path of paths) paintEdges(paint, path.edges, isSelected ? "selected" : "hovered", path.closed);
    return;
  }
  const { context, palette, view } = paint;
  plain(paint);
  const [x, y] = toScreen(view, shape.at);
  context.setLineDash([]);
  context.lineWidth = isSelected ? 2.5 : 1.25;
  context.strokeStyle = palette.texts.measure;
  context.beginPath();
  context.arc(x, y, isSelected ? 14 : 13, 0, 2 * Math.PI);
  context.stroke();
}

/** What a tool shows; labels last, over everything. */
export function paintTool(paint: Paint, shapes: readonly OverlayShape[]): void {
  const measures: (() => Box)[] = [];
  const words: ((taken: readonly Box[]) => void)[] = [];
  for (const shape of shapes) {
    switch (shape.kind) {
      case "edges":
        paintEdges(paint, shape.edges, shape.look);
        break;
      case "box":
        paintBox(paint, shape.from, shape.to, shape.isTouching);
        break;
      case "handle":
        paintHandle(paint, shape.at, shape.look);
        break;
      case "cursor":
        paintCursor(paint, shape.at, shape.isSnapped);
        break;
      case "measure":
        measures.push(() => paintMeasure(paint, shape.edge, shape.text));
        break;
      case "words":
        words.push((taken) => paintWords(paint, shape.at, shape.lines, shape.isProblem === true, taken));
        break;
    }
  }
  const taken = measures.map((measure) => measure());
  for (const paintBeside of words) paintBeside(taken);
}

function plain({ context, pixelRatio }: Paint): void {
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
}

const LOOKS = {
  selected: { width: 2.25, dash: [], alpha: 1 },
  hovered: { width: 1.25, dash: [], alpha: 0.8 },
  ghost: { width: 2, dash: [], alpha: 1 },
  closing: { width: 1, dash: [5, 4], alpha: 0.8 },
  guide: { width: 1, dash: [2, 4], alpha: 1 },
  limit: { width: 1, dash: [1, 3], alpha: 1 },
} as const;

function paintEdges(paint: Paint, edges: readonly Edge[], look: keyof typeof LOOKS, isClosed = false): void {
  if (edges.length === 0) return;
  const { context, palette, view } = paint;
  const { width, dash, alpha } = LOOKS[look];
  plain(paint);
  context.beginPath();
  for (const step of pathSteps(pathOfEdges(edges, isClosed))) {
    if (step.step === "close") {
      context.closePath();
      continue;
    }
    const [x, y] = toScreen(view, step.to);
    if (step.step === "move") context.moveTo(x, y);
    else if (step.step === "line") context.lineTo(x, y);
    else {
      const [cx, cy] = toScreen(view, step.center);
      // The screen's y runs down: angles turn the other way.
      const end = step.startAngle + step.sweep;
      context.arc(cx, cy, step.radius * view.camera.scale, -step.startAngle, -end, step.sweep > 0);
    }
  }
  context.setLineDash([...dash]);
  context.lineWidth = width;
  context.lineJoin = "round";
  context.lineCap = "round";
  context.globalAlpha = alpha;
  context.strokeStyle = palette.texts.measure;
  context.stroke();
  context.setLineDash([]);
  context.globalAlpha = 1;
}

function paintBox(paint: Paint, from: Point, to: Point, isTouching: boolean): void {
  const { context, palette, view } = paint;
  plain(paint);
  const [x0, y0] = toScreen(view, from);
  const [x1, y1] = toScreen(view, to);
  context.beginPath();
  context.rect(x0, y0, x1 - x0, y1 - y0);
  context.globalAlpha = 0.1;
  context.fillStyle = palette.texts.measure;
  context.fill();
  context.globalAlpha = 1;
  context.setLineDash(isTouching ? [5, 4] : []);
  context.lineWidth = 1.25;
  context.strokeStyle = palette.texts.measure;
  context.stroke();
  context.setLineDash([]);
  paintWords(paint, to, [isTouching ? "everything the box touches" : "everything inside the box"], false);
}

function paintHandle(paint: Paint, at: Point, look: "corner" | "middle" | "placed" | "active"): void {
  const { context, palette, view } = paint;
  plain(paint);
  const [x, y] = toScreen(view, at);
  context.lineWidth = 1.5;
  context.strokeStyle = palette.texts.measure;
  context.fillStyle = look === "active" || look === "placed" ? palette.texts.measure : palette.paper;
  const size = look === "placed" ? 2.5 : look === "active" ? 5 : look === "middle" ? 3.5 : 4;
  context.beginPath();
  if (look === "middle" || look === "placed") context.arc(x, y, size, 0, 2 * Math.PI);
  else context.rect(x - size, y - size, 2 * size, 2 * size);
  context.fill();
  context.stroke();
}

function paintCursor(paint: Paint, at: Point, isSnapped: boolean): void {
  const { context, palette, view } = paint;
  plain(paint);
  const [x, y] = toScreen(view, at);
  context.lineWidth = 1.25;
  context.strokeStyle = palette.texts.measure;
  context.beginPath();
  for (const [dx, dy] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    context.moveTo(x + dx * 4, y + dy * 4);
    context.lineTo(x + dx * 12, y + dy * 12);
  }
  context.stroke();
  if (!isSnapped) return;
  context.beginPath();
  context.arc(x, y, 5, 0, 2 * Math.PI);
  context.stroke();
}

const LABEL_PIXELS = 12;
const LINE_PIXELS = 18;
/** How far words stand from the place that they are about. */
const BESIDE = 16;

function paintMeasure(paint: Paint, edge: Edge, text: string): Box {
  const { view } = paint;
  const [x, y] = toScreen(view, pointAt(edge, 0.5));
  const [tx, ty] = tangentAt(edge, 0.5);
  const width = labelWidth(paint, text);
  // Beside the side, on its left as it is walked; on the screen y runs down.
  const [nx, ny] = [-ty, -tx];
  const away = 6 + Math.abs(nx) * (width / 2) + Math.abs(ny) * (LINE_PIXELS / 2);
  const [left, top] = [x + nx * away - width / 2, y + ny * away - LINE_PIXELS / 2];
  paintLabel(paint, [text], [left, top], width, "measure");
  return { left, top, width, height: LINE_PIXELS };
}

/** A label on the screen, pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Where words stand beside a place: above on the right, turned over where the view ends; elsewhere about the place where
 * that would cover what is written already. Returns left and top, pixels.
 */
export function besidePlace(
  [x, y]: Point,
  { width, height }: Pick<Box, "width" | "height">,
  view: Pick<Box, "width">,
  taken: readonly Box[],
): Point {
  const toLeft = x - BESIDE - width;
  const above = y - BESIDE - height;
  const left = x + BESIDE + width > view.width ? toLeft : x + BESIDE;
  const top = above < 0 ? y + BESIDE : above;
  const otherLeft = left === toLeft ? x + BESIDE : toLeft;
  const otherTop = top === above ? y + BESIDE : above;
  const places: readonly Point[] = [
    [left, top],
    [left, otherTop],
    [otherLeft, top],
    [otherLeft, otherTop],
  ];
  const isFree = ([l, t]: Point) =>
    l >= 0 &&
    t >= 0 &&
    l + width <= view.width &&
    taken.every(
      (box) => l >= box.left + box.width || box.left >= l + width || t >= box.top + box.height || box.top >= t + height,
    );
  const [first] = places as [Point];
  const [at, down] = places.find(isFree) ?? first;
  return [Math.max(4, at), down];
}

function paintWords(
  paint: Paint,
  at: Point,
  lines: readonly string[],
  isProblem: boolean,
  taken: readonly Box[] = [],
): void {
  if (lines.length === 0) return;
  const { view } = paint;
  const width = Math.max(...lines.map((line) => labelWidth(paint, line)));
  const size = { width, height: lines.length * LINE_PIXELS };
  paintLabel(paint, lines, besidePlace(toScreen(view, at), size, view, taken), width, isProblem ? "problem" : "words");
}

function labelWidth({ context }: Paint, text: string): number {
  context.font = `500 ${LABEL_PIXELS}px ${CANVAS_FONT}`;
  context.letterSpacing = "0px";
  return context.measureText(text).width + 12;
}

function paintLabel(
  paint: Paint,
  lines: readonly string[],
  [left, top]: Point,
  width: number,
  tone: "measure" | "words" | "problem",
): void {
  const { context, palette } = paint;
  plain(paint);
  context.fillStyle =
    tone === "measure" ? palette.texts.measure : tone === "problem" ? palette.texts.copper : palette.texts.ink;
  context.beginPath();
  context.roundRect(left, top, width, lines.length * LINE_PIXELS, 3);
  context.fill();
  context.font = `500 ${LABEL_PIXELS}px ${CANVAS_FONT}`;
  context.letterSpacing = "0px";
  context.textAlign = "left";
  context.textBaseline = "middle";
  context.fillStyle = palette.paper;
  lines.forEach((line, i) => {
    context.fillText(line, left + 6, top + (i + 0.5) * LINE_PIXELS + 0.5);
  });
}
