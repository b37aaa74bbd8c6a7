/**
 * Two round ends with a neck between them. Each side of the neck is an arc that goes on smoothly from end to end.
 *
 * The radius r of the neck's arcs follows from the width of the neck. With the ends' radii a and b, their centers c
 * apart, half of the neck h and the middle of the neck's arc at x along the axis:
 * (r + a)^2 = x^2 + (h + r)^2 and (r + b)^2 = (c - x)^2 + (h + r)^2. Their difference gives x as p + q r; put into the
 * first it is a quadratic equation in r.
 */
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import { arcVertex, type Circle, joiningCircle, touching } from "./circles.ts";
import { aboutMiddle } from "./placing.ts";
import { firstOf, outside, type PoolShape, refuse, sizeOf, uncrossed } from "./shape.ts";

export const figureEight: PoolShape = {
  id: "figure-8",
  label: "Figure 8",
  fields: [
    {
      name: "length",
      label: "Length",
      type: "length",
      start: 384,
      help: "From the far side of one end to that of the other.",
    },
    { name: "large", label: "Large end", type: "length", start: 216, help: "Diameter of the larger round end." },
    { name: "small", label: "Small end", type: "length", start: 180, help: "Diameter of the smaller round end." },
    {
      name: "neck",
      label: "Neck",
      type: "length",
      start: ({ small = 0 }) => (small * 3) / 4,
      help: "The narrowest width between the ends.",
    },
  ],
  outline(d, units) {
    const [length, large, small, neck] = ["length", "large", "small", "neck"].map((name) => sizeOf(d, name)) as [
      number,
      number,
      number,
      number,
    ];
    const refusal = firstOf(
      outside(figureEight, d, "length", { isAbove: true }, units),
      outside(figureEight, d, "large", { isAbove: true, most: length, because: "the length" }, units),
      outside(figureEight, d, "small", { isAbove: true, most: large, because: "the large end" }, units),
      large < length ? null : refuse(figureEight, "large", "has to be smaller than the length."),
    );
    if (refusal) return refusal;
    const [a, b] = [large / 2, small / 2];
    const c = length - a - b;
    // Where the circles of the ends cross, the neck cannot be narrower than they leave it.
    const crossing = (c * c + a * a - b * b) / (2 * c);
    const least = 2 * Math.sqrt(Math.max(0, a * a - crossing * crossing));
    const because =
      least > 0 ? "wider than the ends where they cross, narrower than the small end" : "narrower than the small end";
    const narrow = outside(figureEight, d, "neck", { isAbove: true, least, most: small, because }, units);
    if (narrow) return narrow;
    if (neck >= small - SAME_CORNER) return refuse(figureEight, "neck", "has to be narrower than the small end.");
    const radius = neckRadius(a, b, c, neck / 2);
    if (radius === null) return refuse(figureEight, "neck", "cannot join these ends: type a wider or narrower one.");
    const [endA, endB]: [Circle, Circle] = [
      { center: [0, 0], radius: a },
      { center: [c, 0], radius: b },
    ];
    const below = joiningCircle(endA, endB, radius, "inward", -1);
    const above = joiningCircle(endA, endB, radius, "inward", 1);
    if (!below || !above) return refuse(figureEight, "neck", "cannot join these ends: type a wider or narrower one.");
    const [topA, topB] = [touching(endA, above, "inward"), touching(endB, above, "inward")];
    const [lowA, lowB] = [touching(endA, below, "inward"), touching(endB, below, "inward")];
    const vertices = [
      arcVertex(endA.center, topA, lowA, "outward"),
      arcVertex(below.center, lowA, lowB, "inward"),
      arcVertex(endB.center, lowB, topB, "outward"),
      arcVertex(above.center, topB, topA, "inward"),
    ];
    return uncrossed(
      figureEight,
      aboutMiddle({ vertices, closed: true }),
      "neck",
      "makes the sides meet: type a wider one.",
    );
  },
};

/** The radius of the neck's arcs, inches; null when none joins the ends. */
export function neckRadius(a: number, b: number, c: number, h: number): number | null {
  const [p, q] = [(c * c + a * a - b * b) / (2 * c), (a - b) / c];
  // q^2 r^2 + 2 (p q + h - a) r + p^2 + h^2 - a^2 = 0
  const [square, half, plain] = [q * q, p * q + h - a, p * p + h * h - a * a];
  const root = half * half - square * plain;
  if (root < 0 || half >= 0) return null;
  // The smaller root, in the form that loses no digits for equal ends.
  const radius = plain / (Math.sqrt(root) - half);
  return radius > 0 ? radius : null;
}
