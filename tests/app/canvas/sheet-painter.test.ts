/** A plan that is slow to paint, moved as a picture: it lies where the camera says. Source: arithmetic. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Context2D } from "../../../app/canvas/new-canvas.ts";
import { toScreen } from "../../../app/canvas/screen-view.ts";
import { SheetPainter } from "../../../app/canvas/sheet-painter.ts";
import type { SheetState } from "../../../app/canvas/sheet-state.ts";
import type { Site } from "../../../rules/site/site.ts";

/** A canvas that only notes what is put on it as a picture, and how often anything else is drawn. */
class NotedCanvas {
  readonly pictures: { readonly from: unknown; readonly by: readonly number[] }[] = [];
  strokes = 0;
  readonly #written: { readonly text: string; readonly at: readonly [number, number] }[] = [];
  #transform: number[] = [1, 0, 0, 1, 0, 0];

  constructor(
    public width: number,
    public height: number,
  ) {}

  /** Where a text was written on this canvas, device pixels. */
  writtenAt(text: string): readonly [number, number] {
    const found = this.#written.find((one) => one.text === text);
    if (!found) throw new Error(`"${text}" was not written`);
    return found.at;
  }

  getContext(): unknown {
    const own: Record<string, unknown> = {
      canvas: this,
      measureText: () => ({ width: 10 }),
      setTransform: (...by: number[]) => {
        this.#transform = by;
      },
      resetTransform: () => {
        this.#transform = [1, 0, 0, 1, 0, 0];
      },
      drawImage: (from: unknown) => this.pictures.push({ from, by: [...this.#transform] }),
      fillText: (text: string) => this.#written.push({ text, at: [this.#transform[4] ?? 0, this.#transform[5] ?? 0] }),
      stroke: () => {
        this.strokes += 1;
      },
    };
    return new Proxy(own, {
      get: (target, name) => (name in target ? target[String(name)] : () => undefined),
      set: () => true,
    });
  }
}

class NotedPath {
  moveTo() {}
  lineTo() {}
  arc() {}
  closePath() {}
}

const site = {
  format: "copperband-site",
  version: 1,
  elements: [{ id: "post-1", kind: "metal", part: "post", shape: { point: [30, 40] } }],
} as unknown as Site;

const state: SheetState = {
  site,
  opening: 1,
  report: null,
  routesPending: false,
  isDragging: false,
  isDrawing: true,
  isMoving: false,
  isSnapping: false,
  part: null,
  hiddenParts: [],
  finding: null,
  highlight: null,
  selection: [],
  hovered: null,
  palette: "sheet",
  camera: { x: 0, y: 0, scale: 2 },
  width: 400,
  height: 300,
  pixelRatio: 2,
  overlay: [],
};

/** The clock: each look at it is `step` later than the one before. */
let step = 0;

beforeEach(() => {
  vi.stubGlobal("OffscreenCanvas", NotedCanvas);
  vi.stubGlobal("Path2D", NotedPath);
  let now = 0;
  vi.spyOn(performance, "now").mockImplementation(() => {
    now += step;
    return now;
  });
});

afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

/** A painter that has the plan at rest before it, and knows how long it takes. */
function painterAtRest(): SheetPainter {
  const painter = new SheetPainter(() => undefined);
  frame(painter, {});
  frame(painter, {});
  return painter;
}

/** Paints a frame on a canvas of its own. */
function frame(painter: SheetPainter, more: Partial<SheetState>): NotedCanvas {
  const canvas = new NotedCanvas(800, 600);
  painter.paint(canvas.getContext() as Context2D, { ...state, ...more });
  return canvas;
}

describe("while the view moves", () => {
  it("a plan that is slow to paint comes as a picture, each place where the camera has it", () => {
    step = 8;
    const painter = painterAtRest();
    const first = { x: 0, y: 0, scale: 2 };
    for (const camera of [
      { x: 25, y: -10, scale: 2 },
      { x: 5, y: 12, scale: 3 },
    ]) {
      const canvas = frame(painter, { isMoving: true, camera });
      expect(canvas.strokes).toBe(0);
      const [k = 0, , , , dx = 0, dy = 0] = canvas.pictures.at(-1)?.by ?? [];
      const at = [30, 40] as const;
      // Device pixels: twice those of the page.
      const [wasX, wasY] = toScreen({ camera: first, width: 400, height: 300 }, at);
      const [isX, isY] = toScreen({ camera, width: 400, height: 300 }, at);
      expect(k * wasX * 2 + dx).toBeCloseTo(isX * 2, 9);
      expect(k * wasY * 2 + dy).toBeCloseTo(isY * 2, 9);
    }
  });

  it("a plan that is quick to paint is painted anew in every frame", () => {
    step = 1;
    const painter = painterAtRest();
    const canvas = frame(painter, { isMoving: true, camera: { x: 25, y: -10, scale: 2 } });
    expect(canvas.pictures).toEqual([]);
    expect(canvas.strokes).toBeGreaterThan(0);
  });

  it("figures stay as near to their lines as they were, however far it is zoomed", () => {
    step = 1;
    const ends = { from: { at: [0, 0] }, to: { at: [60, 0] }, offset: 0 };
    const measured = { ...site, dimensions: [{ id: "dimension-1", ...ends }] } as unknown as Site;
    const painter = new SheetPainter(() => undefined);
    const over = (more: Partial<SheetState>) => {
      const { camera = state.camera } = more;
      const [x, y] = frame(painter, { site: measured, ...more }).writtenAt(`5' 0"`);
      // The middle of the line, device pixels: twice those of the page.
      const [mx, my] = toScreen({ camera, width: 400, height: 300 }, [30, 0]);
      return [x - mx * 2, my * 2 - y];
    };
    const atRest = over({});
    expect(atRest[1]).toBeGreaterThan(0);
    const zoomed = over({ isMoving: true, camera: { x: 20, y: 5, scale: 9 } });
    expect(zoomed[0]).toBeCloseTo(atRest[0] ?? Number.NaN, 6);
    expect(zoomed[1]).toBeCloseTo(atRest[1] ?? Number.NaN, 6);
  });

  it("a picture does not stand for long, nor for another site", () => {
    step = 100;
    const painter = painterAtRest();
    const camera = { x: 25, y: -10, scale: 2 };
    const late = frame(painter, { isMoving: true, camera });
    expect(late.pictures.at(-1)?.by.slice(0, 1)).toEqual([1]);
    expect(late.pictures.at(-1)?.by.slice(4)).toEqual([0, 0]);
    step = 8;
    frame(painter, {});
    const other = frame(painter, { isMoving: true, camera, site: { ...site, elements: [] } });
    expect(other.pictures.at(-1)?.by.slice(4)).toEqual([0, 0]);
  });
});

describe("at rest", () => {
  it("only what lies over the plan is painted again while the plan stays the same", () => {
    step = 8;
    const painter = painterAtRest();
    const hovered = frame(painter, { hovered: "post-1" });
    expect(hovered.pictures).toHaveLength(1);
    // The ring round the post.
    expect(hovered.strokes).toBe(1);
  });
});
