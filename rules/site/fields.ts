import { z } from "zod";
import { LARGEST_NUMBER } from "./limits.ts";

/** Any number of the site file: finite and within LARGEST_NUMBER. */
export const number = z.number().min(-LARGEST_NUMBER).max(LARGEST_NUMBER);
/** A length, count or area that cannot be negative. */
export const amount = z.number().min(0).max(LARGEST_NUMBER);
export const flag = z.boolean();
export const text = z.string();

export const position = z.tuple([number, number]);

/** `[x, y]` or `[x, y, bulge]` (overhead lines: `[x, y, z]`). */
export const vertex = z.union([position, z.tuple([number, number, number])]);

const vertices = z.array(vertex).min(2);

/** Open or closed path. */
export const path = z.looseObject({ vertices, closed: flag });
export const openPath = z.looseObject({ vertices, closed: z.literal(false) });
/** A closed outline. Two vertices are enough where an arc lies between them. */
export const outline = z.looseObject({ vertices, closed: z.literal(true) });
/** Several outlines. */
export const outlines = z.array(outline);

/** What `metal` may be drawn as: a path (closed = an area, unless `line` is true) or a point. */
export const shape = z.union([
  z.looseObject({ point: position }),
  z.looseObject({ vertices, closed: flag, line: flag.optional() }),
]);

/** `[bottom, top]`, inches above the datum. */
export const zRange = z.tuple([number, number]);
