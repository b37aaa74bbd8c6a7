/**
 * Where the sheet's state becomes a picture: a worker with a canvas of its own, so that no frame of the page waits for
 * painting; or, in a browser that has no such canvas, the page itself.
 */
import type { PaintReply, PaintRequest } from "../workers/paint-messages.ts";
import type { Context2D } from "./new-canvas.ts";
import type { MarkPlace, SheetPainter } from "./sheet-painter.ts";
import type { SheetState } from "./sheet-state.ts";
import { sheetUpdate } from "./sheet-update.ts";

export interface SheetScreen {
  show(state: SheetState): void;
  /** Where numbers of findings stood when they were last placed. */
  marks(): readonly MarkPlace[];
  close(): void;
}

/** Whether a worker can paint what is on the page. */
export function canPaintInWorker(): boolean {
  return typeof OffscreenCanvas !== "undefined" && "transferControlToOffscreen" in HTMLCanvasElement.prototype;
}

/** The part of a worker that is used here. */
export interface PaintPort {
  postMessage(message: PaintRequest, transfer?: Transferable[]): void;
  onmessage: ((event: MessageEvent<PaintReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** Puts a canvas into the box that a worker paints. `onFailure` hears why it could not. */
export function workerScreen(box: HTMLElement, port: PaintPort, onFailure: (reason: string) => void): SheetScreen {
  const canvas = box.ownerDocument.createElement("canvas");
  box.append(canvas);
  const offscreen = canvas.transferControlToOffscreen();
  port.postMessage({ canvas: offscreen }, [offscreen]);
  let marks: readonly MarkPlace[] = [];
  let sent: SheetState | null = null;
  port.onmessage = ({ data }) => {
    if ("marks" in data) marks = data.marks;
    else {
      // What the worker still holds is not known: the next state is sent whole.
      sent = null;
      onFailure(data.failure);
    }
  };
  port.onerror = (event) => onFailure(event.message || "The painting of the sheet stopped.");
  return {
    show(state) {
      port.postMessage({ update: sheetUpdate(sent, state) });
      sent = state;
    },
    marks: () => marks,
    close() {
      port.terminate();
      canvas.remove();
    },
  };
}

export interface PageScreen extends SheetScreen {
  paint(context: Context2D): void;
  /** The sheet's own typeface has come. */
  restore(): void;
}

/** Paints on the page. `redraw` has to call `paint` with the canvas to paint on; `onFailure` hears why there is no painter. */
export function pageScreen(redraw: () => void, onFailure: (reason: string) => void): PageScreen {
  let marks: readonly MarkPlace[] = [];
  let state: SheetState | null = null;
  let painter: SheetPainter | null = null;
  // Loaded here only: where a worker paints, the page does without it.
  import("./sheet-painter.ts").then(
    (module) => {
      painter = new module.SheetPainter((places) => {
        marks = places;
      });
      redraw();
    },
    (error: Error) => onFailure(error.message),
  );
  return {
    show(next) {
      state = next;
      redraw();
    },
    paint(context) {
      if (state) painter?.paint(context, state);
    },
    restore() {
      painter?.typefaceCame();
      redraw();
    },
    marks: () => marks,
    close() {},
  };
}
