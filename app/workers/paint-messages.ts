/** What the page and the worker that paints the sheet say to each other. */
import type { MarkPlace } from "../canvas/sheet-painter.ts";
import type { SheetUpdate } from "../canvas/sheet-update.ts";

/** First the canvas, then what differs from one frame to the next. */
export type PaintRequest = { readonly canvas: OffscreenCanvas } | { readonly update: SheetUpdate };

/** Where numbers of findings stand, or why nothing can be painted. */
export type PaintReply = { readonly marks: readonly MarkPlace[] } | { readonly failure: string };
