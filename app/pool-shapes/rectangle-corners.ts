/** A rectangle with a radius of its own at each corner. */
import { roundedOutline } from "./corners.ts";
import { type Dimensions, firstOf, outside, type PoolShape, refuse, type ShapeField, sizeOf } from "./shape.ts";

/** Counter-clockwise from the lower left, as drawn unturned. */
const CORNERS = [
  { name: "lowerLeft", label: "Lower left radius", x: -1, y: -1 },
  { name: "lowerRight", label: "Lower right radius", x: 1, y: -1 },
  { name: "upperRight", label: "Upper right radius", x: 1, y: 1 },
  { name: "upperLeft", label: "Upper left radius", x: -1, y: 1 },
] as const;

const radii: readonly ShapeField[] = CORNERS.map(({ name, label }, i) => ({
  name,
  label,
  type: "length",
  start: i < 2 ? 0 : 48,
  help: "Of this corner; zero keeps it sharp.",
}));

export const rectangleCorners: PoolShape = {
  id: "rectangle-corners",
  label: "Rectangle, corners apart",
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
    ...radii,
  ],
  outline(d, units) {
    const [length, width] = [sizeOf(d, "length"), sizeOf(d, "width")];
    const refusal = firstOf(
      outside(rectangleCorners, d, "length", { isAbove: true }, units),
      outside(rectangleCorners, d, "width", { isAbove: true }, units),
      ...CORNERS.map(({ name }) => outside(rectangleCorners, d, name, {}, units)),
      ...CORNERS.map((_, i) => tooLong(d, i, i % 2 === 0 ? length : width, units)),
    );
    if (refusal) return refusal;
    const outline = roundedOutline(
      CORNERS.map(({ name, x, y }) => ({ at: [(x * length) / 2, (y * width) / 2], radius: sizeOf(d, name) })),
    );
    return outline ? { ok: true, outline } : refuse(rectangleCorners, "upperRight", "is too large for these sides.");
  },
};

/** Two radii along one side are together at most that side. */
function tooLong(d: Dimensions, index: number, side: number, units: Parameters<PoolShape["outline"]>[1]) {
  const corner = CORNERS[index];
  const next = CORNERS[(index + 1) % CORNERS.length];
  if (!corner || !next) return null;
  const other = sizeOf(d, corner.name);
  const what = index % 2 === 0 ? "the length" : "the width";
  const because = `${what} less the ${corner.label.toLowerCase()}`;
  // With the other radius alone too large, no radius here would do: that one is named.
  if (other > side) return outside(rectangleCorners, d, corner.name, { most: side, because: what }, units);
  return outside(rectangleCorners, d, next.name, { most: side - other, because }, units);
}
