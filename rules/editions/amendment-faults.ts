/** Why a local amendment cannot act: what it names, kind and size of its value, what it makes of limits that go in pairs. */
import { LARGEST_NUMBER, MOST_TIES } from "../site/limits.ts";
import type { Amendment } from "../site/site.ts";
import { EDITION_IDS, type Edition, type EditionId } from "./edition.ts";
import type { ParameterId, ParameterTable } from "./parameter-types.ts";

type Editions = Readonly<Record<EditionId, Edition & { readonly parameters: ParameterTable }>>;

/** The most that a number may be where that is less than the site format's own bound. */
const MOST: Partial<Record<ParameterId, number>> = { "perimeter.ties": MOST_TIES };
/** What something is measured from, where only these can be measured. */
const WORDS: Partial<Record<ParameterId, readonly string[]>> = { "ring.coverFrom": ["subgrade", "grade"] };
/** Meshes are counted wire by wire, inches: nothing nearer together is a mesh. Basis: judgement. */
const LEAST_MESH = 1;
const MESHES: readonly ParameterId[] = ["grid.spacing", "shell.gridSpacing", "grid.rollWidth"];
/** A least value and the greatest that it goes with. */
const PAIRS: readonly (readonly [ParameterId, ParameterId])[] = [
  ["ring.min", "ring.max"],
  ["ring.coverMin", "ring.coverMax"],
  ["grid.coverMin", "grid.coverMax"],
  ["receptacle.requiredFrom", "receptacle.requiredTo"],
  ["luminaire.near", "luminaire.outerTo"],
  ["lens.listedMin", "lens.depth"],
];

/** What is wrong with an amendment of an edition's parameters by itself; null where it can act. */
export function amendmentFault(amendment: Amendment, table: ParameterTable, editions: Editions): string | null {
  if (!Object.hasOwn(table, amendment.parameter)) return "it names no parameter of this edition";
  const id = amendment.parameter as ParameterId;
  const { unit } = table[id];
  const { value } = amendment;
  // Where one of the editions writes nothing, nothing may be written here too.
  if (value === null && EDITION_IDS.some((edition) => editions[edition].parameters[id].value === null)) return null;
  if (unit === "yes/no") return typeof value === "boolean" ? null : "its value should be true or false";
  if (unit === "list") return Array.isArray(value) ? null : "its value should be a list";
  if (unit === "word") {
    const words = WORDS[id];
    if (typeof value !== "string") return "its value should be a word";
    return words && !words.includes(value) ? `its value should be ${words.join(" or ")}` : null;
  }
  if (typeof value !== "number") return "its value should be a number";
  if (value < 0) return "its value should not be negative";
  const most = MOST[id] ?? LARGEST_NUMBER;
  if (value > most) return `its value should be at most ${most.toLocaleString("en-US")}`;
  if (MESHES.includes(id) && value < LEAST_MESH) return `its value should be at least ${LEAST_MESH} in.`;
  return null;
}

/** The pairs of limits whose least value the amended parameters make larger than their greatest. */
export function crossedPairs(table: ParameterTable): (readonly [ParameterId, ParameterId])[] {
  return PAIRS.filter(([least, most]) => {
    const [a, b] = [table[least].value, table[most].value];
    return typeof a === "number" && typeof b === "number" && a > b;
  });
}
