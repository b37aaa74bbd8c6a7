/**
 * Two round ends of different size, joined by an arc that bows outward on one side and one that bends inward on the
 * other. All four arcs go on smoothly from one another.
 */
import { arcVertex, type Circle, joiningCircle, touching } from "./circles.ts";
import { aboutMiddle } from "./placing.ts";
import { firstOf, outside, type PoolShape, refuse, sizeOf, uncrossed } from "./shape.ts";

export const kidney: PoolShape = {
  id: "kidney",
  label: "Kidney",
  fields: [
    {
      name: "length",
      label: "Length",
      type: "length",
      start: 384,
      help: "From the far side of one end to that of the other.",
    },
    { name: "large", label: "Large end", type: "length", start: 216, help: "Diameter of the larger round end." },
    { name: "small", label: "Small end", type: "length", start: 168, help: "Diameter of the smaller round end." },
    {
      name: "outer",
      label: "Outside radius",
      type: "length",
      start: ({ length = 0 }) => (length * 3) / 4,
      help: "Radius of the long side that bows outward.",
    },
    {
      name: "inner",
      label: "Inside radius",
      type: "length",
      start: ({ length = 0 }) => length / 4,
      help: "Radius of the side that bends inward.",
    },
  ],
  outline(d, units) {
    const [length, large, small] = [sizeOf(d, "length"), sizeOf(d, "large"), sizeOf(d, "small")];
    const refusal = firstOf(
      outside(kidney, d, "length", { isAbove: true }, units),
      outside(kidney, d, "large", { isAbove: true, most: length, because: "the length" }, units),
      outside(kidney, d, "small", { isAbove: true, most: large, because: "the large end" }, units),
      large < length ? null : refuse(kidney, "large", "has to be smaller than the length."),
      outside(kidney, d, "outer", { isAbove: true, least: length / 2, because: "half of the length" }, units),
    );
    if (refusal) return refusal;
    const a: Circle = { center: [0, 0], radius: large / 2 };
    const b: Circle = { center: [length - (large + small) / 2, 0], radius: small / 2 };
    // Ends that stand apart need an arc that spans them.
    const gap = Math.max(0, (length - large - small) / 2);
    const tooSmall = outside(
      kidney,
      d,
      "inner",
      { isAbove: true, least: gap, because: "half of the gap between the ends" },
      units,
    );
    if (tooSmall) return tooSmall;
    const above = joiningCircle(a, b, sizeOf(d, "outer"), "outward", -1);
    const below = joiningCircle(a, b, sizeOf(d, "inner"), "inward", -1);
    if (!above) return refuse(kidney, "outer", "does not reach both ends.");
    if (!below) return refuse(kidney, "inner", "does not reach both ends.");
    const [topA, topB] = [touching(a, above, "outward"), touching(b, above, "outward")];
    const [lowA, lowB] = [touching(a, below, "inward"), touching(b, below, "inward")];
    const vertices = [
      arcVertex(a.center, topA, lowA, "outward"),
      arcVertex(below.center, lowA, lowB, "inward"),
      arcVertex(b.center, lowB, topB, "outward"),
      arcVertex(above.center, topB, topA, "outward"),
    ];
    const crossed = "makes the long sides meet: type a larger one, or larger ends.";
    return uncrossed(kidney, aboutMiddle({ vertices, closed: true }), "inner", crossed);
  },
};
