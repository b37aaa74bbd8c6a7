/** What is shown over the plan while an outline or line is drawn: its sides, the running one with its measure, and words. */
import { pathFrom } from "../../geometry/outline.ts";
import type { Edge, Point } from "../../geometry/types.ts";
import type { Units } from "../../rules/words/lengths.ts";
import type { Guide } from "../snapping/snap.ts";
import { sideWords, sizeWords } from "./measures.ts";
import { rectanglePath } from "./rectangle-path.ts";
import { firstCorner, lastCorner, type Sketch, sidesOf } from "./sketch.ts";
import type { OverlayShape } from "./tool.ts";

/** A rectangle being stretched, with its size. */
export function stretchedOverlay(first: Point, to: Point, reason: string | null, units: Units): OverlayShape[] {
  return [
    { kind: "edges", edges: pathFrom(rectanglePath(first, to)).edges, look: "ghost" },
    { kind: "handle", at: first, look: "placed" },
    { kind: "cursor", at: to, isSnapped: reason !== null },
    { kind: "words", at: to, lines: [sizeWords(first, to, units), ...(reason === null ? [] : [reason])] },
  ];
}

export interface PathDrawing {
  readonly sketch: Sketch;
  readonly isOutline: boolean;
  readonly isClosing: boolean;
  readonly canClose: boolean;
  /** The running side; null while there is none. */
  readonly run: Edge | null;
  /** Where the next corner would lie. */
  readonly to: Point | null;
  /** Why it cannot. */
  readonly problem: string | null;
  /** The point that an arc passes. */
  readonly through: Point | null;
  /** A corner was just placed and the pointer is still down. */
  readonly isPressing: boolean;
  readonly guides: readonly Guide[];
  /** What drew the place, in words. */
  readonly reason: string | null;
  readonly units: Units;
}

export function pathOverlay(drawing: PathDrawing): OverlayShape[] {
  const { sketch, isOutline, isClosing, canClose, run, to, problem, through, isPressing, reason, units } = drawing;
  const shapes: OverlayShape[] = [];
  const first = firstCorner(sketch);
  const sides = sidesOf(sketch);
  const ghost = run ? [...sides, run] : sides;
  if (ghost.length > 0) shapes.push({ kind: "edges", edges: ghost, look: "ghost" });
  if (isOutline && first && ghost.length > 1 && !isClosing) {
    const from = ghost[ghost.length - 1]?.to ?? first;
    shapes.push({ kind: "edges", edges: [{ kind: "line", from, to: first }], look: "closing" });
  }
  for (const [from, end] of drawing.guides) {
    shapes.push({ kind: "edges", edges: [{ kind: "line", from, to: end }], look: "guide" });
  }
  for (const [x, y] of sketch.corners) shapes.push({ kind: "handle", at: [x, y], look: "placed" });
  if (through) shapes.push({ kind: "handle", at: through, look: "middle" });
  if (first && canClose) shapes.push({ kind: "handle", at: first, look: isClosing ? "active" : "corner" });
  const measured = isPressing ? sides[sides.length - 1] : run;
  if (measured && !isClosing) shapes.push({ kind: "measure", edge: measured, text: sideWords(measured, units) });
  if (!to || isPressing) return shapes;
  shapes.push({ kind: "cursor", at: to, isSnapped: reason !== null });
  if (problem !== null) shapes.push({ kind: "words", at: to, lines: [problem], isProblem: true });
  else if (lastCorner(sketch) || reason !== null) {
    shapes.push({ kind: "words", at: to, lines: reason === null ? [] : [reason] });
  }
  return shapes;
}
