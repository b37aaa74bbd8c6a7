/** The barriers of one measure as plain lists: those that count, those that surely do, and those that do at most. */
import type { Barrier } from "../../geometry/types.ts";
import type { BarrierModel, BarrierSet } from "./barriers.ts";
import type { BarrierChoice } from "./yard-types.ts";

export interface BarrierLists extends Readonly<Record<BarrierChoice, readonly Barrier[]>> {
  readonly set: BarrierSet;
}

export function listsOf(set: BarrierSet): BarrierLists {
  const listOf = (models: readonly BarrierModel[]) => models.flatMap((m) => m.barriers);
  return {
    set,
    counted: listOf(set.counted),
    surely: listOf(set.counted.filter((m) => !set.assumed.has(m.id))),
    "at most": listOf([...set.counted, ...set.possible]),
  };
}
