/** Two arms that meet at a wide angle. */
import { armFields, bentOutline, radiusFields } from "./bent.ts";
import { outside, type PoolShape, sizeOf } from "./shape.ts";

export const lazyL: PoolShape = {
  id: "lazy-l",
  label: "Lazy L",
  fields: [
    ...armFields,
    { name: "bend", label: "Bend", type: "angle", start: 45, help: "By how much the leg turns off the main arm." },
    ...radiusFields,
  ],
  outline(d, units) {
    const refusal = outside(lazyL, d, "bend", { least: 5, most: 85 }, units);
    return refusal ?? bentOutline(lazyL, d, sizeOf(d, "bend"), units);
  },
};
