/** Two arms that meet square. */
import { armFields, bentOutline, radiusFields } from "./bent.ts";
import type { PoolShape } from "./shape.ts";

export const trueL: PoolShape = {
  id: "true-l",
  label: "True L",
  fields: [...armFields, ...radiusFields],
  outline: (d, units) => bentOutline(trueL, d, 90, units),
};
