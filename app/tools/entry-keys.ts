/** Keys that go to the tool although the entry bar has them: nothing is typed yet that they could belong to. */
import type { SideShape } from "./side-shape.ts";
import type { Entry } from "./tool.ts";

/** The key that makes the next side one of a sort; pressed again, straight. */
export const SIDE_KEYS: Readonly<Record<SideShape, string>> = { straight: "", smooth: "A", radius: "R", through: "T" };
/** Bends an arc by radius to the other side. */
export const TURN_KEY = "V";
/** Has a copy mirrored over a drawn line, or the original itself again. */
export const KEEPS_ORIGINAL = "K";

/**
 * The key that the tool is given for one pressed in an empty field: how the next side is, what a button of the bar stands
 * for, what was placed last taken back. Null: it belongs into the field. No length begins with one of these letters, and no direction.
 */
export function toolKeyFor({ side, buttons = [] }: Entry, key: string, canTakeBack: boolean): string | null {
  if (key === "Backspace") return canTakeBack ? key : null;
  const letter = key.toUpperCase();
  if (!/^[A-Z]$/.test(letter)) return null;
  const isOfSide =
    side && (Object.values(SIDE_KEYS).includes(letter) || (letter === TURN_KEY && side.shape === "radius"));
  const isOfButton = buttons.some((button) => button.key.toUpperCase() === letter);
  return isOfSide || isOfButton ? letter.toLowerCase() : null;
}
