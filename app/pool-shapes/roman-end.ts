/** A rectangle that ends, at one or both of its short sides, in an arc narrower than the pool, between two shoulders. */

import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { Vertex } from "../../geometry/types.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { aboutMiddle } from "./placing.ts";
import { type Dimensions, firstOf, outside, type PoolShape, type Shaped, type ShapeField, sizeOf } from "./shape.ts";

const fields: readonly ShapeField[] = [
  { name: "length", label: "Length overall", type: "length", start: 432, help: "With the arcs, from wall to wall." },
  { name: "width", label: "Width", type: "length", start: 192, help: "From inside wall to inside wall." },
  {
    name: "arcWidth",
    label: "Arc width",
    type: "length",
    start: ({ width = 0 }) => Math.round((width * 5) / 8 / 12) * 12 || width / 2,
    help: "From shoulder to shoulder; the full width leaves no shoulders.",
  },
  {
    name: "arcDepth",
    label: "Arc depth",
    type: "length",
    start: ({ arcWidth = 0 }) => arcWidth / 2,
    help: "How far the arc reaches past the shoulders; half of its width makes it a half circle.",
  },
];

export const romanEnd: PoolShape = {
  id: "roman-end",
  label: "Roman end",
  fields,
  outline: (d, units) => romanOutline(romanEnd, d, 1, units),
};

export const doubleRomanEnd: PoolShape = {
  id: "double-roman-end",
  label: "Double Roman end",
  fields,
  outline: (d, units) => romanOutline(doubleRomanEnd, d, 2, units),
};

function romanOutline(shape: PoolShape, d: Dimensions, ends: 1 | 2, units: Units): Shaped {
  const [length, width] = [sizeOf(d, "length"), sizeOf(d, "width")];
  const [arcWidth, arcDepth] = [sizeOf(d, "arcWidth"), sizeOf(d, "arcDepth")];
  const arcs = ends === 1 ? "the depth of the arc" : "the depths of both arcs";
  const refusal = firstOf(
    outside(shape, d, "width", { isAbove: true }, units),
    outside(shape, d, "arcWidth", { isAbove: true, most: width, because: "the width" }, units),
    outside(shape, d, "arcDepth", { isAbove: true, most: arcWidth / 2, because: "half of the arc's width" }, units),
    outside(shape, d, "length", { isAbove: true, least: ends * arcDepth, because: arcs }, units),
  );
  if (refusal) return refusal;
  const hasShoulders = width - arcWidth > SAME_CORNER;
  const [x, y] = [(length - ends * arcDepth) / 2, width / 2];
  const half = hasShoulders ? arcWidth / 2 : y;
  // The height of an arc over half its chord is its bulge.
  const bulge = Math.min(1, arcDepth / half);
  const right: Vertex[] = [
    ...(hasShoulders ? [[x, -y] as const] : []),
    [x, -half, bulge],
    [x, half],
    ...(hasShoulders ? [[x, y] as const] : []),
  ];
  const left: Vertex[] =
    ends === 1
      ? [
          [-x, y],
          [-x, -y],
        ]
      : right.map(([vx, vy, b]): Vertex => (b === undefined ? [-vx, -vy] : [-vx, -vy, b]));
  return { ok: true, outline: aboutMiddle({ vertices: [...right, ...left], closed: true }) };
}
