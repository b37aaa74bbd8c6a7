/**
 * What the sheet on the screen does, outside of React: follows the stores, moves the camera, and paints what has changed
 * once in an animation frame.
 *
 * Layers. Ground: surfaces, buildings and the grid. Drawing: everything else of the plan. Overlay: the selection and what
 * the tool in hand shows; while something is dragged this changes with the plan in every frame and is painted onto the
 * drawing, because each canvas that changes costs the browser a copy of it.
 */

import type { Point } from "../../geometry/types.ts";
import type { CanvasPort } from "../commands/editor-ports.ts";
import { PALETTES } from "../drawing/palette.ts";
import type { Editor } from "../editor.ts";
import { gridLines } from "../snapping/grid.ts";
import type { ToolHost } from "../tools/tool-host.ts";
import type { Camera } from "../view/view-store.ts";
import { boundsOfFinding, freeOf, panelsOver, shiftInto } from "./free-sheet.ts";
import { hostOf } from "./host-of.ts";
import { listenToToolKeys } from "./key-input.ts";
import { paintGrid, paintOutline, paintTool } from "./overlay-painter.ts";
import type { Paint } from "./painter.ts";
import { groundKey, paintDrawing, paintGround } from "./plan-painter.ts";
import { PointerInput } from "./pointer-input.ts";
import { SceneKeeper } from "./scene-keeper.ts";
import { fitted, type ScreenView, toScreen, zoomedAt } from "./screen-view.ts";
import { paintFurniture } from "./sheet-furniture.ts";
import { siteBounds } from "./site-bounds.ts";

export const SHEET_LAYERS = ["ground", "drawing", "overlay"] as const;
export type SheetLayer = (typeof SHEET_LAYERS)[number];

/** Milliseconds without a move of the view until lettering is placed anew. */
const REST = 160;
/** Room for dimensions and marks round what is shown, pixels. */
const FIT_MARGIN = 72;
/** A place that keys have moved to is kept this far inside the view, pixels. */
const REVEAL_MARGIN = 48;
/** Half the size of a finding's mark, pixels. */
const MARK_REACH = 11;

export class SheetController {
  readonly #editor: Editor;
  readonly #host: ToolHost;
  readonly #keeper: SceneKeeper;
  readonly #redraw: (layer: SheetLayer) => void;
  #box: HTMLElement | null = null;
  #pointer: PointerInput | null = null;
  #width = 0;
  #height = 0;
  #frame = 0;
  readonly #dirty = new Set<SheetLayer>();
  #rest: ReturnType<typeof setTimeout> | null = null;
  #isFitDue = true;
  #groundPainted: readonly unknown[] = [];

  constructor(editor: Editor, redraw: (layer: SheetLayer) => void) {
    this.#editor = editor;
    this.#host = hostOf(editor);
    this.#keeper = new SceneKeeper(editor);
    this.#redraw = redraw;
  }

