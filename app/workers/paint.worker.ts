/**
 * Paints the sheet off the page's own thread: the canvas on the page is this worker's. Updates are taken in as they come
 * and painted once in a frame, the newest only.
 */
import regular from "@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-400-normal.woff2?url";
import medium from "@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-500-normal.woff2?url";
import semibold from "@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-600-normal.woff2?url";
import { SheetPainter } from "../canvas/sheet-painter.ts";
import type { SheetState } from "../canvas/sheet-state.ts";
import { updatedSheet } from "../canvas/sheet-update.ts";
import type { PaintReply, PaintRequest } from "./paint-messages.ts";

const painter = new SheetPainter((marks) => reply({ marks }));
let canvas: OffscreenCanvas | null = null;
let context: OffscreenCanvasRenderingContext2D | null = null;
let state: SheetState | null = null;
let isAsked = false;

self.addEventListener("message", ({ data }: MessageEvent<PaintRequest>) => {
  try {
    if ("canvas" in data) {
      canvas = data.canvas;
      context = canvas.getContext("2d");
      if (!context) reply({ failure: "The browser gives no canvas to paint on." });
    } else state = updatedSheet(state, data.update);
    ask();
  } catch (error) {
    fail(error);
  }
});

void loadTypeface();

function ask(): void {
  if (isAsked || !context || !state) return;
  isAsked = true;
  self.requestAnimationFrame(() => {
    isAsked = false;
    if (!canvas || !context || !state) return;
    try {
      const [width, height] = [state.width * state.pixelRatio, state.height * state.pixelRatio].map(Math.round);
      if (width !== undefined && canvas.width !== width) canvas.width = width;
      if (height !== undefined && canvas.height !== height) canvas.height = height;
      painter.paint(context, state);
    } catch (error) {
      fail(error);
    }
  });
}

/** The page's own typeface, which a worker has to load for itself. */
async function loadTypeface(): Promise<void> {
  // biome-ignore lint/suspicious/noExplicitAny: the types of a worker's own fonts are not in the page's
  const { fonts } = self as any as { readonly fonts?: FontFaceSet };
  if (!fonts) return;
  const faces = Object.entries({ 400: regular, 500: medium, 600: semibold }).map(
    ([weight, file]) => new FontFace("IBM Plex Sans", `url(${file})`, { weight }),
  );
  for (const face of faces) fonts.add(face);
  // Where one does not come, type stays in the next best face.
  await Promise.allSettled(faces.map((face) => face.load()));
  painter.typefaceCame();
  ask();
}

function fail(error: unknown): void {
  reply({ failure: error instanceof Error ? (error.stack ?? error.message) : String(error) });
}

function reply(message: PaintReply): void {
  self.postMessage(message);
}
