/** Every shape by its name. */
import { figureEight } from "./figure-eight.ts";
import { grecian } from "./grecian.ts";
import { kidney } from "./kidney.ts";
import { lazyL } from "./lazy-l.ts";
import { oval } from "./oval.ts";
import { rectangle } from "./rectangle.ts";
import { rectangleCorners } from "./rectangle-corners.ts";
import { doubleRomanEnd, romanEnd } from "./roman-end.ts";
import { round } from "./round.ts";
import type { PoolShape } from "./shape.ts";
import type { PoolShapeId } from "./shape-names.ts";
import { trueL } from "./true-l.ts";

export const SHAPES: Readonly<Record<PoolShapeId, PoolShape>> = {
  rectangle,
  "rectangle-corners": rectangleCorners,
  "roman-end": romanEnd,
  "double-roman-end": doubleRomanEnd,
  grecian,
  oval,
  round,
  kidney,
  "lazy-l": lazyL,
  "true-l": trueL,
  "figure-8": figureEight,
};
