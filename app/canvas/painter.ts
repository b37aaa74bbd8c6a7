/**
 * Paints layers of a scene on a 2D canvas: the same items, roles, symbols and hatches as the file and the printed page.
 *
 * Outlines are kept as paths in site inches and drawn through the camera; weights, symbols, type and hatches keep their
 * paper size. A hatch is anchored to the plan, so that it does not swim while the view moves.
 */
import { boundsOverlap, grownBounds } from "../../geometry/points.ts";
import type { Bounds, Point } from "../../geometry/types.ts";
import { HATCHES, type HatchName } from "../drawing/hatches.ts";
import { MARK_POINTS, markDrawing } from "../drawing/mark-shapes.ts";
import type { LineStyle, Palette } from "../drawing/palette.ts";
import {
  type Item,
  LETTER_SPACING,
  type MarkItem,
  type ShapeItem,
  type SymbolItem,
  TEXT_POINTS,
  type TextItem,
} from "../drawing/scene.ts";
import { type Part, SYMBOLS } from "../drawing/symbols.ts";
import { type AnyCanvas, type Context2D, contextOf, newCanvas } from "./new-canvas.ts";
import { PIXELS_PER_POINT, type ScreenView, siteBounds, toScreen } from "./screen-view.ts";

export const CANVAS_FONT = '"IBM Plex Sans", "DejaVu Sans", sans-serif';

/** How far beyond the view the middle of a symbol, or an end of a line of type, can lie and still be seen, pixels. */
const OUT_OF_VIEW = 600;

const paths = new WeakMap<ShapeItem, Path2D>();
const boxes = new WeakMap<ShapeItem, Bounds>();
const tiles = new Map<string, AnyCanvas>();

/** What a painter needs: where to, through which camera, in which colors, at how many device pixels to a CSS pixel. */
export interface Paint {
  readonly context: Context2D;
  readonly view: ScreenView;
  readonly palette: Palette;
  readonly pixelRatio: number;
}

/** Paints items in their order; the leaders of marks first, so that none runs over a number. */
export function paintItems(paint: Paint, items: readonly Item[]): void {
  const view = grownBounds(siteBounds(paint.view), OUT_OF_VIEW / paint.view.camera.scale);
  for (const item of items) if (item.kind === "mark") paintLeader(paint, item);
  for (const item of items) {
    if (isOutside(item, view)) continue;
    switch (item.kind) {
      case "shape":
        paintShape(paint, item);
        break;
      case "symbol":
        paintSymbol(paint, item);
        break;
      case "text":
        paintText(paint, item);
        break;
      case "mark":
        paintMark(paint, item);
        break;
    }
  }
}

function isOutside(item: Item, view: Bounds): boolean {
  if (item.kind === "shape") return !boundsOverlap(boxOf(item), view);
  const [x, y] = item.kind === "symbol" ? item.at : (item.beside?.of ?? item.at);
  return x < view.minX || x > view.maxX || y < view.minY || y > view.maxY;
}

/** A box that holds the shape: of an arc, the whole circle. */
function boxOf(item: ShapeItem): Bounds {
  const known = boxes.get(item);
  if (known) return known;
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  const hold = (x: number, y: number, reach: number) => {
    box.minX = Math.min(box.minX, x - reach);
    box.minY = Math.min(box.minY, y - reach);
    box.maxX = Math.max(box.maxX, x + reach);
    box.maxY = Math.max(box.maxY, y + reach);
  };
  for (const step of item.steps) {
    if (step.step === "close") continue;
    hold(step.to[0], step.to[1], 0);
    if (step.step === "arc") hold(step.center[0], step.center[1], step.radius);
  }
  boxes.set(item, box);
  return box;
}

function pathOf(item: ShapeItem): Path2D {
  const known = paths.get(item);
  if (known) return known;
  const path = new Path2D();
  for (const step of item.steps) {
    if (step.step === "close") path.closePath();
    else if (step.step === "move") path.moveTo(step.to[0], step.to[1]);
    else if (step.step === "line") path.lineTo(step.to[0], step.to[1]);
    else {
      const { center, radius, startAngle, sweep } = step;
      path.arc(center[0], center[1], radius, startAngle, startAngle + sweep, sweep < 0);
    }
  }
  paths.set(item, path);
  return path;
}

/** Sets the canvas to site inches. */
function throughCamera({ context, view, pixelRatio }: Paint): void {
  const { camera, width, height } = view;
  const k = camera.scale * pixelRatio;
  context.setTransform(
    k,
    0,
    0,
    -k,
    (width / 2 - camera.x * camera.scale) * pixelRatio,
    (height / 2 + camera.y * camera.scale) * pixelRatio,
  );
}

