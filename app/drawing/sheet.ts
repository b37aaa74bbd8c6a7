/** A drawing sheet as data: groups of items, each with the view that brings it onto the paper. */
import type { Bounds, Point } from "../../geometry/types.ts";
import type { Item } from "./scene.ts";

/** Takes positions of a group to points of paper, y up from the sheet's lower left corner: p * scale + origin. */
export interface View {
  readonly scale: number;
  readonly origin: Point;
}

/** Positions that are points of paper already. */
export const PAPER_VIEW: View = { scale: 1, origin: [0, 0] };

export interface Group {
  readonly name: string;
  readonly view: View;
  /** Nothing of the group is shown outside this box, points of paper. */
  readonly clip?: Bounds;
  readonly items: readonly Item[];
}

export interface Sheet {
  /** Points. */
  readonly width: number;
  readonly height: number;
  readonly groups: readonly Group[];
}

/** A text or line of the sheet's own furniture, in points of paper. */
export function paperLine(
  role: Extract<Item, { kind: "shape" }>["role"],
  points: readonly Point[],
  closed = false,
): Item {
  const [first, ...rest] = points;
  if (!first) throw new Error("A line needs a point.");
  return {
    kind: "shape",
    role,
    steps: [
      { step: "move", to: first },
      ...rest.map((to) => ({ step: "line", to }) as const),
      ...(closed ? [{ step: "close" } as const] : []),
    ],
  };
}

export function paperBox(role: Extract<Item, { kind: "shape" }>["role"], box: Bounds): Item {
  const { minX, minY, maxX, maxY } = box;
  return paperLine(
    role,
    [
      [minX, minY],
      [maxX, minY],
      [maxX, maxY],
      [minX, maxY],
    ],
    true,
  );
}
