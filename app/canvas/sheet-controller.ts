/**
 * What the sheet on the screen does, outside of React: follows the stores, moves the camera, and has what has changed
 * painted once in an animation frame.
 */

import { boundsUnion } from "../../geometry/points.ts";
import type { Bounds, Point } from "../../geometry/types.ts";
import type { CanvasPort } from "../commands/editor-ports.ts";
import { elementBounds } from "../drawing/element-bounds.ts";
import type { Editor } from "../editor.ts";
import type { OverlayShape } from "../tools/tool.ts";
import type { ToolHost } from "../tools/tool-host.ts";
import type { Camera, Foreseen } from "../view/view-store.ts";
import { boundsOfFinding, freeOf, panelsOver, shiftInto } from "./free-sheet.ts";
import { hostOf } from "./host-of.ts";
import { listenToToolKeys } from "./key-input.ts";
import { PointerInput } from "./pointer-input.ts";
import { fitted, type ScreenView, toSite, zoomedAt } from "./screen-view.ts";
import type { SheetScreen } from "./sheet-screen.ts";
import { SheetStateReader } from "./sheet-state.ts";
import { siteBounds } from "./site-bounds.ts";

/** Milliseconds without a move of the view until lettering is placed anew. */
const REST = 160;
/** Room for dimensions and marks round what is shown, pixels. */
const FIT_MARGIN = 72;
/** Half the size of a finding's mark, pixels. */
const MARK_REACH = 11;

export class SheetController {
  readonly #editor: Editor;
  readonly #host: ToolHost;
  readonly #reader: SheetStateReader;
  #screen: SheetScreen | null = null;
  #box: HTMLElement | null = null;
  #pointer: PointerInput | null = null;
  #width = 0;
  #height = 0;
  #frame = 0;
  #rest: ReturnType<typeof setTimeout> | null = null;
  #isFitDue = true;

  constructor(editor: Editor) {
    this.#editor = editor;
    this.#host = hostOf(editor);
    this.#reader = new SheetStateReader(editor);
  }

