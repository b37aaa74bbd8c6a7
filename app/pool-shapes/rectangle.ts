/** A rectangle, its corners sharp or all of one radius. */
import { roundedOutline } from "./corners.ts";
import { firstOf, outside, type PoolShape, refuse, sizeOf } from "./shape.ts";

export const rectangle: PoolShape = {
  id: "rectangle",
  label: "Rectangle",
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
      name: "radius",
      label: "Corner radius",
      type: "length",
      start: 0,
      help: "Of all four corners; zero keeps them sharp.",
    },
  ],
  outline(d, units) {
    const [length, width, radius] = [sizeOf(d, "length"), sizeOf(d, "width"), sizeOf(d, "radius")];
    const refusal = firstOf(
      outside(rectangle, d, "length", { isAbove: true }, units),
      outside(rectangle, d, "width", { isAbove: true }, units),
      outside(
        rectangle,
        d,
        "radius",
        { most: Math.min(length, width) / 2, because: "half of the shorter side" },
        units,
      ),
    );
    if (refusal) return refusal;
    const [x, y] = [length / 2, width / 2];
    const outline = roundedOutline([
      { at: [-x, -y], radius },
      { at: [x, -y], radius },
      { at: [x, y], radius },
      { at: [-x, y], radius },
    ]);
    return outline ? { ok: true, outline } : refuse(rectangle, "radius", "is too large for these sides.");
  },
};
