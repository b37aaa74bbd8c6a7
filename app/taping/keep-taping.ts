/** The table that is being filled in, kept in the browser until it is cleared. */
import { createStore, get, set } from "idb-keyval";
import { DRAWABLES, emptyRow, emptyTaping, type Taping } from "./taping.ts";

const KEY = "table";
let store: ReturnType<typeof createStore> | null = null;

function opened(): ReturnType<typeof createStore> {
  store ??= createStore("copperband-taping", "tables");
  return store;
}

/** The kept table, or an empty one. Rejects with the browser's own error when it keeps nothing. */
export async function keptTaping(): Promise<Taping> {
  const kept: unknown = await get(KEY, opened());
  return isTaping(kept) ? kept : emptyTaping("stakes");
}

export async function keepTaping(taping: Taping): Promise<void> {
  await set(KEY, taping, opened());
}

/** A table that another version of the program kept in another shape is not taken. */
export function isTaping(value: unknown): value is Taping {
  if (!isLike(value, emptyTaping("stakes"))) return false;
  const { method, things } = value;
  if (method !== "stakes" && method !== "line") return false;
  return Array.isArray(things) && things.length > 0 && things.every(isThing);
}

function isThing(value: unknown): boolean {
  if (!isLike(value, { tool: "", name: "", rows: [] })) return false;
  const { tool, rows } = value;
  const isRow = (row: unknown) => isLike(row, emptyRow());
  return DRAWABLES.some((one) => one.tool === tool) && Array.isArray(rows) && rows.every(isRow);
}

/** It has every field of the example, each of the same type. */
function isLike(value: unknown, example: object): value is Readonly<Record<string, unknown>> {
  if (typeof value !== "object" || value === null) return false;
  const kept = value as Readonly<Record<string, unknown>>;
  return Object.entries(example).every(([key, one]) => typeof kept[key] === typeof one);
}
