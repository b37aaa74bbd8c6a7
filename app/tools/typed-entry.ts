/** What is typed into the entry bar while a tool is in hand: texts, what they say, and what is wrong with them. */
import type { Units } from "../../rules/words/lengths.ts";
import { parseAngle } from "../entry/parse-angle.ts";
import { parseBearing } from "../entry/parse-bearing.ts";
import { parseLength } from "../entry/parse-length.ts";
import type { Entry, EntryField, TypedValues } from "./tool.ts";

export type Texts = Readonly<Record<string, string>>;

type Read = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly reason: string };

/** What one field's text says, inches or degrees. */
export function readField(field: EntryField, text: string, units: Units, north: number | undefined): Read {
  if (field.type === "bearing") {
    const read = parseBearing(text, north);
    return read.ok ? { ok: true, value: read.degrees } : read;
  }
  if (field.type === "angle") {
    const read = parseAngle(text);
    return read.ok ? { ok: true, value: read.degrees } : read;
  }
  const read = parseLength(text, units, { mayBeNegative: field.type === "level" });
  return read.ok ? { ok: true, value: read.inches } : read;
}

export interface ReadEntry {
  readonly values: TypedValues;
  /** Why a text cannot be read, by field name. */
  readonly problems: Texts;
}

/** Reads all fields in which something is typed. */
export function readEntry(entry: Entry, texts: Texts, units: Units, north: number | undefined): ReadEntry {
  const values: Record<string, number> = {};
  const problems: Record<string, string> = {};
  for (const field of entry.fields) {
    const text = texts[field.name] ?? "";
    if (text.trim() === "") continue;
    const read = readField(field, text, units, north);
    if (read.ok) values[field.name] = read.value;
    else problems[field.name] = read.reason;
  }
  return { values, problems };
}

/** Whether a key begins a measurement: a digit, a point, or a minus sign where a place may lie below zero. */
export function beginsTyping(key: string, entry: Entry): boolean {
  return /^[\d.]$/.test(key) || (key === "-" && entry.fields[0]?.type === "level");
}
