/**
 * Pointers and the wheel on the sheet. Two fingers, the middle button, Space and the moving tool move the view; all else
 * goes to the tool in hand in site inches. Moves are gathered and handed on once a frame. While a stylus is down, fingers
 * are the hand that rests on the sheet, and do nothing.
 */
import { distanceBetween } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import type { Pointer } from "../tools/tool.ts";
import type { ToolHost } from "../tools/tool-host.ts";
import { type ScreenView, toSite } from "./screen-view.ts";

/** What the pointer needs of the sheet. */
export interface PointerSheet {
  readonly view: ScreenView;
  panBy(dx: number, dy: number): void;
  zoomAt(factor: number, at: Point): void;
  /** Asks for a frame, in which `flush` is called. */
  changed(): void;
}

const ZOOM_PER_PIXEL = 0.0015;
const PINCH_PER_PIXEL = 0.01;
const LINE_PIXELS = 16;

/** Two presses are a double one within so many milliseconds and pixels. */
const DOUBLE_TIME = 400;
const DOUBLE_PIXELS = 6;
const DOUBLE_TOUCH_PIXELS = 20;

/** One turn of a wheel goes on as it began: by wheel or by trackpad. */
const SAME_SCROLL_TIME = 250;
/** A trackpad scrolls in smaller steps than any wheel. */
const LEAST_WHEEL_STEP = 40;

export class PointerInput {
  readonly #box: HTMLElement;
  readonly #sheet: PointerSheet;
  readonly #host: ToolHost;
  readonly #fingers = new Map<number, Point>();
  #isPinching = false;
  #pressed: number | null = null;
  /** The pointer of the stylus that is down. */
  #stylus: number | null = null;
  #panning: Point | null = null;
  #waiting: PointerEvent | null = null;
  #lastPress: { readonly time: number; readonly at: Point } | null = null;
  #scroll = { time: 0, isTrackpad: false };
  /** Space is held: the next drag moves the sheet. */
  isSpaceDown = false;

  constructor(box: HTMLElement, sheet: PointerSheet, host: ToolHost) {
    this.#box = box;
    this.#sheet = sheet;
    this.#host = host;
  }

