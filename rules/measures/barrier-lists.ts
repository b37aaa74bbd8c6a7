/** The barriers of one measure as plain lists: those that count, those that surely do, and those that do at most. */
import { segmentMeetsBox } from "../../geometry/points.ts";
import type { Barrier, Bounds, Witness } from "../../geometry/types.ts";
import type { BarrierModel, BarrierSet } from "./barriers.ts";
import { boxOfBarrier } from "./boxes.ts";
import type { BarrierChoice } from "./yard-types.ts";

export interface BarrierLists extends Readonly<Record<BarrierChoice, readonly Barrier[]>> {
  readonly set: BarrierSet;
  readonly boxes: Readonly<Record<BarrierChoice, readonly Bounds[]>>;
}

export function listsOf(set: BarrierSet): BarrierLists {
  const listOf = (models: readonly BarrierModel[]) => models.flatMap((m) => m.barriers);
  const counted = listOf(set.counted);
  const surely = listOf(set.counted.filter((m) => !set.assumed.has(m.id)));
  const atMost = listOf([...set.counted, ...set.possible]);
  const boxes = {
    counted: counted.map(boxOfBarrier),
    surely: surely.map(boxOfBarrier),
    "at most": atMost.map(boxOfBarrier),
  };
  return { set, counted, surely, "at most": atMost, boxes };
}

/** Whether no barrier comes near a straight measurement. */
export function isClear({ boxes }: BarrierLists, which: BarrierChoice, { from, to }: Witness): boolean {
  for (const box of boxes[which]) if (segmentMeetsBox(from, to, box)) return false;
  return true;
}
