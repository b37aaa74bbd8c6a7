/** The value of a number, list or switch of the code as people type it. */
import type { ParameterValue } from "../../rules/editions/edition.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { lengthEntry } from "./length-entry.ts";
import { parseLength } from "./parse-length.ts";
import { parseQuantity, type QuantityKind } from "./parse-quantity.ts";

export type ParameterEntry =
  | { readonly ok: true; readonly value: ParameterValue }
  | { readonly ok: false; readonly reason: string };

const KINDS: Readonly<Record<string, QuantityKind>> = {
  AWG: "gauge",
  A: "amps",
  V: "volts",
  count: "count",
  factor: "number",
  "sq in": "area",
};

/** Reads what was typed for a parameter of the given unit (as editions name it); nothing is negative. */
export function parseParameter(text: string, unit: string, units: Units = "ft-in"): ParameterEntry {
  const plain = text.trim();
  if (plain === "") return { ok: false, reason: "Type a value." };
  switch (unit) {
    case "in": {
      const read = parseLength(plain, units);
      return read.ok ? { ok: true, value: read.inches } : read;
    }
    case "yes/no":
      if (/^y(es)?$/i.test(plain)) return { ok: true, value: true };
      return /^no?$/i.test(plain) ? { ok: true, value: false } : { ok: false, reason: "Answer yes or no." };
    case "list":
      return {
        ok: true,
        value: plain
          .split(",")
          .map(wordOf)
          .filter((word) => word !== ""),
      };
    case "word":
      return { ok: true, value: wordOf(plain) };
    default:
      return parseQuantity(plain, KINDS[unit] ?? "number", { least: 0 });
  }
}

/** Words of the code's lists are written with hyphens: `exothermic weld` as `exothermic-weld`. */
function wordOf(text: string): string {
  return text.trim().toLowerCase().replaceAll(/\s+/g, "-");
}

/** The value as it would be typed. */
export function parameterEntry(value: ParameterValue, unit: string, units: Units = "ft-in"): string {
  if (value === null) return "";
  if (typeof value === "number") return unit === "in" ? lengthEntry(value, units) : String(value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "string" ? value : value.join(", ");
}
