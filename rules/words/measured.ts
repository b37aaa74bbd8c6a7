/** The named measurements of a finding as people read them. */
import { LIMIT_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Finding, Measured } from "../report.ts";
import { areaText, lengthText, type Units } from "./lengths.ts";

type Quantity = "length" | "area" | "plain" | "awg" | "amps";

interface MeasureName {
  readonly words: string;
  /** Behind a value, where there is little room: `4' 7" in plan`. */
  readonly short: string;
  readonly quantity: Quantity;
  /** What a `null` says. */
  readonly none?: string;
}

/** Measures that are at fault on one side of their limit alone. */
const AT_FAULT: Readonly<Record<string, "over" | "under">> = {
  largestDimension: "over",
  penetration: "over",
  largestGap: "over",
  ties: "under",
  offsetMin: "under",
  offsetMax: "over",
  depthMin: "under",
  depthMax: "over",
  awg: "over",
  tailSize: "over",
  insideBondSize: "over",
  wires: "over",
};

function named(words: string, short: string, quantity: Quantity = "length", none?: string): MeasureName {
  return { words, short, quantity, ...(none === undefined ? {} : { none }) };
}

const NAMES: Readonly<Record<string, MeasureName>> = {
  horizontal: named("straight distance in plan", "in plan"),
  path: named("shortest path round barriers", "round barriers", "length", "no path round the barriers"),
  vertical: named("height above the water", "above the water", "length", "height above the water not known"),
  clearance: named("clearance in space", "in space"),
  area: named("area", "in all", "area"),
  wettedArea: named("metal in the water", "of metal in the water", "area"),
  depth: named("depth", "deep"),
  depthMin: named("least depth", "at least"),
  depthMax: named("greatest depth", "at most"),
  gfci: named("protected by GFCI", "protected by GFCI", "plain"),
  receptacleCount: named("receptacles", "receptacles", "plain"),
  offsetMin: named("least offset", "at least"),
  offsetMax: named("greatest offset", "at most"),
  gap: named("open in the perimeter bonding", "open"),
  largestGap: named("largest gap between ties", "largest gap between ties"),
  width: named("width of the perimeter surface", "wide"),
  rimAbove: named("rim above the ground", "rim above the ground", "length", "rim above the ground not known"),
  largestDimension: named("largest dimension", "largest dimension"),
  penetration: named("reach into the structure", "into the structure"),
  gridSpacing: named("spacing of the grid", "spacing of the grid"),
  gridFromContour: named("grid from the shell's contour", "from the shell's contour"),
  ratedAmps: named("rating", "rating", "amps"),
  insideBondSize: named("bond inside the conduit", "inside the conduit", "awg"),
  awg: named("size of the wire", "wire", "awg"),
  wires: named("wires in the clamp", "in the clamp", "plain"),
  aboveFloor: named("height above the floor", "above the floor"),
  aboveDeck: named("height above the deck", "above the deck"),
  sight: named("distance to its disconnect", "to its disconnect"),
  cover: named("cover", "of cover"),
  underWater: named("length under the water", "under the water"),
  pathFrom: named("shortest way of a cord", "at least, as a cord lies"),
  pathTo: named("longest way of a cord", "at most, as a cord lies"),
  tailSize: named("tail", "tail", "awg"),
};

/** Fields whose numbers are counts or factors, not inches. */
const PLAIN = /size|count|ties|anchors|connections|sections|volts|number|wires|factor|share|joints|bodies/i;

