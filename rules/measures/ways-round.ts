/** The shortest ways from the inside wall to an element round what stands between, and what they hang on. */
import { shortestPathFromPath, shortestPathToArea } from "../../geometry/paths-around-barriers.ts";
import type { Route, Witness } from "../../geometry/types.ts";
import { type BarrierLists, isClear } from "./barrier-lists.ts";
import type { BarrierSet } from "./barriers.ts";
import type { Shape } from "./shapes.ts";
import type { BarrierChoice, Body, PathMeasure } from "./yard-types.ts";

/** The shortest way from a body to a shape, inches; null where none leads there. `straight`: from the body's water to the shape. */
export function wayRound(
  shape: Shape,
  { water }: Body,
  lists: BarrierLists,
  which: BarrierChoice,
  straight: Witness,
): Route | null {
  // Nothing is shorter than the straight line: where no barrier comes near it, it is the path.
  if (isClear(lists, which, straight)) return { length: straight.length, points: [straight.from, straight.to] };
  const barriers = lists[which];
  if (shape.kind === "point") return shortestPathToArea(shape.at, water, barriers, { straight });
  if (shape.kind === "path") return shortestPathFromPath(shape.path, water, barriers, { straight });
  return shortestPathFromPath(shape.area.outer, water, barriers);
}

/** The way by the barriers that count, by those that surely do and those that do at most, and the facts that tell them apart. */
export function pathMeasure(set: BarrierSet, round: (which: BarrierChoice) => Route | null): PathMeasure {
  const counted = round("counted");
  const surely = set.assumed.size === 0 ? counted : round("surely");
  const atMost = set.possible.length === 0 ? counted : round("at most");
  if (surely === counted && atMost === counted) return { counted, surely, atMost, openFacts: NO_FACTS };
  const openFacts: { element: string; field: string }[] = [];
  if (surely?.length !== counted?.length) {
    for (const m of set.counted)
      if (set.assumed.has(m.id)) for (const field of m.openFacts) openFacts.push({ element: m.id, field });
  }
  if (atMost?.length !== counted?.length) {
    for (const m of set.possible) for (const field of m.openFacts) openFacts.push({ element: m.id, field });
  }
  return { counted, surely, atMost, openFacts };
}

const NO_FACTS = [] as const;
