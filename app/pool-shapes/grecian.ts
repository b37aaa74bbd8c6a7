/** A rectangle with its four corners cut off straight. */
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import { firstOf, outside, type PoolShape, sizeOf } from "./shape.ts";

export const grecian: PoolShape = {
  id: "grecian",
  label: "Grecian",
  fields: [
    {
      name: "length",
      label: "Length",
      type: "length",
      start: 384,
      help: "From inside wall to inside wall, the long way.",
    },
    {
      name: "width",
      label: "Width",
      type: "length",
      start: 192,
      help: "From inside wall to inside wall, the short way.",
    },
    {
      name: "cut",
      label: "Cut along the length",
      type: "length",
      start: 42,
      help: "How much each cut takes off the long sides.",
    },
    {
      name: "cutAcross",
      label: "Cut along the width",
      type: "length",
      start: ({ cut = 0 }) => cut,
      help: "How much each cut takes off the short sides; as much as off the long ones makes it a 45 degree cut.",
    },
  ],
  outline(d, units) {
    const [length, width] = [sizeOf(d, "length"), sizeOf(d, "width")];
    const [cut, across] = [sizeOf(d, "cut"), sizeOf(d, "cutAcross")];
    const refusal = firstOf(
      outside(grecian, d, "length", { isAbove: true }, units),
      outside(grecian, d, "width", { isAbove: true }, units),
      outside(grecian, d, "cut", { isAbove: true, most: length / 2, because: "half of the length" }, units),
      outside(grecian, d, "cutAcross", { isAbove: true, most: width / 2, because: "half of the width" }, units),
    );
    if (refusal) return refusal;
    const [x, y] = [length / 2, width / 2];
    const [long, short] = [x - cut, y - across];
    // A cut that takes half a side leaves nothing of it: two corners become one.
    const side = (a: readonly [number, number], b: readonly [number, number], size: number) =>
      size > SAME_CORNER ? [a, b] : [a];
    const vertices = [
      ...side([-long, -y], [long, -y], long),
      ...side([x, -short], [x, short], short),
      ...side([long, y], [-long, y], long),
      ...side([-x, short], [-x, -short], short),
    ];
    return { ok: true, outline: { vertices, closed: true } };
  },
};
