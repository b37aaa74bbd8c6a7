/**
 * Pointer, wheel and keys of the sheet: two fingers, the middle button, Space or the pan tool move the view; everything
 * else goes to the tool in hand as samples in site inches, once a frame.
 */
import type { Point } from "../../geometry/types.ts";
import type { Sample } from "../tools/tool.ts";
import { toSite } from "./screen-view.ts";
import type { SheetController } from "./sheet-controller.ts";

/** Screen pixels that count as "on it": by mouse or pen, by finger. */
const SLACK_FINE = 8;
const SLACK_FINGER = 22;
const ZOOM_PER_PIXEL = 0.0015;
const PINCH_PER_PIXEL = 0.01;

export function listenToPointer(box: HTMLElement, sheet: SheetController): () => void {
  const fingers = new Map<number, Point>();
  let panning: Point | null = null;
  let isSpaceDown = false;
  let crosshair: Point | null = null;
  let waiting: PointerEvent | null = null;
  let frame = 0;

  const place = (event: { clientX: number; clientY: number }): Point => {
    const rect = box.getBoundingClientRect();
    return [event.clientX - rect.left, event.clientY - rect.top];
  };
  const sample = (event: PointerEvent | MouseEvent): Sample => {
    const isFinger = "pointerType" in event && event.pointerType === "touch";
    return {
      at: toSite(sheet.view, place(event)),
      shift: event.shiftKey,
      alt: event.altKey,
      slack: (isFinger ? SLACK_FINGER : SLACK_FINE) / sheet.view.camera.scale,
    };
  };
  const done = () => sheet.changed(2);

  function down(event: PointerEvent): void {
    if (event.target instanceof Element && event.target.closest("button, input")) return;
    box.focus({ preventScroll: true });
    box.setPointerCapture(event.pointerId);
    if (event.pointerType === "touch") fingers.set(event.pointerId, place(event));
    if (fingers.size === 2) {
      sheet.tool.cancel();
      done();
      return;
    }
    if (event.button === 1 || isSpaceDown || box.dataset.tool === "pan") {
      panning = place(event);
      return;
    }
    if (event.button !== 0) return;
    sheet.tool.move(sample(event));
    sheet.tool.down(sample(event));
    done();
  }

  function move(event: PointerEvent): void {
    if (fingers.has(event.pointerId) && fingers.size === 2) {
      pinch(event);
      return;
    }
    if (panning) {
      const [x, y] = place(event);
      sheet.panBy(panning[0] - x, panning[1] - y);
      panning = [x, y];
      return;
    }
    waiting = event;
    if (frame !== 0) return;
    frame = requestAnimationFrame(flush);
  }

  function flush(): void {
    frame = 0;
    if (!waiting) return;
    const event = waiting;
    waiting = null;
    sheet.tool.move(sample(event));
    done();
  }

  function pinch(event: PointerEvent): void {
    const before = [...fingers.values()];
    fingers.set(event.pointerId, place(event));
    const after = [...fingers.values()];
    const [a0, b0, a1, b1] = [before[0], before[1], after[0], after[1]] as [Point, Point, Point, Point];
    const spread = (p: Point, q: Point) => Math.max(1, Math.hypot(p[0] - q[0], p[1] - q[1]));
    const middle = (p: Point, q: Point): Point => [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
    const [m0, m1] = [middle(a0, b0), middle(a1, b1)];
    sheet.panBy(m0[0] - m1[0], m0[1] - m1[1]);
    sheet.zoomAt(spread(a1, b1) / spread(a0, b0), m1);
  }

  function up(event: PointerEvent): void {
    const pinched = fingers.size === 2;
    fingers.delete(event.pointerId);
    if (panning || pinched) {
      panning = null;
      return;
    }
    if (event.button !== 0) return;
    flush();
    sheet.tool.up(sample(event));
    done();
  }

  function lost(event: PointerEvent): void {
    fingers.delete(event.pointerId);
    panning = null;
    sheet.tool.cancel();
    done();
  }

  function wheel(event: WheelEvent): void {
    event.preventDefault();
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    if (event.ctrlKey || event.metaKey) {
      sheet.zoomAt(Math.exp(-event.deltaY * lines * PINCH_PER_PIXEL), place(event));
    } else if (isTrackpad(event)) sheet.panBy(event.deltaX, event.deltaY);
    else sheet.zoomAt(Math.exp(-event.deltaY * lines * ZOOM_PER_PIXEL), place(event));
  }

  function keyDown(event: KeyboardEvent): void {
    if (event.target !== box || event.ctrlKey || event.metaKey) return;
    if (event.key === " ") {
      isSpaceDown = true;
      event.preventDefault();
      return;
    }
    if (moveCrosshair(event) || sheet.tool.key(event.key)) {
      event.preventDefault();
      event.stopPropagation();
      done();
    }
  }

  /** Arrow keys move a crosshair while a drawing tool is in hand, so that everything can be drawn without a pointer. */
  function moveCrosshair(event: KeyboardEvent): boolean {
    const step = ARROWS[event.key];
    const drawing = box.dataset.tool !== "select" && box.dataset.tool !== "pan";
    if (!drawing) return false;
    const { camera } = sheet.view;
    const start: Point = crosshair ?? [Math.round(camera.x / 12) * 12, Math.round(camera.y / 12) * 12];
    if (!step) {
      if (event.key === "Enter" && crosshair === null) {
        crosshair = start;
        sheet.tool.move({ at: start, shift: false, alt: true, slack: SLACK_FINE / camera.scale });
        return false;
      }
      return false;
    }
    const size = event.shiftKey ? 12 : 1;
    crosshair = [start[0] + step[0] * size, start[1] + step[1] * size];
    sheet.tool.move({ at: crosshair, shift: false, alt: true, slack: SLACK_FINE / camera.scale });
    return true;
  }

  function keyUp(event: KeyboardEvent): void {
    if (event.key === " ") isSpaceDown = false;
  }

  function doubleClick(event: MouseEvent): void {
    sheet.tool.doubleClick(sample(event));
    done();
  }

  const listeners: [string, (event: never) => void, AddEventListenerOptions?][] = [
    ["pointerdown", down],
    ["pointermove", move],
    ["pointerup", up],
    ["pointercancel", lost],
    ["wheel", wheel, { passive: false }],
    ["dblclick", doubleClick],
    ["keydown", keyDown],
    ["keyup", keyUp],
  ];
  for (const [name, listener, options] of listeners) box.addEventListener(name, listener as EventListener, options);
  return () => {
    for (const [name, listener] of listeners) box.removeEventListener(name, listener as EventListener);
    if (frame !== 0) cancelAnimationFrame(frame);
  };
}

const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** A trackpad scrolls by small steps in both directions; a wheel by large ones in one. */
function isTrackpad(event: WheelEvent): boolean {
  return event.deltaMode === WheelEvent.DOM_DELTA_PIXEL && (event.deltaX !== 0 || Math.abs(event.deltaY) < 40);
}
