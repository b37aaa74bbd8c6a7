/**
 * Paints the sheet from its state, in a worker or on the page.
 *
 * Stages of a frame. While the view moves, everything is painted anew. While something is dragged, the ground (surfaces
 * and buildings, whose hatches take longest) comes from a kept picture and the rest is painted over it. At rest the
 * whole plan comes from a kept picture, and only what lies over it is painted: the selection and the tool's own lines.
 */
import type { Point } from "../../geometry/types.ts";
import { PALETTES } from "../drawing/palette.ts";
import type { Scene } from "../drawing/scene.ts";
import { gridLines } from "../snapping/grid.ts";
import { type Context2D, contextOf, newCanvas } from "./new-canvas.ts";
import { paintGrid, paintOutline, paintTool } from "./overlay-painter.ts";
import type { Paint } from "./painter.ts";
import { groundKey, paintDrawing, paintGround } from "./plan-painter.ts";
import { SceneKeeper, type Shown } from "./scene-keeper.ts";
import { paintFurniture } from "./sheet-furniture.ts";
import type { SheetState } from "./sheet-state.ts";

/** Where the number of a finding stands on the sheet, inches. */
export interface MarkPlace {
  readonly at: Point;
  readonly finding: string;
}

/** A picture that stands for what it was painted from, as long as that is the same. */
interface Kept {
  readonly context: Context2D;
  key: readonly unknown[];
}

export class SheetPainter {
  readonly #keeper = new SceneKeeper();
  readonly #onMarks: (marks: readonly MarkPlace[]) => void;
  #kept: Record<"ground" | "plan", Kept | null> = { ground: null, plan: null };
  #view: readonly unknown[] = [];
  #marked: Scene | null = null;
  /** Grows when type that was painted has to be painted again. */
  #typefaces = 0;

  /** `onMarks` hears where the numbers of findings stand, each time they are placed. */
  constructor(onMarks: (marks: readonly MarkPlace[]) => void) {
    this.#onMarks = onMarks;
  }

  /** The sheet's own typeface has come: nothing that was painted stands for it. */
  typefaceCame(): void {
    this.#typefaces += 1;
  }

  /** Paints a frame on a canvas of the state's size. */
  paint(context: Context2D, state: SheetState): void {
    const { camera, width, height, pixelRatio, palette, site } = state;
    if (width === 0 || height === 0) return;
    const shown = this.#keeper.now(state);
    this.#tellMarks(state, shown);
    const view = [camera, width, height, pixelRatio, palette, this.#typefaces];
    const isMoved = state.isMoving || !isSame(view, this.#view);
    this.#view = view;
    const paint: Paint = { context, view: { camera, width, height }, palette: PALETTES[palette], pixelRatio };
    clear(context);
    const ground = [...view, hasGrid(state), ...groundKey(shown, site)];
    const drawing = [...view, shown, state.isDrawing, site];
    if (isMoved) {
      paintGroundOf(paint, state, shown);
      paintDrawingOf(paint, state, shown);
    } else if (state.isDragging) {
      this.#put("ground", paint, ground, (on) => paintGroundOf(on, state, shown));
      paintDrawingOf(paint, state, shown);
    } else {
      this.#put("plan", paint, [...ground, ...drawing], (on) => {
        this.#put("ground", on, ground, (under) => paintGroundOf(under, state, shown));
        paintDrawingOf(on, state, shown);
      });
    }
    paintOverlay(paint, state);
  }

  /** Puts a kept picture on the canvas, painted again first where it stands for something else. */
  #put(name: "ground" | "plan", paint: Paint, key: readonly unknown[], make: (on: Paint) => void): void {
    const { width, height } = paint.context.canvas;
    const before = this.#kept[name];
    const fits = before && before.context.canvas.width === width && before.context.canvas.height === height;
    const context = fits ? before.context : contextOf(newCanvas(width, height));
    if (!context) {
      make(paint);
      return;
    }
    const kept: Kept = fits ? before : { context, key: [] };
    this.#kept[name] = kept;
    if (!isSame(key, kept.key)) {
      clear(context);
      make({ ...paint, context });
      kept.key = key;
    }
    paint.context.resetTransform();
    paint.context.drawImage(context.canvas, 0, 0);
  }

  #tellMarks({ isDragging }: SheetState, { scene }: Shown): void {
    if (isDragging || this.#marked === scene) return;
    this.#marked = scene;
    const items = scene.layers.find(({ name }) => name === "marks")?.items ?? [];
    this.#onMarks(
      items.flatMap((item) =>
        item.kind === "mark" && item.findings?.[0] !== undefined ? [{ at: item.at, finding: item.findings[0] }] : [],
      ),
    );
  }
}

function isSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((part, i) => part === b[i]);
}

function clear(context: Context2D): void {
  context.resetTransform();
  context.globalAlpha = 1;
  context.clearRect(0, 0, context.canvas.width, context.canvas.height);
}

/** Lines of the grid show while something is drawn or dragged that snaps to them. */
function hasGrid({ isSnapping, isDrawing, isDragging }: SheetState): boolean {
  return isSnapping && (isDrawing || isDragging);
}

function paintGroundOf(paint: Paint, state: SheetState, shown: Shown): void {
  paintGround(paint, shown);
  if (hasGrid(state)) paintGrid(paint, gridLines(state.camera.scale, state.site.display?.units));
}

function paintDrawingOf(paint: Paint, state: SheetState, shown: Shown): void {
  paintDrawing(paint, shown);
  // What is typed while drawing takes the place of the furniture.
  if (!state.isDrawing) paintFurniture(paint, state.site);
}

function paintOverlay(paint: Paint, { site, report, finding, selection, hovered, overlay }: SheetState): void {
  const chosen = new Set(selection);
  // The finding in focus draws its element itself, with the part that lies within the limit.
  const focused = finding === null ? null : report?.findings.find(({ id }) => id === finding)?.element;
  if (typeof focused === "string") chosen.delete(focused);
  if (chosen.size > 0 || hovered !== null) {
    for (const element of site.elements) {
      if (chosen.has(element.id)) paintOutline(paint, element, true);
      else if (element.id === hovered) paintOutline(paint, element, false);
    }
  }
  paintTool(paint, overlay);
}
