/** A circle. */
import { outside, type PoolShape, sizeOf } from "./shape.ts";

export const round: PoolShape = {
  id: "round",
  label: "Round",
  fields: [
    { name: "diameter", label: "Diameter", type: "length", start: 96, help: "From inside wall to inside wall." },
  ],
  outline(d, units) {
    const refusal = outside(round, d, "diameter", { isAbove: true }, units);
    if (refusal) return refusal;
    const radius = sizeOf(d, "diameter") / 2;
    // Four quarter circles: a corner to snap to at each side.
    const quarter = Math.tan(Math.PI / 8);
    return {
      ok: true,
      outline: {
        vertices: [
          [radius, 0, quarter],
          [0, radius, quarter],
          [-radius, 0, quarter],
          [0, -radius, quarter],
        ],
        closed: true,
      },
    };
  },
};
