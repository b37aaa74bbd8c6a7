/** What people type, brought to plain signs: primes, fractions, minus signs and spaces as a keyboard or a copied text gives them. */

const FRACTIONS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** The text in small letters with `'`, `"`, `-`, `/`, `1/2` and single spaces for every way of writing them. */
export function plainSigns(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (sign) => ` ${FRACTIONS[sign]} `)
    .replace(/⁄/g, "/")
    .replace(/[″“”„‟〃]|''|’’|′′/g, '"')
    .replace(/[′‘’‛`´]/g, "'")
    .replace(/[−–—‐‑]/g, "-")
    .replace(/[º˚]/g, "°")
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}

/** A number as it was typed, with its value. `isWhole`: digits only, no point and no fraction. */
export interface TypedNumber {
  readonly value: number;
  readonly isWhole: boolean;
}

/** One number: `6`, `6.5`, `.5`, `1/2`, `6 1/2`, `6-1/2`, `1,200`. Source of a regular expression without flags or groups. */
export const NUMBER = String.raw`(?:\d+(?: ?- ?| )\d+ ?/ ?\d+|\d+ ?/ ?\d+|\d{1,3}(?:,\d{3})+(?:\.\d*)?|\d+\.?\d*|\.\d+)`;

/** Reads what NUMBER matches; null when a fraction has nothing below its line. */
export function readNumber(text: string): TypedNumber | null {
  const mixed = /^(?:(\d+)(?: ?- ?| ))?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (!mixed) return { value: Number(text.replaceAll(",", "")), isWhole: !text.includes(".") };
  const bottom = Number(mixed[3]);
  if (bottom === 0) return null;
  return { value: Number(mixed[1] ?? 0) + Number(mixed[2]) / bottom, isWhole: false };
}
