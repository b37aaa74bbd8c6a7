/** The site document, version 1: everything around the elements. */
import { z } from "zod";
import type { KnownElement, UnknownElement } from "./elements.ts";
import { amount, number, text } from "./fields.ts";
import { MOST_TIES } from "./limits.ts";

export const SITE_FORMAT = "copperband-site";
export const SITE_VERSION = 1;

/** How the perimeter is bonded where the edition allows more than one method. */
export const PERIMETER_CHOICES = ["least-copper", "ring", "grid"] as const;
export type PerimeterChoice = (typeof PERIMETER_CHOICES)[number];

export const settingsSchema = z.looseObject({
  /** How far from the inside wall the even ring lies, inches. */
  ringOffset: amount.optional(),
  /** How far the plan's short ring stays inside both limits, inches. */
  ringMargin: amount.optional(),
  ties: amount.max(MOST_TIES).optional(),
  spareFraction: amount.optional(),
  /** Extra copper counted for each buried joint, inches. */
  junctionAllowance: amount.optional(),
  /** Lengths of spools that can be bought, inches. */
  spools: z.array(amount.gt(0)).optional(),
  /** `even` or `short`. */
  ringStyle: z.enum(["even", "short"]).optional(),
  /** The method laid wherever the edition allows it; elsewhere the allowed one. */
  perimeterMethod: z.enum(PERIMETER_CHOICES).optional(),
  /** Lengths of grid rolls that can be bought, inches. */
  gridRolls: z.array(amount.gt(0)).optional(),
});

export const amendmentSchema = z.looseObject({
  parameter: text,
  value: z.union([z.number(), z.boolean(), text, z.array(text), z.null()]),
  reason: text.optional(),
});

export const answerSchema = z.looseObject({
  question: text,
  element: z.union([text, z.null()]).optional(),
  answer: text,
  on: text.optional(),
  by: text.optional(),
  /** Print of what the answer was about when it was given; an answer whose print no longer fits has lapsed. */
  about: text.optional(),
  /** What the answer rested on besides the element and the pool, as its question told: kinds of things, and things by id. */
  restsOn: z.looseObject({ kinds: z.array(text).optional(), elements: z.array(text).optional() }).optional(),
});

/** A picture in the file itself: nothing is ever fetched for it. */
const PICTURE = /^data:image\/(?:png|jpeg|webp);base64,[A-Za-z0-9+/]+=*$/;

/** Characters of an underlay's picture: 6 MB of it. */
const MOST_PICTURE = 8 * 1024 * 1024;

/**
 * A survey or photograph that the plan is drawn over. It decides nothing: no rule reads it. Its lower left corner lies at
 * `at`, its width runs along `turn`, degrees counter-clockwise from the right.
 */
export const underlaySchema = z.looseObject({
  name: text.optional(),
  picture: z.string().max(MOST_PICTURE).regex(PICTURE),
  /** Pixels. */
  width: amount.gt(0),
  height: amount.gt(0),
  at: z.tuple([number, number]),
  inchesPerPixel: amount.gt(0),
  turn: number.optional(),
  /** How strongly it shows, 0 to 1. */
  strength: z.number().min(0).max(1).optional(),
  hidden: z.boolean().optional(),
});

/** Elements that are selected and moved together; an element is in one group at most. */
export const groupSchema = z.looseObject({ name: text.optional(), elements: z.array(text) });

/**
 * How the elements are handled on the sheet, by id. It decides nothing: no rule reads it, and what is hidden is judged
 * like everything else. An id that no element has is passed over.
 */
export const arrangementSchema = z.looseObject({
  /** Cannot be picked, moved, turned or deleted until it is unlocked. */
  locked: z.array(text).optional(),
  /** Not drawn. */
  hidden: z.array(text).optional(),
  groups: z.array(groupSchema).optional(),
});

/**
 * An end of a dimension: on an element (its own point, a corner, or a share of the side that leaves the corner), or, with
 * no element, the place itself. `at` is where it lay when it was drawn.
 */
export const anchorSchema = z.looseObject({
  element: text.optional(),
  ref: z.enum(["outline", "path", "shape", "islands", "holes", "at"]).optional(),
  /** Number in the list of islands or openings. */
  index: amount.optional(),
  /** Number of a corner, from 0. */
  corner: amount.optional(),
  share: z.number().min(0).max(1).optional(),
  at: z.tuple([number, number]),
});

/** A measure that is drawn and follows what it is attached to. No rule reads it. */
export const dimensionSchema = z.looseObject({
  id: text,
  from: anchorSchema,
  to: anchorSchema,
  /** How far its line lies from what is measured, inches: to the left of the way from one end to the other, or up, or right. */
  offset: number,
  /** Straight from end to end when absent; else only how far across or up. */
  direction: z.enum(["across", "up"]).optional(),
});

/** The document without its elements. */
export const headSchema = z.looseObject({
  format: z.literal(SITE_FORMAT),
  version: z.literal(SITE_VERSION),
  name: text.optional(),
  edition: text.optional(),
  display: z.looseObject({ units: z.enum(["ft-in", "ft", "in", "m"]).optional() }).optional(),
  grade: number.optional(),
  accuracy: amount.optional(),
  north: number.optional(),
  position: z.looseObject({ lon: z.number().min(-180).max(180), lat: z.number().min(-90).max(90) }).optional(),
  settings: settingsSchema.optional(),
  underlay: underlaySchema.optional(),
  arrangement: arrangementSchema.optional(),
  dimensions: z.array(dimensionSchema).optional(),
  amendments: z.array(amendmentSchema).optional(),
  answers: z.array(answerSchema).optional(),
});

export type Settings = z.infer<typeof settingsSchema>;
export type Amendment = z.infer<typeof amendmentSchema>;
export type Underlay = z.infer<typeof underlaySchema>;
export type Arrangement = z.infer<typeof arrangementSchema>;
export type DimensionAnchor = z.infer<typeof anchorSchema>;
export type Dimension = z.infer<typeof dimensionSchema>;
export type Answer = z.infer<typeof answerSchema>;

/** A site as read: known elements are valid for their kind, unknown kinds are kept untouched. */
export type Site = z.infer<typeof headSchema> & { elements: (KnownElement | UnknownElement)[] };
