/**
 * Two straight arms that meet at a bend: the L shapes. Lengths are measured along the outer sides, up to the corner
 * where those meet.
 */
import type { Point } from "../../geometry/types.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { type Corner, largestThatFits, roundedOutline } from "./corners.ts";
import { aboutMiddle } from "./placing.ts";
import {
  type Dimensions,
  firstOf,
  outside,
  type PoolShape,
  refuse,
  type Shaped,
  type ShapeField,
  sizeOf,
} from "./shape.ts";

export const armFields: readonly ShapeField[] = [
  {
    name: "length",
    label: "Length",
    type: "length",
    start: 384,
    help: "Of the main arm, along its outer side up to the outer corner.",
  },
  { name: "width", label: "Width", type: "length", start: 192, help: "Of the main arm." },
  {
    name: "legLength",
    label: "Leg length",
    type: "length",
    start: 312,
    help: "Along its outer side up to the outer corner.",
  },
  { name: "legWidth", label: "Leg width", type: "length", start: ({ width = 0 }) => width, help: "Across the leg." },
];

export const radiusFields: readonly ShapeField[] = [
  {
    name: "radius",
    label: "Corner radius",
    type: "length",
    start: 0,
    help: "Of the outer corners; zero keeps them sharp.",
  },
  {
    name: "insideRadius",
    label: "Inside corner radius",
    type: "length",
    start: 0,
    help: "Of the corner that points into the water.",
  },
];

/** `bend`: degrees by which the leg turns off the main arm's direction, 0 to 180 exclusive. */
export function bentOutline(shape: PoolShape, d: Dimensions, bend: number, units: Units): Shaped {
  const [length, width, legLength, legWidth] = [
    sizeOf(d, "length"),
    sizeOf(d, "width"),
    sizeOf(d, "legLength"),
    sizeOf(d, "legWidth"),
  ];
  const square = firstOf(
    outside(shape, d, "length", { isAbove: true }, units),
    outside(shape, d, "width", { isAbove: true }, units),
    outside(shape, d, "legLength", { isAbove: true }, units),
    outside(shape, d, "legWidth", { isAbove: true }, units),
    outside(shape, d, "radius", {}, units),
    outside(shape, d, "insideRadius", {}, units),
  );
  if (square) return square;
  const [cos, sin] = bend === 90 ? [0, 1] : [Math.cos((bend * Math.PI) / 180), Math.sin((bend * Math.PI) / 180)];
  // The inner corner lies at the main arm's width and at the leg's: how far back along each outer side.
  const back = (legWidth - width * cos) / sin;
  const legBack = (width - legWidth * cos) / sin;
  const taken = "what the other arm takes of it";
  const arms = firstOf(
    outside(shape, d, "length", { isAbove: true, least: Math.max(0, back), because: taken }, units),
    outside(shape, d, "legLength", { isAbove: true, least: Math.max(0, legBack), because: taken }, units),
  );
  if (arms) return arms;
  const end: Point = [legLength * cos, legLength * sin];
  const points: readonly Point[] = [
    [-length, 0],
    [0, 0],
    end,
    [end[0] - legWidth * sin, end[1] + legWidth * cos],
    [-back, width],
    [-length, width],
  ];
  const corners = (radius: number, inside: number): Corner[] =>
    points.map((at, i) => ({ at, radius: i === 4 ? inside : radius }));
  const [radius, inside] = [sizeOf(d, "radius"), sizeOf(d, "insideRadius")];
  const outline = roundedOutline(corners(radius, inside));
  if (outline) return { ok: true, outline: aboutMiddle(outline) };
  const isInside = roundedOutline(corners(radius, 0)) !== null;
  const [name, given] = isInside ? ["insideRadius", inside] : ["radius", radius];
  const most = largestThatFits(
    given,
    (size) => roundedOutline(isInside ? corners(radius, size) : corners(size, 0)) !== null,
  );
  // The words may not name more than fits.
  const shown = Math.floor(most * 16) / 16;
  return refuse(
    shape,
    name,
    `can be at most ${lengthText(shown, units, given)} with these sides; it is ${lengthText(given, units, shown)}.`,
  );
}
