/** The table that is being filled in, kept in the browser until it is cleared. */
import { createStore, get, set } from "idb-keyval";
import { emptyTaping, type Taping } from "./taping.ts";

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
function isTaping(value: unknown): value is Taping {
  const empty: object = emptyTaping("stakes");
  if (typeof value !== "object" || value === null) return false;
  const kept = value as Readonly<Record<string, unknown>>;
  if (Object.entries(empty).some(([key, one]) => typeof one === "string" && typeof kept[key] !== "string"))
    return false;
  const { things } = kept;
  return (
    Array.isArray(things) &&
    things.length > 0 &&
    things.every((thing: { rows?: unknown } | null) => Array.isArray(thing?.rows))
  );
}
