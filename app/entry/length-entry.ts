/** What a field for a length holds when it is about to be edited: a text that reads back as exactly the same length. */
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { parseLength } from "./parse-length.ts";

/**
 * The length as it is shown, when that reads back exactly; else with as many digits as it takes, in the unit that is
 * shown or, where no number of digits does, in inches. Leaving a field untouched never changes a length.
 */
export function lengthEntry(inches: number, units: Units = "ft-in"): string {
  const candidates = [lengthText(inches, units)];
  if (units === "m") candidates.push(`${inches * 0.0254} m`);
  if (units === "ft") candidates.push(`${inches / 12} ft`);
  return candidates.find((text) => readsAs(text, inches, units)) ?? `${plainDigits(inches)}"`;
}

function readsAs(text: string, inches: number, units: Units): boolean {
  const read = parseLength(text, units, { mayBeNegative: true });
  return read.ok && read.inches === inches;
}

/** The number with all its digits and no exponent; numbers of a site are too small to need a positive one. */
function plainDigits(value: number): string {
  const text = String(Object.is(value, -0) ? 0 : value);
  const [digits = "", power] = text.split("e-");
  if (power === undefined) return text;
  const sign = digits.startsWith("-") ? "-" : "";
  return `${sign}0.${"0".repeat(Number(power) - 1)}${digits.replace(/[-.]/g, "")}`;
}
