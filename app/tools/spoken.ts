/** What the crosshair has come to, in words, for those who do not see the sheet. */
import type { Point } from "../../geometry/types.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { placeWords } from "./measures.ts";
import type { OverlayShape } from "./tool.ts";

/**
 * `10' 0" right, 2' 0" up; 12' 0"; corner of Pool.`: where it stands, what is measured to there, what it snapped to.
 * `what`: the place that it was taken to, which is told first.
 */
export function crosshairWords(at: Point, shapes: readonly OverlayShape[], units: Units, what?: string): string {
  const cursor = shapes.find((shape) => shape.kind === "cursor");
  const words = shapes.flatMap((shape) =>
    shape.kind === "measure" ? [shape.text] : shape.kind === "words" ? shape.lines : [],
  );
  const told = [placeWords(cursor?.at ?? at, units), ...words.filter((word) => word !== what)];
  return `${[...(what === undefined ? [] : [capitalized(what)]), ...told].join("; ")}.`;
}
