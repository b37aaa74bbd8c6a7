/** Canvases that are never on the page: tiles of hatches, and what a frame need not paint anew. In a worker as on the page. */

export type Context2D = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;
export type AnyCanvas = HTMLCanvasElement | OffscreenCanvas;

export function newCanvas(width: number, height: number): AnyCanvas {
  if (typeof OffscreenCanvas !== "undefined") return new OffscreenCanvas(width, height);
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  return canvas;
}

/** Null where the browser gives none, as when memory is short. */
export function contextOf(canvas: AnyCanvas): Context2D | null {
  return canvas.getContext("2d") as Context2D | null;
}
