/** The named measurements of a finding as people read them. */
import type { Finding, Measured } from "../report.ts";
import { areaText, lengthText, type Units } from "./lengths.ts";

type Quantity = "length" | "area" | "plain";

interface MeasureName {
  readonly words: string;
  readonly quantity: Quantity;
  /** What a `null` says: there is no such measurement. */
  readonly none?: string;
}

const NAMES: Readonly<Record<string, MeasureName>> = {
  horizontal: { words: "straight distance in plan", quantity: "length" },
  path: { words: "shortest path round barriers", quantity: "length", none: "no path: barriers close it off" },
  vertical: { words: "height above the water", quantity: "length" },
  clearance: { words: "clearance in space", quantity: "length" },
  area: { words: "area", quantity: "area" },
  depth: { words: "depth", quantity: "length" },
  offsetMin: { words: "least offset", quantity: "length" },
  offsetMax: { words: "greatest offset", quantity: "length" },
};

/** Fields whose numbers are counts, sizes or ratings, not inches. */
const PLAIN = /awg|size|count|ties|anchors|connections|sections|volts|amps|number|wires|factor|share|joints|bodies/i;

/** What a measurement is called and how its number is written. */
function nameOf(key: string): MeasureName {
  const known = Object.hasOwn(NAMES, key) ? NAMES[key] : undefined;
  if (known) return known;
  const words = key.replace(/([a-z0-9])([A-Z])/g, "$1 $2").toLowerCase();
  const quantity = /area/i.test(key) ? "area" : PLAIN.test(key) ? "plain" : "length";
  return { words, quantity };
}

/** One measured value in words; `apartFrom` as for `lengthText`. */
export function valueText(key: string, value: Measured[string], units: Units, apartFrom?: Measured[string]): string {
  if (value === null || value === undefined) return "none";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value;
  const limit = typeof apartFrom === "number" ? apartFrom : undefined;
  switch (nameOf(key).quantity) {
    case "length":
      return lengthText(value, units, limit);
    case "area":
      return smallArea(value, units);
    case "plain":
      return String(Number(value.toFixed(4)));
  }
}

/** Small wetted areas are spoken of in square inches, yards in square feet. */
function smallArea(value: number, units: Units): string {
  return value < 144 && units !== "m" ? `${Number(value.toFixed(2))} sq in` : areaText(value, units);
}

/** Every number of a finding as `name value (limit value)`, in the finding's own order. */
export function measuredTexts(
  finding: Pick<Finding, "measured" | "required" | "extent">,
  units: Units = "ft-in",
): string[] {
  const texts: string[] = [];
  for (const [key, value] of Object.entries(finding.measured)) {
    const { words, none } = nameOf(key);
    const limit = finding.required[key];
    const hasLimit = limit !== undefined && limit !== null;
    const shown = value === null && none ? none : `${words} ${valueText(key, value, units, limit)}`;
    texts.push(hasLimit ? `${shown} (limit ${valueText(key, limit, units)})` : shown);
  }
  for (const [key, limit] of Object.entries(finding.required)) {
    if (key in finding.measured || limit === null) continue;
    texts.push(`limit of ${nameOf(key).words} ${valueText(key, limit, units)}`);
  }
  if (finding.extent !== undefined) texts.push(`${lengthText(finding.extent, units)} of it within the limit`);
  return texts;
}
