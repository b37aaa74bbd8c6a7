/**
 * What the canvas does, outside of React: follows the stores, keeps the scene, paints its layers once a frame, and turns
 * pointer, wheel and keys into camera moves and tool samples.
 *
 * Layers. 0: the ground, walls and zones. 1: copper, parts, lettering and marks. 2: what the tool draws over the plan.
 */
import type { Bounds, Point } from "../../geometry/types.ts";
import type { Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import { PALETTES } from "../drawing/palette.ts";
import { planScene } from "../drawing/plan-scene.ts";
import type { Item, LayerName, Scene } from "../drawing/scene.ts";
import type { Editor } from "../editor.ts";
import { createTool } from "../tools/create-tool.ts";
import type { Tool } from "../tools/tool.ts";
import { paintOverlay } from "./overlay.ts";
import { type Paint, paintItems } from "./painter.ts";
import { listenToPointer } from "./pointer.ts";
import { fitted, PIXELS_PER_POINT, type ScreenView, siteBounds, zoomedAt } from "./screen-view.ts";
import { mountSheet } from "./sheet-of.ts";

const GROUND: ReadonlySet<LayerName> = new Set<LayerName>([
  "surfaces",
  "buildings",
  "band",
  "reach",
  "keep-outs",
  "water",
  "walls",
  "fences",
  "structures",
]);

/** Milliseconds of rest before the lettering is placed again. */
const REST = 160;
const FIT_MARGIN = 56;
/** What an empty sheet shows: a yard of 60 by 45 ft round its origin, inches. */
const EMPTY_BOUNDS: Bounds = { minX: -360, minY: -270, maxX: 360, maxY: 270 };

export class SheetController {
  readonly #editor: Editor;
  readonly #redraw: (layer: 0 | 1 | 2) => void;
  #width = 0;
  #height = 0;
  #scene: Scene | null = null;
  #sceneFor: { site: Site; report: Report; key: string } | null = null;
  #frame = 0;
  #dirty = new Set<0 | 1 | 2>();
  #rest: ReturnType<typeof setTimeout> | null = null;
  #lettered = true;
  #wantsFit = true;
  #tool: Tool;
  readonly #listeners = new Set<() => void>();

  constructor(editor: Editor, redraw: (layer: 0 | 1 | 2) => void) {
    this.#editor = editor;
    this.#redraw = redraw;
    this.#tool = createTool(editor.view.getState().tool, editor);
  }

  /** Calls back whenever the tool may have changed what it shows. Returns what ends it. */
  onTool(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  get tool(): Tool {
    return this.#tool;
  }

  get view(): ScreenView {
    return { camera: this.#editor.view.getState().camera, width: this.#width, height: this.#height };
  }

  /** Starts following the editor and listening to the box. Returns what ends it. */
  attach(box: HTMLElement): () => void {
    const { view, document, live } = this.#editor;
    mountSheet(this.#editor, this);
    this.#editor.canvas = {
      fit: () => this.fit(),
      zoomBy: (factor) => this.#setCamera(zoomedAt(this.view, factor, [this.#width / 2, this.#height / 2])),
      panBy: (dx, dy) => this.panBy(dx, dy),
      cancel: () => {
        const had = this.#tool.cancel();
        this.changed(2);
        return had;
      },
    };
    const stops = [
      document.subscribe((state, before) => {
        if (state.shown === before.shown && state.gesture === before.gesture) return;
        this.#lettered = state.gesture === null;
        this.changed(0, 1, 2);
      }),
      live.subscribe((state, before) => {
        if (state.report !== before.report || state.routesPending !== before.routesPending) this.changed(0, 1);
      }),
      view.subscribe((state, before) => {
        if (state.tool !== before.tool) {
          this.#tool.cancel();
          this.#tool = createTool(state.tool, this.#editor);
        }
        if (state.camera !== before.camera) this.#moved();
        else this.changed(0, 1, 2);
      }),
      listenToPointer(box, this),
    ];
    this.changed(0, 1, 2);
    return () => {
      for (const stop of stops) stop();
      if (this.#frame !== 0) cancelAnimationFrame(this.#frame);
      this.#frame = 0;
      this.#editor.canvas = null;
    };
  }

  resize(width: number, height: number): void {
    this.#width = width;
    this.#height = height;
    if (this.#wantsFit && width > 0 && height > 0) this.fit();
    this.changed(0, 1, 2);
  }

  fit(): void {
    if (this.#width === 0 || this.#height === 0) {
      this.#wantsFit = true;
      return;
    }
    const bounds = this.#sceneNow()?.bounds ?? EMPTY_BOUNDS;
    this.#wantsFit = this.#sceneFor === null;
    this.#setCamera(fitted(bounds, this.#width, this.#height, Math.min(FIT_MARGIN, this.#width / 10)));
  }

  panBy(dx: number, dy: number): void {
    const { camera } = this.view;
    this.#setCamera({ ...camera, x: camera.x + dx / camera.scale, y: camera.y - dy / camera.scale });
  }

  zoomAt(factor: number, at: Point): void {
    this.#setCamera(zoomedAt(this.view, factor, at));
  }

  /** Asks for layers to be painted in the next frame. */
  changed(...layers: (0 | 1 | 2)[]): void {
    for (const layer of layers) this.#dirty.add(layer);
    if (this.#frame !== 0) return;
    this.#frame = requestAnimationFrame(() => {
      this.#frame = 0;
      if (this.#wantsFit && this.#editor.live.getState().report) this.fit();
      const dirty = [...this.#dirty];
      this.#dirty.clear();
      for (const layer of dirty) this.#redraw(layer);
      if (dirty.includes(2)) for (const listener of this.#listeners) listener();
    });
  }

  paint(layer: 0 | 1 | 2, context: CanvasRenderingContext2D): void {
    const { view: viewStore } = this.#editor;
    const palette = PALETTES[viewStore.getState().palette];
    const pixelRatio = context.canvas.width / Math.max(1, this.#width);
    const paint: Paint = { context, view: this.view, palette, pixelRatio };
    context.save();
    if (layer === 2) paintOverlay(paint, this.#tool.overlay(), viewStore.getState().selection, this.#editor);
    else this.#paintScene(paint, layer);
    context.restore();
  }

  #paintScene(paint: Paint, layer: 0 | 1): void {
    const scene = this.#sceneNow();
    if (!scene) return;
    const focus = scene.layers.find(({ name, items }) => name === "focus" && items.length > 0);
    for (const { name, items } of scene.layers) {
      if (name === "focus" || GROUND.has(name) !== (layer === 0)) continue;
      paintItems(paint, items as readonly Item[]);
    }
    if (!focus) return;
    // Everything else steps back behind a veil.
    const { context, palette, pixelRatio } = paint;
    if (layer === 1) {
      context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
      context.globalAlpha = 0.62;
      context.fillStyle = palette.paper;
      context.fillRect(0, 0, this.#width, this.#height);
      context.globalAlpha = 1;
      paintItems(paint, focus.items);
    }
  }

  /** The scene of what is shown now; the same one until something that it shows has changed. */
  #sceneNow(): Scene | null {
    const { report } = this.#editor.live.getState();
    if (!report) return null;
    const { shown } = this.#editor.document.getState();
    const { part, finding, highlight } = this.#editor.view.getState();
    const scale = this.view.camera.scale;
    const key = `${part} ${finding} ${highlight} ${this.#lettered ? scale.toFixed(5) : "plain"}`;
    const last = this.#sceneFor;
    if (this.#scene && last && last.site === shown && last.report === report && last.key === key) return this.#scene;
    this.#scene = planScene(shown, report, {
      pointsPerInch: scale / PIXELS_PER_POINT,
      marks: "open",
      ...(part ? { part } : {}),
      ...(finding ? { focus: finding } : {}),
      ...(highlight ? { highlight } : {}),
      ...(this.#lettered ? {} : { withoutLettering: true }),
    });
    this.#sceneFor = { site: shown, report, key };
    return this.#scene;
  }

  #setCamera(camera: ScreenView["camera"]): void {
    this.#editor.view.getState().setCamera(camera);
  }

  /** The view moved: lettering waits until it rests. */
  #moved(): void {
    this.#lettered = false;
    this.changed(0, 1, 2);
    if (this.#rest !== null) clearTimeout(this.#rest);
    this.#rest = setTimeout(() => {
      this.#rest = null;
      this.#lettered = this.#editor.document.getState().gesture === null;
      this.changed(0, 1);
    }, REST);
  }

  /** The part of the site in view, for tools that look for what is near. */
  bounds(): Bounds {
    return siteBounds(this.view);
  }
}