  /** Starts listening. Returns what ends it. */
  listen(): () => void {
    const listeners: [string, (event: never) => void][] = [
      ["pointerdown", (event: PointerEvent) => this.#down(event)],
      ["pointermove", (event: PointerEvent) => this.#move(event)],
      ["pointerup", (event: PointerEvent) => this.#up(event)],
      ["pointercancel", (event: PointerEvent) => this.#lost(event)],
      ["pointerleave", () => this.#leave()],
      ["wheel", (event: WheelEvent) => this.#wheel(event)],
    ];
    for (const [name, listener] of listeners) {
      this.#box.addEventListener(name, listener as EventListener, { passive: false });
    }
    return () => {
      for (const [name, listener] of listeners) this.#box.removeEventListener(name, listener as EventListener);
    };
  }

  /** Hands the newest move on to the tool. */
  flush(): void {
    const event = this.#waiting;
    this.#waiting = null;
    if (event) this.#host.pointerMove(this.#pointer(event, false));
  }

  /** True while the sheet is being moved by the hand. */
  get isPanning(): boolean {
    return this.#panning !== null || this.#isPinching;
  }

  #place(event: MouseEvent): Point {
    const { left, top } = this.#box.getBoundingClientRect();
    return [event.clientX - left, event.clientY - top];
  }

  #pointer(event: PointerEvent, isDouble: boolean): Pointer {
    return {
      at: toSite(this.#sheet.view, this.#place(event)),
      shift: event.shiftKey,
      mod: event.ctrlKey || event.metaKey,
      alt: event.altKey,
      isTouch: event.pointerType === "touch",
      isDouble,
      isCrosshair: false,
    };
  }

  #down(event: PointerEvent): void {
    if (event.target instanceof Element && event.target.closest("button, input")) return;
    if (event.pointerType === "touch" && this.#stylus !== null) return;
    if (event.pointerType === "pen") this.#takeStylus(event.pointerId);
    this.#box.setPointerCapture(event.pointerId);
    const at = this.#place(event);
    if (event.pointerType === "touch") {
      this.#fingers.set(event.pointerId, at);
      if (this.#fingers.size > 1) {
        this.#waiting = null;
        if (!this.#isPinching) this.#host.abandonPress();
        this.#isPinching = true;
        this.#pressed = null;
        this.#panning = null;
        return;
      }
    }
    if (event.button === 1 || (event.button === 0 && (this.isSpaceDown || this.#host.tool.id === "pan"))) {
      event.preventDefault();
      this.#panning = at;
      this.#sheet.changed();
      return;
    }
    if (event.button !== 0 || this.#pressed !== null) return;
    this.#pressed = event.pointerId;
    this.flush();
    this.#host.pointerDown(this.#pointer(event, this.#isDouble(event, at)));
  }

  /** The stylus draws from here on: what resting fingers had begun is given up. */
  #takeStylus(id: number): void {
    this.#stylus = id;
    this.#fingers.clear();
    this.#isPinching = false;
    if (this.#pressed === null || this.#pressed === id) return;
    this.#pressed = null;
    this.#host.abandonPress();
  }

  #isDouble(event: PointerEvent, at: Point): boolean {
    const last = this.#lastPress;
    const isDouble = last !== null && event.timeStamp - last.time < DOUBLE_TIME && isNear(event, last.at, at);
    this.#lastPress = isDouble ? null : { time: event.timeStamp, at };
    return isDouble;
  }

  #move(event: PointerEvent): void {
    const at = this.#place(event);
    if (this.#isPinching) {
      if (this.#fingers.has(event.pointerId)) this.#pinch(event.pointerId, at);
      return;
    }
    if (this.#panning) {
      this.#sheet.panBy(this.#panning[0] - at[0], this.#panning[1] - at[1]);
      this.#panning = at;
      return;
    }
    if (this.#pressed !== null && event.pointerId !== this.#pressed) return;
    // A press that pulled something is not the first half of a double one.
    if (this.#pressed !== null && this.#lastPress && !isNear(event, this.#lastPress.at, at)) this.#lastPress = null;
    this.#waiting = event;
    this.#sheet.changed();
  }

  /** The place between the fingers stays between them, and the sheet grows as they part. */
  #pinch(id: number, at: Point): void {
    const before = [...this.#fingers.values()];
    this.#fingers.set(id, at);
    const after = [...this.#fingers.values()];
    const [a0, b0] = before;
    const [a1, b1] = after;
    if (!a0 || !b0 || !a1 || !b1) return;
    const [m0, m1] = [middle(a0, b0), middle(a1, b1)];
    this.#sheet.panBy(m0[0] - m1[0], m0[1] - m1[1]);
    this.#sheet.zoomAt(Math.max(1, distanceBetween(a1, b1)) / Math.max(1, distanceBetween(a0, b0)), m1);
  }

  #up(event: PointerEvent): void {
    if (event.pointerId === this.#stylus) this.#stylus = null;
    this.#fingers.delete(event.pointerId);
    if (this.#isPinching) {
      // What is left of two fingers does not draw.
      if (this.#fingers.size === 0) this.#isPinching = false;
      return;
    }
    if (this.#panning) {
      this.#panning = null;
      this.#sheet.changed();
      return;
    }
    if (event.pointerId !== this.#pressed || event.button !== 0) return;
    this.flush();
    this.#pressed = null;
    this.#host.pointerUp(this.#pointer(event, false));
  }

  #lost(event: PointerEvent): void {
    if (event.pointerId === this.#stylus) this.#stylus = null;
    this.#fingers.delete(event.pointerId);
    if (this.#fingers.size === 0) this.#isPinching = false;
    this.#panning = null;
    this.#waiting = null;
    if (event.pointerId !== this.#pressed) return;
    this.#pressed = null;
    this.#host.abandonPress();
  }

  #leave(): void {
    if (this.#pressed !== null) return;
    this.#waiting = null;
    this.#host.pointerLeave();
  }

  #wheel(event: WheelEvent): void {
    event.preventDefault();
    const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? LINE_PIXELS : 1;
    const at = this.#place(event);
    if (event.ctrlKey || event.metaKey) this.#sheet.zoomAt(Math.exp(-event.deltaY * unit * PINCH_PER_PIXEL), at);
    else if (this.#isTrackpad(event)) this.#sheet.panBy(event.deltaX, event.deltaY);
    else if (event.shiftKey) this.#sheet.panBy((event.deltaX || event.deltaY) * unit, 0);
    else this.#sheet.zoomAt(Math.exp(-event.deltaY * unit * ZOOM_PER_PIXEL), at);
  }

  #isTrackpad(event: WheelEvent): boolean {
    if (event.timeStamp - this.#scroll.time > SAME_SCROLL_TIME) {
      const isSmall = Math.abs(event.deltaY) < LEAST_WHEEL_STEP;
      const isPixels = event.deltaMode === WheelEvent.DOM_DELTA_PIXEL;
      this.#scroll.isTrackpad = isPixels && !event.shiftKey && (event.deltaX !== 0 || isSmall);
    }
    this.#scroll.time = event.timeStamp;
    return this.#scroll.isTrackpad;
  }
}

/** Whether two presses are close enough for a double one. */
function isNear(event: PointerEvent, a: Point, b: Point): boolean {
  return distanceBetween(a, b) <= (event.pointerType === "touch" ? DOUBLE_TOUCH_PIXELS : DOUBLE_PIXELS);
}

function middle(a: Point, b: Point): Point {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
