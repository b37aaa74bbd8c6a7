/** What can be typed while an outline or line is drawn. */
import { distanceBetween } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { bearingWords } from "./measures.ts";
import type { SideRule } from "./side-shape.ts";
import { lastCorner, type Sketch } from "./sketch.ts";
import { TAKE_BACK, type TakeBack } from "./take-back.ts";
import type { Entry, EntryField } from "./tool.ts";

export interface PathTyping {
  /** Whether it closes: an outline has corners, a line has points. */
  readonly isOutline: boolean;
  /** What is drawn so far. */
  readonly sketch: Sketch;
  /** Where the next corner lies now. */
  readonly at: Point;
  /** The radius that the running side has now, inches; null: none. */
  readonly radius: number | null;
  /** Null where the drawing has no arcs. */
  readonly rule: SideRule | null;
  readonly units: Units;
  readonly finish: string | null;
}

export function pathEntry({ sketch, isOutline, at, radius, rule, units, finish }: PathTyping): Entry {
  const last = lastCorner(sketch);
  // A side is already drawn, that an arc can go on from.
  const hasBefore = sketch.corners.length > 1;
  if (!last) {
    return {
      fields: [
        { name: "right", label: "Right", type: "level", shown: lengthText(at[0], units) },
        { name: "up", label: "Up", type: "level", shown: lengthText(at[1], units) },
      ],
      action: "Begin here",
      finish,
    };
  }
  const fields: EntryField[] = [
    { name: "length", label: "Length", type: "length", shown: lengthText(distanceBetween(last, at), units) },
    { name: "bearing", label: "Direction", type: "bearing", shown: bearingWords(last, at) },
  ];
  if (rule?.shape === "radius" || (rule?.shape === "smooth" && hasBefore)) {
    const shown = radius === null ? "" : lengthText(radius, units);
    const field: EntryField = { name: "radius", label: "Radius", type: "level", shown };
    // Whoever asks for an arc by its radius types that first: figures typed on the sheet go to the first field.
    if (rule.shape === "radius") fields.unshift(field);
    else fields.push(field);
  }
  const awaitsThrough = rule?.shape === "through" && rule.through === null;
  return {
    fields,
    action: awaitsThrough ? "Pass through here" : isOutline ? "Place the corner" : "Place the point",
    side: rule,
    finish,
  };
}

/** What taking back would take of a drawing; null: nothing is placed. */
export function takesBack({ corners }: Sketch, isOutline: boolean, { through }: SideRule): TakeBack | null {
  if (corners.length === 0) return null;
  if (through !== null) return TAKE_BACK.through;
  return isOutline ? TAKE_BACK.corner : TAKE_BACK.point;
}