/** Sets the canvas to CSS pixels about a place, in points of paper, y up. */
function aboutPlace({ context, pixelRatio }: Paint, [x, y]: Point, turn: number): void {
  const k = PIXELS_PER_POINT * pixelRatio;
  const angle = (-turn * Math.PI) / 180;
  const cos = Math.cos(angle) * k;
  const sin = Math.sin(angle) * k;
  context.setTransform(cos, sin, sin, -cos, x * pixelRatio, y * pixelRatio);
}

function paintShape(paint: Paint, item: ShapeItem): void {
  if (item.steps.length === 0) return;
  const { context, palette, view } = paint;
  const style = palette.roles[item.role];
  const path = pathOf(item);
  throughCamera(paint);
  context.globalAlpha = style.opacity ?? 1;
  if (style.fill !== undefined) {
    context.fillStyle = style.fill;
    context.fill(path, "evenodd");
  }
  if (item.hatch) {
    const pattern = hatchPattern(paint, item.hatch);
    if (pattern) {
      context.fillStyle = pattern;
      context.fill(path, "evenodd");
    }
  }
  if (style.stroke !== undefined) {
    strokeWith(context, style, PIXELS_PER_POINT / view.camera.scale);
    context.stroke(path);
  }
  context.globalAlpha = 1;
}

/** `unit`: what one point of paper is in the canvas's present units. */
function strokeWith(context: Context2D, style: LineStyle, unit: number): void {
  context.strokeStyle = style.stroke ?? "transparent";
  context.lineWidth = (style.weight ?? 1) * unit;
  context.lineJoin = "round";
  context.lineCap = style.cap ?? "butt";
  context.setLineDash(style.dash ? style.dash.map((length) => length * unit) : []);
}

function hatchPattern({ context, view, palette, pixelRatio }: Paint, name: HatchName): CanvasPattern | null {
  const pattern = context.createPattern(hatchTile(name, palette, pixelRatio), "repeat");
  if (!pattern) return null;
  const { turn } = HATCHES[name];
  const { camera, width, height } = view;
  const k = camera.scale * pixelRatio;
  // Device pixels of the plan's origin, then back through the camera: the tile keeps its paper size.
  const originX = (width / 2 - camera.x * camera.scale) * pixelRatio;
  const originY = (height / 2 + camera.y * camera.scale) * pixelRatio;
  const back = new DOMMatrix([k, 0, 0, -k, originX, originY]).inverse();
  const matrix = back
    .translate(originX, originY)
    .rotate(turn)
    .scale(1 / TILE_DETAIL);
  pattern.setTransform(matrix);
  return pattern;
}

/** Pixels of a tile to a device pixel of the screen, so that turned hatches stay crisp. */
const TILE_DETAIL = 2;

function hatchTile(name: HatchName, palette: Palette, pixelRatio: number): AnyCanvas {
  const key = `${palette.name} ${name} ${pixelRatio}`;
  const known = tiles.get(key);
  if (known) return known;
  const { width, height, weight, lines, dots, rings } = HATCHES[name];
  const k = PIXELS_PER_POINT * pixelRatio * TILE_DETAIL;
  const tile = newCanvas(Math.max(1, Math.round(width * k)), Math.max(1, Math.round(height * k)));
  const context = contextOf(tile);
  if (context) {
    context.scale(tile.width / width, tile.height / height);
    context.strokeStyle = palette.hatches[name];
    context.fillStyle = palette.hatches[name];
    context.lineWidth = weight;
    for (const line of lines) {
      context.beginPath();
      for (let i = 0; i + 1 < line.length; i += 2) context.lineTo(line[i] ?? 0, line[i + 1] ?? 0);
      context.stroke();
    }
    for (const [x, y, r] of [...dots, ...rings]) {
      context.beginPath();
      context.arc(x, y, r, 0, 2 * Math.PI);
      if (dots.some((dot) => dot[0] === x && dot[1] === y)) context.fill();
      else context.stroke();
    }
  }
  tiles.set(key, tile);
  return tile;
}