  get view(): ScreenView {
    return { camera: this.#editor.view.getState().camera, width: this.#width, height: this.#height };
  }

  /** Starts following the editor and listening to the box, which the screen lies in. Returns what ends it. */
  attach(box: HTMLElement, screen: SheetScreen): () => void {
    this.#box = box;
    this.#screen = screen;
    const { view, document, live } = this.#editor;
    const pointer = new PointerInput(box, this, this.#host);
    this.#pointer = pointer;
    const port: CanvasPort = {
      fit: () => this.fit(),
      zoomBy: (factor) => this.zoomAt(factor, [this.#width / 2, this.#height / 2]),
      panBy: (dx, dy) => this.panBy(dx, dy),
      showElements: (ids) => this.#showElements(ids),
      cancel: () => this.#host.cancel(),
      takesBack: () => this.#host.state.getState().takesBack,
      takeBack: () => this.#host.takeBack(),
    };
    this.#editor.canvas = port;
    const stops = [
      document.subscribe((state, before) => {
        if (state.shown !== before.shown || state.gesture !== before.gesture) this.changed();
      }),
      live.subscribe((state, before) => {
        if (state.report !== before.report || state.routesPending !== before.routesPending) this.changed();
      }),
      view.subscribe((state, before) => {
        if (state.camera !== before.camera) this.#moved();
        this.changed();
        if (state.tool !== before.tool) this.#takeFocus();
        if (state.finding !== before.finding || state.column !== before.column) this.#showFinding();
      }),
      this.#host.connect({
        changed: () => this.changed(),
        findingAt: (at, slack) => this.#findingAt(at, slack),
        reveal: (at) => this.#reveal(at),
        middle: () => this.#freeMiddle(),
      }),
      pointer.listen(),
      listenToToolKeys(box, pointer, this.#host, () => this.changed()),
    ];
    this.changed();
    return () => {
      for (const stop of stops) stop();
      if (this.#frame !== 0) cancelAnimationFrame(this.#frame);
      if (this.#rest !== null) clearTimeout(this.#rest);
      this.#frame = 0;
      this.#rest = null;
      if (this.#editor.canvas === port) this.#editor.canvas = null;
      if (this.#screen === screen) this.#screen = null;
      screen.close();
    };
  }

  resize(width: number, height: number): void {
    this.#width = width;
    this.#height = height;
    if (this.#isFitDue) this.fit();
    this.changed();
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

  /** Asks for the next frame to show how things stand then. */
  changed(): void {
    if (this.#frame !== 0) return;
    this.#frame = requestAnimationFrame(() => {
      try {
        // What the tool changes now is shown in this frame: it asks for no other.
        this.#pointer?.flush();
      } finally {
        this.#frame = 0;
      }
      this.#screen?.show(
        this.#reader.read({
          isMoving: this.#rest !== null,
          width: this.#width,
          height: this.#height,
          pixelRatio: window.devicePixelRatio,
          overlay: [...this.#editor.view.getState().foreseen.map(foreseenShape), ...this.#host.overlay()],
        }),
      );
      this.#showState();
    });
  }

  #setCamera(camera: Camera): void {
    this.#editor.view.getState().setCamera(camera);
  }

  /** The view moved: lettering waits until it rests. */
  #moved(): void {
    if (this.#rest !== null) clearTimeout(this.#rest);
    this.#rest = setTimeout(() => {
      this.#rest = null;
      this.changed();
    }, REST);
    this.changed();
  }

  /** The middle of what nothing lies over, site inches; null before the sheet has a size. */
  #freeMiddle(): Point | null {
    const { view } = this;
    if (!this.#box || view.width === 0) return null;
    const free = freeOf(view.width, view.height, panelsOver(this.#box));
    return toSite(view, [(free.minX + free.maxX) / 2, (free.minY + free.maxY) / 2]);
  }

  /** Once what lies over the sheet stands, as the bar of a drawing that has just come back. */
  #reveal(at: Point): void {
    const [minX, minY] = at;
    requestAnimationFrame(() => this.#showBounds({ minX, minY, maxX: minX, maxY: minY }));
  }

  /** Brings the finding in focus into the part of the sheet that no column lies over, once the columns stand. */
  #showFinding(): void {
    requestAnimationFrame(() => {
      const { finding: id } = this.#editor.view.getState();
      const finding = this.#editor.live.getState().report?.findings.find((one) => one.id === id);
      this.#showBounds(finding ? boundsOfFinding(finding, this.#editor.document.getState().shown) : null);
    });
  }

  #showElements(ids: readonly string[]): void {
    requestAnimationFrame(() => {
      const { elements } = this.#editor.document.getState().shown;
      const boxes = elements.flatMap((element) => (ids.includes(element.id) ? (elementBounds(element) ?? []) : []));
      this.#showBounds(boxes.length === 0 ? null : boundsUnion(boxes));
    });
  }

  #showBounds(bounds: Bounds | null): void {
    if (!bounds || !this.#box || this.#width === 0) return;
    const { view } = this;
    const [dx, dy] = shiftInto(view, bounds, freeOf(view.width, view.height, panelsOver(this.#box)));
    if (dx !== 0 || dy !== 0) this.panBy(dx, dy);
  }

  #findingAt(at: Point, slack: number): string | null {
    const reach = Math.max(slack, MARK_REACH / this.view.camera.scale);
    const isNear = (mark: { readonly at: Point }) => Math.hypot(mark.at[0] - at[0], mark.at[1] - at[1]) <= reach;
    return this.#screen?.marks().find(isNear)?.finding ?? null;
  }

  /** A tool that draws is used on the sheet, wherever it was taken: its keys go there at once. So does one from the bar. */
  #takeFocus(): void {
    const { tool } = this.#editor.view.getState();
    const box = this.#box;
    const active = box?.ownerDocument.activeElement;
    if (!box || !active || active === box) return;
    const isDrawing = tool !== "select" && tool !== "pan";
    const isLeft =
      isDrawing || active === box.ownerDocument.body || active.closest("[role=toolbar], .entry-bar, .empty-sheet");
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

function foreseenShape(foreseen: Foreseen): OverlayShape {
  return "edges" in foreseen
    ? { kind: "edges", edges: foreseen.edges, look: "ghost" }
    : { kind: "handle", at: foreseen.at, look: "placed" };
}