  get view(): ScreenView {
    return { camera: this.#editor.view.getState().camera, width: this.#width, height: this.#height };
  }

  /** Starts following the editor and listening to the box. Returns what ends it. */
  attach(box: HTMLElement): () => void {
    this.#box = box;
    const { view, document, live } = this.#editor;
    const pointer = new PointerInput(box, this, this.#host);
    this.#pointer = pointer;
    const port: CanvasPort = {
      fit: () => this.fit(),
      zoomBy: (factor) => this.zoomAt(factor, [this.#width / 2, this.#height / 2]),
      panBy: (dx, dy) => this.panBy(dx, dy),
      cancel: () => this.#host.cancel(),
    };
    this.#editor.canvas = port;
    const stops = [
      document.subscribe((state, before) => {
        const hasTurned = (state.gesture === null) !== (before.gesture === null);
        if (hasTurned) this.changed(...SHEET_LAYERS);
        else if (state.shown !== before.shown) this.changed("drawing", "overlay");
      }),
      live.subscribe((state, before) => {
        if (state.report !== before.report || state.routesPending !== before.routesPending) this.changed("drawing");
      }),
      view.subscribe((state, before) => {
        if (state.camera !== before.camera) this.#moved();
        const isOverlayOnly =
          state.part === before.part &&
          state.finding === before.finding &&
          state.highlight === before.highlight &&
          state.snapping === before.snapping &&
          state.tool === before.tool &&
          state.palette === before.palette;
        this.changed(...(isOverlayOnly ? (["overlay"] as const) : SHEET_LAYERS));
        if (state.tool !== before.tool) this.#takeFocus();
        if (state.finding !== before.finding || state.column !== before.column) this.#showFinding();
      }),
      this.#host.connect({
        changed: () => this.changed("overlay"),
        findingAt: (at, slack) => this.#findingAt(at, slack),
        reveal: (at) => this.#reveal(at),
      }),
      pointer.listen(),
      listenToToolKeys(box, pointer, this.#host, () => this.changed("overlay")),
    ];
    this.changed(...SHEET_LAYERS);
    return () => {
      for (const stop of stops) stop();
      if (this.#frame !== 0) cancelAnimationFrame(this.#frame);
      if (this.#rest !== null) clearTimeout(this.#rest);
      this.#frame = 0;
      this.#rest = null;
      if (this.#editor.canvas === port) this.#editor.canvas = null;
    };
  }

  resize(width: number, height: number): void {
    this.#width = width;
    this.#height = height;
    if (this.#isFitDue) this.fit();
    this.changed(...SHEET_LAYERS);
  }

  fit(): void {
    this.#isFitDue = this.#width === 0 || this.#height === 0;
    if (this.#isFitDue) return;
    const margin = Math.min(FIT_MARGIN, this.#width / 8, this.#height / 8);
    this.#setCamera(fitted(siteBounds(this.#editor.document.getState().shown), this.#width, this.#height, margin));
  }

  panBy(dx: number, dy: number): void {
    const { camera } = this.view;
    this.#setCamera({ ...camera, x: camera.x + dx / camera.scale, y: camera.y - dy / camera.scale });
  }

  zoomAt(factor: number, at: Point): void {
    this.#setCamera(zoomedAt(this.view, factor, at));
  }

  /** Asks for layers to be painted in the next frame. */
  changed(...layers: SheetLayer[]): void {
    for (const layer of layers) this.#dirty.add(layer);
    if (this.#frame !== 0) return;
    this.#frame = requestAnimationFrame(() => {
      // What the tool changes now is painted in this frame: it asks for no other.
      this.#pointer?.flush();
      this.#settleDirty();
      this.#frame = 0;
      const dirty = SHEET_LAYERS.filter((layer) => this.#dirty.has(layer));
      this.#dirty.clear();
      for (const layer of dirty) this.#redraw(layer);
      this.#showState();
    });
  }

  /** Paints one layer; called by the canvas. */
  paint(layer: SheetLayer, context: CanvasRenderingContext2D): void {
    const { view } = this.#editor;
    const pixelRatio = context.canvas.width / Math.max(1, this.#width);
    const paint: Paint = { context, view: this.view, palette: PALETTES[view.getState().palette], pixelRatio };
    context.save();
    if (layer === "overlay") {
      if (!this.#isDragging()) this.#paintOverlay(paint);
    } else if (layer === "ground") {
      paintGround(paint, this.#keeper.now(this.#rest !== null));
      this.#paintGrid(paint);
    } else {
      paintDrawing(paint, this.#keeper.now(this.#rest !== null));
      // What is typed while drawing takes its place.
      if (!this.#isDrawing()) paintFurniture(paint, this.#editor.document.getState().shown);
      if (this.#isDragging()) this.#paintOverlay(paint);
    }
    context.restore();
  }

  #isDrawing(): boolean {
    const { tool } = this.#editor.view.getState();
    return tool !== "select" && tool !== "pan";
  }

  #isDragging(): boolean {
    return this.#editor.document.getState().gesture !== null;
  }

  /** Layers that have to be painted because of others: the ground when it shows something else, the drawing for the overlay. */
  #settleDirty(): void {
    const dirty = this.#dirty;
    if (this.#isDragging() && dirty.has("overlay")) {
      // Its own canvas is cleared once, when the dragging begins and every layer is painted.
      dirty.add("drawing");
      if (!dirty.has("ground")) dirty.delete("overlay");
    }
    if (!dirty.has("drawing")) return;
    const key = groundKey(this.#keeper.now(this.#rest !== null), this.#editor.document.getState().shown);
    const last = this.#groundPainted;
    if (key.length !== last.length || key.some((part, i) => part !== last[i])) dirty.add("ground");
    this.#groundPainted = key;
  }

  /** Lines of the grid, while something is drawn or dragged that snaps to them. */
  #paintGrid(paint: Paint): void {
    const { snapping, camera } = this.#editor.view.getState();
    if (!snapping || !(this.#isDrawing() || this.#isDragging())) return;
    paintGrid(paint, gridLines(camera.scale, this.#editor.document.getState().shown.display?.units));
  }

  #paintOverlay(paint: Paint): void {
    const { view, document, live } = this.#editor;
    const { finding, selection, hovered } = view.getState();
    const chosen = new Set(selection);
    // The finding in focus draws its element itself, with the part that lies within the limit.
    const focused = live.getState().report?.findings.find(({ id }) => id === finding)?.element;
    if (typeof focused === "string") chosen.delete(focused);
    for (const element of document.getState().shown.elements) {
      if (chosen.has(element.id)) paintOutline(paint, element, true);
      else if (element.id === hovered) paintOutline(paint, element, false);
    }
    paintTool(paint, this.#host.overlay());
  }

  #setCamera(camera: Camera): void {
    this.#editor.view.getState().setCamera(camera);
  }

  /** The view moved: lettering waits until it rests. */
  #moved(): void {
    if (this.#rest !== null) clearTimeout(this.#rest);
    this.#rest = setTimeout(() => {
      this.#rest = null;
      this.changed("ground", "drawing");
    }, REST);
    this.changed(...SHEET_LAYERS);
  }

  #reveal(at: Point): void {
    const { view } = this;
    const [x, y] = toScreen(view, at);
    const beyond = (value: number, size: number) =>
      value < REVEAL_MARGIN ? value - REVEAL_MARGIN : Math.max(0, value - size + REVEAL_MARGIN);
    const [dx, dy] = [beyond(x, view.width), beyond(y, view.height)];
    if (dx !== 0 || dy !== 0) this.panBy(dx, dy);
  }

  /** Brings the finding in focus into the part of the sheet that no column lies over, once the columns stand. */
  #showFinding(): void {
    requestAnimationFrame(() => {
      const { finding: id } = this.#editor.view.getState();
      const finding = this.#editor.live.getState().report?.findings.find((one) => one.id === id);
      const bounds = finding && boundsOfFinding(finding, this.#editor.document.getState().shown);
      if (!bounds || !this.#box || this.#width === 0) return;
      const { view } = this;
      const [dx, dy] = shiftInto(view, bounds, freeOf(view.width, view.height, panelsOver(this.#box)));
      if (dx !== 0 || dy !== 0) this.panBy(dx, dy);
    });
  }

  #findingAt(at: Point, slack: number): string | null {
    const { scene } = this.#keeper.now(true);
    const reach = Math.max(slack, MARK_REACH / this.view.camera.scale);
    for (const { name, items } of scene.layers) {
      if (name !== "marks") continue;
      for (const item of items) {
        if (item.kind !== "mark" || Math.hypot(item.at[0] - at[0], item.at[1] - at[1]) > reach) continue;
        return item.findings?.[0] ?? null;
      }
    }
    return null;
  }

  /** A tool that was chosen from the bar or the menu is used on the sheet: its keys go there at once. */
  #takeFocus(): void {
    const box = this.#box;
    const active = box?.ownerDocument.activeElement;
    if (!box || !active || active === box) return;
    const isLeft = active === box.ownerDocument.body || active.closest("[role=toolbar], .entry-bar, .empty-sheet");
    if (isLeft) box.focus({ preventScroll: true });
  }

  /** The pointer's shape; and where the view lies, for whoever measures the page: center in inches, pixels to an inch. */
  #showState(): void {
    const box = this.#box;
    if (!box) return;
    const pointer = this.#pointer;
    const { camera, tool } = this.#editor.view.getState();
    const cursor = pointer?.isPanning ? "grabbing" : pointer?.isSpaceDown ? "grab" : this.#host.tool.cursor();
    if (box.style.cursor !== cursor) box.style.cursor = cursor;
    const place = `${camera.x} ${camera.y} ${camera.scale}`;
    if (box.dataset.camera !== place) box.dataset.camera = place;
    if (box.dataset.tool !== tool) box.dataset.tool = tool;
  }
}