/** What a measurement is called and how its number is written. */
function nameOf(key: string): MeasureName {
  const known = Object.hasOwn(NAMES, key) ? NAMES[key] : undefined;
  if (known) return known;
  const words = key.replace(/([a-z0-9])([A-Z])/g, "$1 $2").toLowerCase();
  const quantity = /awg/i.test(key)
    ? "awg"
    : /amps/i.test(key)
      ? "amps"
      : /area/i.test(key)
        ? "area"
        : PLAIN.test(key)
          ? "plain"
          : "length";
  return named(words, words, quantity);
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
    case "awg":
      return `${value} AWG`;
    case "amps":
      return `${Number(value.toFixed(2))} A`;
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
    const at = placed(key, value, words);
    const shown = value === null && none ? none : `${at.words} ${valueText(key, at.value, units, limit)}`;
    texts.push(hasLimit ? `${shown} (limit ${valueText(key, limit, units)})` : shown);
  }
  for (const [key, limit] of Object.entries(finding.required)) {
    if (key in finding.measured || limit === null) continue;
    texts.push(`asked for: ${nameOf(key).words} ${valueText(key, limit, units)}`);
  }
  if (finding.extent !== undefined) texts.push(`${lengthText(finding.extent, units)} of it within the limit`);
  return texts;
}

/** A height under the water is said as one. */
function placed(
  key: string,
  value: Measured[string],
  words: string,
): { readonly words: string; readonly value: Measured[string] } {
  if (key !== "vertical" || typeof value !== "number" || value >= 0) return { words, value };
  return {
    words: words.replace(/height above|above/, (found) => (found === "above" ? "below" : "depth below")),
    value: -value,
  };
}

/** Only what was held against a limit, in few words, for the sheet and the list: `4' 7" in plan, limit 5' 0"`. */
export function briefTexts(finding: Pick<Finding, "measured" | "required">, units: Units = "ft-in"): string[] {
  return Object.keys(finding.measured).flatMap((key) => briefOf(finding, key, units));
}

/**
 * The one measurement that says most in a row of the list: in a finding that is open, none that keeps its limit where
 * another thing is at fault, and the one that decided before the rest. Empty where no measurement is at fault.
 */
export function decidingText(
  finding: Pick<Finding, "measured" | "required" | "margin" | "outcome">,
  units: Units = "ft-in",
): string {
  const { measured, required, margin, outcome } = finding;
  const keys = Object.keys(measured).filter((key) => briefOf(finding, key, units).length > 0);
  if (outcome === "meets" || outcome === "exempt") return keys.flatMap((key) => briefOf(finding, key, units))[0] ?? "";
  const decides = (key: string) => {
    const [value, limit] = [measured[key], required[key]];
    if (margin === null || typeof value !== "number" || typeof limit !== "number") return false;
    return Math.abs(Math.abs(value - limit) - Math.abs(margin)) <= LIMIT_TOLERANCE;
  };
  const open = keys.filter((key) => !keepsLimit(key, measured[key], required[key]));
  const chosen = open.find(decides) ?? open[0];
  if (chosen !== undefined) return briefOf(finding, chosen, units)[0] ?? "";
  const { gap } = measured;
  return typeof gap === "number" && gap > 0 ? `${lengthText(gap, units)} open` : "";
}

function keepsLimit(key: string, value: Measured[string] | undefined, limit: Measured[string] | undefined): boolean {
  const side = Object.hasOwn(AT_FAULT, key) ? AT_FAULT[key] : undefined;
  if (side === undefined || typeof value !== "number" || typeof limit !== "number") return false;
  return side === "over" ? value <= limit + LIMIT_TOLERANCE : value >= limit - LIMIT_TOLERANCE;
}

function briefOf({ measured, required }: Pick<Finding, "measured" | "required">, key: string, units: Units): string[] {
  const value = measured[key];
  const limit = required[key];
  const isSaidAlready = key === "path" && value === measured.horizontal && required.horizontal !== undefined;
  if (value === undefined || typeof limit !== "number" || isSaidAlready) return [];
  const { short, none } = nameOf(key);
  if (value === null) return none === undefined ? [] : [none];
  const at = placed(key, value, short);
  return [`${valueText(key, at.value, units, limit)} ${at.words}, limit ${valueText(key, limit, units)}`];
}
