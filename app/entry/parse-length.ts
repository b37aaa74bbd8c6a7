/**
 * Lengths as people type them, to inches: `16' 6 1/2"`, `16'-6.5"`, `16 ft 6 in`, `198in`, `5.03m`, `503 cm`, and a
 * bare number in the unit that the site shows lengths in.
 *
 * Terms. A term is a number with its unit. Feet may be followed by inches, with or without their mark; any other term
 * stands alone. Nothing is guessed: two bare numbers side by side are refused.
 */
import { LARGEST_NUMBER } from "../../rules/site/limits.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { NUMBER, plainSigns, readNumber } from "./typed-text.ts";

export type LengthEntry =
  | { readonly ok: true; readonly inches: number }
  | { readonly ok: false; readonly reason: string };

export interface LengthRule {
  /** Levels may lie below the datum. */
  readonly mayBeNegative?: boolean;
}

type Unit = "ft" | "in" | "m" | "cm" | "mm";

const UNIT_WORDS: Readonly<Record<string, Unit>> = {
  "'": "ft",
  ft: "ft",
  "ft.": "ft",
  foot: "ft",
  feet: "ft",
  '"': "in",
  in: "in",
  "in.": "in",
  inch: "in",
  inches: "in",
  m: "m",
  meter: "m",
  meters: "m",
  metre: "m",
  metres: "m",
  cm: "cm",
  mm: "mm",
};

/** A bare number is in the unit that lengths are shown in. */
const BARE: Readonly<Record<Units, Unit>> = { "ft-in": "ft", ft: "ft", in: "in", m: "m" };

const TERM = new RegExp(`^(${NUMBER}) ?('|"|[a-z]+\\.?)?(?: ?- ?(?=[\\d.])| )?`);

/** The length that a text says, inches, or in plain words why it says none. */
export function parseLength(text: string, units: Units = "ft-in", rule: LengthRule = {}): LengthEntry {
  const plain = plainSigns(text);
  if (plain === "") return no("Type a length.");
  const sign = /^([+-]) ?/.exec(plain);
  const terms = termsOf(sign ? plain.slice(sign[0].length) : plain);
  if (typeof terms === "string") return no(terms);
  const size = sizeOf(terms, BARE[units]);
  if (typeof size === "string") return no(size);
  const inches = sign?.[1] === "-" && size !== 0 ? -size : size;
  if (inches < 0 && !rule.mayBeNegative) return no("A length cannot be below zero.");
  if (size > LARGEST_NUMBER) {
    return no(`That is farther than a site may reach (${LARGEST_NUMBER.toLocaleString("en-US")} in.).`);
  }
  return { ok: true, inches };
}

interface Term {
  readonly value: number;
  readonly isWhole: boolean;
  readonly unit: Unit | null;
}

function termsOf(text: string): Term[] | string {
  const terms: Term[] = [];
  let rest = text;
  while (rest !== "") {
    const found = TERM.exec(rest);
    if (!found || found[0] === "") return notUnderstood(rest);
    const [all, number = "", word] = found;
    const value = readNumber(number);
    if (!value) return "A fraction needs a number other than zero below its line.";
    const unit = word === undefined ? null : Object.hasOwn(UNIT_WORDS, word) ? UNIT_WORDS[word] : undefined;
    if (unit === undefined) return `"${word}" is no unit of length here: use ft, in, m, cm or mm.`;
    terms.push({ ...value, unit });
    rest = rest.slice(all.length);
  }
  return terms;
}

function notUnderstood(rest: string): string {
  if (/^,\d/.test(rest)) return "Use a point for decimals: 5.03.";
  return `"${rest}" cannot be read as a length. Type it as 16' 6 1/2", 16.5, 198in or 5.03m.`;
}

function sizeOf(terms: readonly Term[], bare: Unit): number | string {
  const [first, second, third] = terms;
  if (!first) return "Type a length.";
  if (third) return "A length has feet and inches, nothing more.";
  if (!second) return inInches(first.value, first.unit ?? bare);
  if (first.unit === null) return `Mark the feet and the inches: 16' 6".`;
  if (first.unit !== "ft" || (second.unit !== "in" && second.unit !== null)) {
    return "Only feet can be followed by more, and only by inches.";
  }
  if (!first.isWhole) return "Feet with a fraction cannot be followed by inches.";
  return first.value * 12 + second.value;
}

/** One meter is 1/0.0254 in. by the definition of the inch (NIST Special Publication 811, appendix B). */
function inInches(value: number, unit: Unit): number {
  switch (unit) {
    case "ft":
      return value * 12;
    case "in":
      return value;
    case "m":
      return value / 0.0254;
    case "cm":
      return value / 2.54;
    case "mm":
      return value / 25.4;
  }
}

function no(reason: string): LengthEntry {
  return { ok: false, reason };
}
