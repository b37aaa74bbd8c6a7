/**
 * Writes a site as the text of a site file: always the same text for the same site, laid out so that people can read
 * it and two versions can be compared line by line.
 *
 * The document, its list of elements and every element take a line for each entry; anything further inside stays on
 * one line where it fits. Keys keep their order, numbers all their digits, unknown fields and kinds their place.
 */
import type { Site } from "./site.ts";

/** Widest line that a value is kept on, characters. */
const WIDEST_LINE = 120;

/** The text of the site file, ending with a line break. Throws a RangeError at a value that no JSON file can hold. */
export function writeSite(site: Site): string {
  const lines = entriesOf(site).map(([key, value]) => {
    const start = `  ${JSON.stringify(key)}: `;
    const isElements = key === "elements" && Array.isArray(value) && value.length > 0;
    return start + (isElements ? elementList(value) : written(value, 1, start.length + 1));
  });
  return `{\n${lines.join(",\n")}\n}\n`;
}

function elementList(elements: readonly unknown[]): string {
  return `[\n${elements.map((element) => `    ${onLines(element, 2)}`).join(",\n")}\n  ]`;
}

/** The value as it follows `before` characters on its line, its closing bracket indented by `level`. */
function written(value: unknown, level: number, before: number): string {
  return onOneLine(value, WIDEST_LINE - before) ?? onLines(value, level);
}

function onLines(value: unknown, level: number): string {
  if (typeof value !== "object" || value === null) return scalar(value);
  const indent = "  ".repeat(level + 1);
  const lines = entriesOf(value).map(([key, item]) => {
    const start = key === null ? indent : `${indent}${JSON.stringify(key)}: `;
    return `${start}${written(item, level + 1, start.length + 1)}`;
  });
  const [open, close] = Array.isArray(value) ? ["[", "]"] : ["{", "}"];
  return `${open}\n${lines.join(",\n")}\n${"  ".repeat(level)}${close}`;
}

/** The keys (null in a list) and values that are written. A field that is undefined is an absent field. */
function entriesOf(value: object): [string | null, unknown][] {
  if (Array.isArray(value)) return Array.from(value, (item) => [null, item]);
  return Object.entries(value).filter(([, item]) => item !== undefined);
}

/** The value on one line, or null when that takes more than `room` characters. */
function onOneLine(value: unknown, room: number): string | null {
  if (typeof value !== "object" || value === null) {
    const text = scalar(value);
    return text.length <= room ? text : null;
  }
  const isList = Array.isArray(value);
  let left = room - (isList ? 2 : 4);
  const parts: string[] = [];
  for (const [key, item] of entriesOf(value)) {
    const start = key === null ? "" : `${JSON.stringify(key)}: `;
    const part = onOneLine(item, left - start.length);
    if (part === null) return null;
    parts.push(start + part);
    left -= start.length + part.length + 2;
  }
  if (parts.length === 0) return isList ? "[]" : "{}";
  return isList ? `[${parts.join(", ")}]` : `{ ${parts.join(", ")} }`;
}

function scalar(value: unknown): string {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new RangeError(`A site file cannot hold the number ${value}.`);
    return Object.is(value, -0) ? "-0" : String(value);
  }
  if (typeof value === "string" || typeof value === "boolean" || value === null) return JSON.stringify(value);
  throw new RangeError(`A site file cannot hold a value of type ${typeof value}.`);
}
