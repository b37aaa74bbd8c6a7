/** The value of a number, list or switch of the code as people read it. */
import type { ParameterValue } from "../editions/edition.ts";
import { lengthText, type Units } from "./lengths.ts";

/** `5' 0"`, `8 AWG`, `yes`, `15, 20`; where the edition writes nothing: `not limited`. */
export function parameterText(value: ParameterValue, unit: string, units: Units = "ft-in"): string {
  if (value === null) return unit === "yes/no" ? "argued" : "not limited";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") {
    if (unit === "in") return lengthText(value, units);
    return unit === "count" || unit === "factor" ? String(value) : `${value} ${unit}`;
  }
  const words = typeof value === "string" ? [value] : value;
  return words.length === 0 ? "none" : words.map((word) => word.replaceAll("-", " ")).join(", ");
}
