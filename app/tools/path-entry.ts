/** What can be typed while an outline or line is drawn. */
import { distanceBetween } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { bearingWords } from "./measures.ts";
import type { SideRule } from "./side-shape.ts";
import type { Sketch } from "./sketch.ts";
import { TAKE_BACK, type TakeBack } from "./take-back.ts";
import type { Entry, EntryField } from "./tool.ts";

export interface PathTyping {
  /** Null before the first corner. */
  readonly last: Point | null;
  /** Where the next corner lies now. */
  readonly at: Point;
  /** The radius that the running side has now, inches; null: none. */
  readonly radius: number | null;
  /** Null where the drawing has no arcs. */
  readonly rule: SideRule | null;
  /** A side is already drawn, that an arc can go on from. */
  readonly hasBefore: boolean;
  readonly units: Units;
  readonly finish: string | null;
}

export function pathEntry({ last, at, radius, rule, hasBefore, units, finish }: PathTyping): Entry {
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
    action: awaitsThrough ? "Pass through here" : "Place the corner",
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
