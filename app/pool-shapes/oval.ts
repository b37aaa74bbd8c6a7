/** Two half circles joined by straight sides. */
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import { firstOf, outside, type PoolShape, sizeOf } from "./shape.ts";

export const oval: PoolShape = {
  id: "oval",
  label: "Oval",
  fields: [
    {
      name: "length",
      label: "Length",
      type: "length",
      start: 396,
      help: "From the far end of one half circle to that of the other.",
    },
    { name: "width", label: "Width", type: "length", start: 216, help: "Across: the diameter of the half circles." },
  ],
  outline(d, units) {
    const [length, width] = [sizeOf(d, "length"), sizeOf(d, "width")];
    const refusal = firstOf(
      outside(oval, d, "width", { isAbove: true }, units),
      outside(oval, d, "length", { least: width, because: "the width" }, units),
    );
    if (refusal) return refusal;
    const [x, y] = [(length - width) / 2, width / 2];
    // A bulge of 1 is a half circle.
    if (x <= SAME_CORNER)
      return {
        ok: true,
        outline: {
          vertices: [
            [0, -y, 1],
            [0, y, 1],
          ],
          closed: true,
        },
      };
    return {
      ok: true,
      outline: {
        vertices: [
          [-x, -y],
          [x, -y, 1],
          [x, y],
          [-x, y, 1],
        ],
        closed: true,
      },
    };
  },
};