function paintPart(context: Context2D, part: Part, style: LineStyle): void {
  context.beginPath();
  if ("circle" in part) {
    const [x, y, r] = part.circle;
    context.arc(x, y, r, 0, 2 * Math.PI);
  } else {
    for (let i = 0; i + 1 < part.line.length; i += 2) context.lineTo(part.line[i] ?? 0, part.line[i + 1] ?? 0);
    if (part.closed) context.closePath();
  }
  if (part.paint === "solid") {
    context.fillStyle = style.stroke ?? style.fill ?? "transparent";
    context.fill();
    return;
  }
  if (part.paint === "area" && style.fill !== undefined) {
    context.fillStyle = style.fill;
    context.fill();
  }
  if (style.stroke === undefined) return;
  // Symbols are drawn in whole lines whatever their role's pattern.
  const { dash: _dash, ...whole } = style;
  strokeWith(context, whole, 1);
  context.stroke();
}

function paintSymbol(paint: Paint, item: SymbolItem): void {
  const { context, palette, view } = paint;
  const style = palette.roles[item.role];
  aboutPlace(paint, toScreen(view, item.at), item.turn);
  for (const part of SYMBOLS[item.symbol].parts) paintPart(context, part, style);
  if (item.letters) writeCentered(paint, item.letters, toScreen(view, item.at), style.stroke ?? palette.texts.ink);
}

function writeCentered({ context, pixelRatio }: Paint, text: string, [x, y]: Point, color: string): void {
  const size = MARK_POINTS * PIXELS_PER_POINT;
  context.setTransform(pixelRatio, 0, 0, pixelRatio, x * pixelRatio, y * pixelRatio);
  context.font = `600 ${size}px ${CANVAS_FONT}`;
  context.letterSpacing = "0px";
  context.textAlign = "center";
  context.textBaseline = "alphabetic";
  context.fillStyle = color;
  context.fillText(text, 0, size * 0.36);
}

function paintText(paint: Paint, item: TextItem): void {
  const { context, palette, view, pixelRatio } = paint;
  const [x, y] = placeOf(item, view);
  const size = TEXT_POINTS[item.size] * PIXELS_PER_POINT;
  context.setTransform(pixelRatio, 0, 0, pixelRatio, x * pixelRatio, y * pixelRatio);
  context.rotate((-item.turn * Math.PI) / 180);
  context.font = `${item.strong ? 600 : 400} ${size}px ${CANVAS_FONT}`;
  context.letterSpacing = item.spaced ? `${size * LETTER_SPACING}px` : "0px";
  context.textAlign = item.anchor === "middle" ? "center" : item.anchor === "end" ? "right" : "left";
  context.textBaseline = "alphabetic";
  if (item.plate) {
    context.strokeStyle = palette.paper;
    context.lineWidth = 2.4 * PIXELS_PER_POINT;
    context.lineJoin = "round";
    context.setLineDash([]);
    context.strokeText(item.text, 0, 0);
  }
  context.fillStyle = palette.texts[item.role];
  context.fillText(item.text, 0, 0);
}

/** Where a text or number stands on the screen: as near to what it is beside as on paper, at whatever scale the view is. */
function placeOf({ at, beside }: TextItem | MarkItem, view: ScreenView): Point {
  return beside ? besideOf(beside.of, beside.by, view) : toScreen(view, at);
}

function besideOf(of: Point, by: Point, view: ScreenView): Point {
  const [x, y] = toScreen(view, of);
  return [x + by[0] * PIXELS_PER_POINT, y - by[1] * PIXELS_PER_POINT];
}

function paintMark(paint: Paint, item: MarkItem): void {
  const { context, palette, view } = paint;
  const text = String(item.number);
  const drawing = markDrawing(item.outcome, text);
  const at = placeOf(item, view);
  aboutPlace(paint, at, 0);
  for (const part of drawing.parts) paintPart(context, part, palette.roles[drawing.role]);
  writeCentered(paint, text, at, palette.texts[drawing.textRole]);
}

function paintLeader(paint: Paint, item: MarkItem): void {
  if (!item.from) return;
  const { context, palette, view, pixelRatio } = paint;
  const { beside } = item;
  const [x0, y0] = beside ? besideOf(beside.of, beside.from, view) : toScreen(view, item.from);
  const [x1, y1] = placeOf(item, view);
  const style = palette.roles.leader;
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
  strokeWith(context, style, PIXELS_PER_POINT);
  context.beginPath();
  context.moveTo(x0, y0);
  context.lineTo(x1, y1);
  context.stroke();
  context.fillStyle = style.stroke ?? palette.texts.ink;
  context.beginPath();
  context.arc(x0, y0, 0.9 * PIXELS_PER_POINT, 0, 2 * Math.PI);
  context.fill();
}
