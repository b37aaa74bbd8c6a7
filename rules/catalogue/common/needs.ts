/** What a part needs so that it is reached: how many connections, where, and how far above the ground. */
import { edgeLength, pointAt } from "../../../geometry/edge.ts";
import { flattenPath, pathOfEdges } from "../../../geometry/outline.ts";
import type { Path, Point } from "../../../geometry/types.ts";
import { positionsOf } from "../../measures/shapes.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { KnownElement } from "../../site/elements.ts";
import type { Need } from "../rule.ts";

/** Where a branch may meet an element: positions, the best first, and the lines that they are spread over. */
export type Meeting = Pick<Need, "at" | "along">;

/** The need of a part that a branch may meet at some positions, the best first, or all along some lines. */
export function partNeed(
  yard: Yard,
  element: KnownElement,
  meeting: readonly Point[] | Meeting,
  connections: number,
  lowest: number | null,
): Need {
  const where: Meeting = "length" in meeting ? { at: meeting } : meeting;
  const first = where.at[0];
  const ground = first ? yard.levelAt(first).z : yard.grade;
  return {
    kind: "part",
    elements: [element.id],
    connections: Math.max(1, Math.ceil(connections)),
    ...where,
    drop: lowest === null ? 0 : Math.max(0, lowest - ground),
  };
}

/** Where a branch may meet an element near a body: its point nearest to the water, then what lies within `limit` of it. */
export function meetingPoints(yard: Yard, element: KnownElement, body: Body, limit: number): Meeting {
  const shape = yard.shape(element);
  if (shape.kind === "point") return { at: [shape.at] };
  const nearest = yard.straight(element, body).to;
  const { pieces } = yard.lengthWithin(element, body, limit);
  if (pieces.length === 0) return { at: [nearest, ...positionsOf(shape)] };
  return { at: [nearest, ...pieces.flatMap((piece) => spreadAlong(piece))], along: pieces };
}

/** A piece's corners and evenly between them points no farther apart than a stride, whichever way it is drawn. */
function spreadAlong({ edges }: Path): Point[] {
  const last = edges[edges.length - 1];
  const points = edges.flatMap((edge) => {
    if (edge.kind === "arc") return flattenPath(pathOfEdges([edge], false)).slice(0, -1);
    const strides = Math.max(1, Math.ceil(edgeLength(edge) / STRIDE));
    return Array.from({ length: strides }, (_, i) => pointAt(edge, i / strides));
  });
  return last ? [...points, last.to] : points;
}

/** Spacing of the positions along a line that branches from part to part choose from, inches: finer saves no copper worth counting. */
const STRIDE = 24;

/** The lowest and highest point of an element's z, a single number standing for both. */
export function heightRange(z: number | readonly number[] | undefined): { bottom: number; top: number } | null {
  if (z === undefined) return null;
  if (typeof z === "number") return { bottom: z, top: z };
  const [a, b] = z;
  if (a === undefined || b === undefined) return null;
  return { bottom: Math.min(a, b), top: Math.max(a, b) };
}
