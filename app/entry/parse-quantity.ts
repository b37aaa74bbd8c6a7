/** Numbers that are no lengths: counts, amperes, volts, gauges, areas. */
import { areaText, type Units } from "../../rules/words/lengths.ts";
import { NUMBER, plainSigns, readNumber } from "./typed-text.ts";

export type QuantityEntry =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly reason: string };

/** What a number counts. An area is typed in square inches unless it says `sq ft`, `sq m` or `sq cm`. */
export type QuantityKind = "number" | "count" | "amps" | "volts" | "gauge" | "area";

const WORDS: Readonly<Record<QuantityKind, Readonly<Record<string, number>>>> = {
  number: {},
  count: {},
  amps: { a: 1, amp: 1, amps: 1 },
  volts: { v: 1, volt: 1, volts: 1 },
  gauge: { awg: 1, gauge: 1 },
  area: {
    "sq in": 1,
    "sq in.": 1,
    in2: 1,
    "in²": 1,
    "sq ft": 144,
    "sq ft.": 144,
    ft2: 144,
    "ft²": 144,
    "sq cm": 1 / 2.54 ** 2,
    cm2: 1 / 2.54 ** 2,
    "cm²": 1 / 2.54 ** 2,
    "sq m": 1 / 0.0254 ** 2,
    m2: 1 / 0.0254 ** 2,
    "m²": 1 / 0.0254 ** 2,
  },
};

const QUANTITY = new RegExp(`^([+-]?) ?#?(${NUMBER}) ?(.*)$`);

export interface QuantityRule {
  readonly least?: number | null;
  readonly most?: number | null;
}

/** The number that a text says, in the file's own unit, or in plain words why it says none. */
export function parseQuantity(text: string, kind: QuantityKind = "number", rule: QuantityRule = {}): QuantityEntry {
  const plain = plainSigns(text);
  if (plain === "") return no("Type a number.");
  const found = QUANTITY.exec(plain);
  if (!found) return no(`"${text.trim()}" cannot be read as a number.`);
  const [, sign, digits = "", word = ""] = found;
  const number = readNumber(digits);
  if (!number) return no("A fraction needs a number other than zero below its line.");
  const factor = word === "" ? 1 : Object.hasOwn(WORDS[kind], word) ? WORDS[kind][word] : undefined;
  if (factor === undefined)
    return no(/^,\d/.test(word) ? "Use a point for decimals: 5.03." : `"${word}" does not fit here.`);
  const value = number.value * factor * (sign === "-" && number.value !== 0 ? -1 : 1);
  if (!Number.isFinite(value)) return no("That is more than can be counted.");
  if (kind === "count" && !Number.isInteger(value)) return no("This has to be a whole number.");
  const { least = null, most = null } = rule;
  if (least !== null && value < least) return no(`This has to be at least ${least.toLocaleString("en-US")}.`);
  if (most !== null && value > most) return no(`This has to be at most ${most.toLocaleString("en-US")}.`);
  return { ok: true, value };
}

/** An area of a part as it is shown: small ones in square inches, as they are typed. */
export function partAreaText(squareInches: number, units: Units = "ft-in"): string {
  if (units === "m") return `${trimmed((squareInches * 2.54 ** 2).toFixed(1))} sq cm`;
  return squareInches < 1440 ? `${trimmed(squareInches.toFixed(2))} sq in.` : areaText(squareInches, units);
}

function trimmed(text: string): string {
  return text.includes(".") ? text.replace(/0+$/, "").replace(/\.$/, "") : text;
}

function no(reason: string): QuantityEntry {
  return { ok: false, reason };
}
