/** Every way in which a number, list or switch of an edition is made wrong, one at a time. */
import { EDITION_IDS, type EditionId, type Parameter, type ParameterValue } from "../../rules/editions/edition.ts";
import { EDITIONS } from "../../rules/editions/in-force.ts";
import type { ParameterId } from "../../rules/editions/parameter-types.ts";

export interface Mutant {
  readonly edition: EditionId;
  readonly id: ParameterId;
  readonly value: ParameterValue;
  /** What was done: `60 -> 66`. */
  readonly says: string;
}

/** A number one more and less, and a tenth where it is no whole count; a switch turned; a list without each of its entries; null where another edition has a value. */
export function mutants(): Mutant[] {
  return EDITION_IDS.flatMap((edition) =>
    Object.entries(EDITIONS[edition].parameters).flatMap(([id, parameter]) =>
      valuesInstead(id as ParameterId, parameter).map((value) => ({
        edition,
        id: id as ParameterId,
        value,
        says: `${JSON.stringify(parameter.value)} -> ${JSON.stringify(value)}`,
      })),
    ),
  );
}

function valuesInstead(id: ParameterId, { value, unit }: Parameter): ParameterValue[] {
  if (typeof value === "number") {
    const steps = unit === "count" || unit === "AWG" ? [] : [value * 1.1, value * 0.9];
    return [...new Set([...steps, value + 1, value - 1])].filter((other) => other > 0);
  }
  if (typeof value === "boolean") return [!value];
  if (Array.isArray(value)) return value.map((_, i) => value.filter((_, j) => j !== i));
  // Nothing is written, or a word stands there: what another edition writes instead.
  const others = EDITION_IDS.map((other) => EDITIONS[other].parameters[id].value as ParameterValue);
  return [...new Set(others.filter((other) => JSON.stringify(other) !== JSON.stringify(value)))];
}
