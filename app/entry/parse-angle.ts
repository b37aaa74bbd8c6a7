/** Angles as people type them, to degrees: `45`, `-22.5`, `30 deg`, `7° 30'`. Counter-clockwise, up to a whole turn either way. */
import { NUMBER, plainSigns, readNumber } from "./typed-text.ts";

export type AngleEntry =
  | { readonly ok: true; readonly degrees: number }
  | { readonly ok: false; readonly reason: string };

const ANGLE = new RegExp(`^([+-]?) ?(${NUMBER}) ?(?:°|deg\\.?|degrees?|d)?(?: ?(${NUMBER}) ?(?:'|min))?$`);

/** The angle that a text says, degrees, or in plain words why it says none. */
export function parseAngle(text: string): AngleEntry {
  const found = ANGLE.exec(plainSigns(text));
  const whole = found && readNumber(found[2] ?? "");
  const minutes = found?.[3] === undefined ? { value: 0 } : readNumber(found[3]);
  if (!found || !whole || !minutes) {
    return { ok: false, reason: `"${text.trim()}" cannot be read as an angle. Type it as 45 or 45 deg.` };
  }
  if (minutes.value >= 60) return { ok: false, reason: "Minutes of an angle go up to 60." };
  const degrees = whole.value + minutes.value / 60;
  if (degrees > 360) return { ok: false, reason: "An angle is at most 360 degrees." };
  return { ok: true, degrees: found[1] === "-" ? 0 - degrees : degrees };
}
