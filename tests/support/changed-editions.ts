/** Editions with other numbers for as long as a piece of work runs: only tests change what the code says. */
import type { EditionId, Parameter, ParameterValue } from "../../rules/editions/edition.ts";
import { EDITIONS } from "../../rules/editions/in-force.ts";
import type { ParameterId } from "../../rules/editions/parameter-types.ts";

type Table = Record<string, Parameter>;

/** Runs the work while one number of an edition has another value, then puts it back. */
export function withValue<T>(edition: EditionId, id: ParameterId, value: ParameterValue, work: () => T): T {
  const table = EDITIONS[edition].parameters as Table;
  const before = table[id] as Parameter;
  table[id] = { ...before, value };
  try {
    return work();
  } finally {
    table[id] = before;
  }
}

/** Which numbers of an edition a piece of work reads the value of. */
export function readsOf(edition: EditionId, work: () => void): Set<ParameterId> {
  const table = EDITIONS[edition].parameters as Table;
  const before = { ...table };
  const read = new Set<ParameterId>();
  for (const [id, parameter] of Object.entries(before)) {
    table[id] = {
      ...parameter,
      get value() {
        read.add(id as ParameterId);
        return parameter.value;
      },
    };
  }
  try {
    work();
  } finally {
    Object.assign(table, before);
  }
  return read;
}
