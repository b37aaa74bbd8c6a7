/**
 * Directions as people type them, to plan angles: degrees counter-clockwise from +x (right), 0 up to 360.
 *
 * A bare number or one with `deg` is a plan angle itself. `N 45 E`, `S 30° 15' W` and the winds (`NE`, `south`) are
 * compass bearings, read by where the site's north points (90, up the sheet, when it is not given).
 */
import { NUMBER, plainSigns, readNumber } from "./typed-text.ts";

export type BearingEntry =
  | { readonly ok: true; readonly degrees: number }
  | { readonly ok: false; readonly reason: string };

export const DEFAULT_NORTH = 90;

/** Clockwise from north. */
const WINDS: Readonly<Record<string, number>> = { n: 0, ne: 45, e: 90, se: 135, s: 180, sw: 225, w: 270, nw: 315 };

const ANGLE = String.raw`(${NUMBER}) ?(?:°|deg\.?|degrees?|d)?(?: ?(${NUMBER}) ?(?:'|min))?(?: ?(${NUMBER}) ?(?:"|sec))?`;
const PLAN = new RegExp(`^([+-]?) ?${ANGLE}$`);
const COMPASS = new RegExp(`^([ns]) ?${ANGLE} ?([ew])$`);

/** The plan angle that a text says, degrees, or in plain words why it says none. */
export function parseBearing(text: string, north: number = DEFAULT_NORTH): BearingEntry {
  const plain = plainSigns(text).replace(/\b(north|south|east|west)\b/g, (word) => word.charAt(0));
  if (plain === "") return no("Type a direction.");
  const word = plain.replace(/[ -]/g, "");
  const wind = Object.hasOwn(WINDS, word) ? WINDS[word] : undefined;
  if (wind !== undefined) return fromNorth(wind, north);
  const compass = COMPASS.exec(plain);
  if (compass) {
    const turned = degreesOf(compass[2], compass[3], compass[4]);
    if (typeof turned === "string") return no(turned);
    if (turned > 90) return no("A compass bearing turns at most 90 degrees from north or south.");
    const east = compass[5] === "e" ? turned : -turned;
    return fromNorth(compass[1] === "n" ? east : 180 - east, north);
  }
  const plan = PLAN.exec(plain);
  if (!plan) return no(`"${text.trim()}" cannot be read as a direction. Type it as 90, 90 deg or N 45 E.`);
  const degrees = degreesOf(plan[2], plan[3], plan[4]);
  if (typeof degrees === "string") return no(degrees);
  if (degrees > 360) return no("A direction lies between 0 and 360 degrees.");
  return { ok: true, degrees: turn(plan[1] === "-" ? -degrees : degrees) };
}

function degreesOf(
  whole: string | undefined,
  minutes: string | undefined,
  seconds: string | undefined,
): number | string {
  const parts = [whole, minutes, seconds].map((part) => (part === undefined ? { value: 0 } : readNumber(part)));
  const [d, m, s] = parts;
  if (!d || !m || !s) return "A fraction needs a number other than zero below its line.";
  if (m.value >= 60 || s.value >= 60) return "Minutes and seconds of an angle go up to 60.";
  return d.value + m.value / 60 + s.value / 3600;
}

function fromNorth(clockwise: number, north: number): BearingEntry {
  return { ok: true, degrees: turn(north - clockwise) };
}

/** Into 0 up to 360; the least angle below zero rounds to a whole turn, which is none. */
function turn(degrees: number): number {
  const within = degrees % 360;
  const turned = within < 0 ? within + 360 : within + 0;
  return turned === 360 ? 0 : turned;
}

function no(reason: string): BearingEntry {
  return { ok: false, reason };
}
