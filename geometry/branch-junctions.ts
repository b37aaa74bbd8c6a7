import type { BranchDrawing } from "./branch-graph.ts";
import type { BranchGround } from "./branch-ground.ts";

/** Adds joints to the tree. */
export function withJunctions(_ground: BranchGround, drawing: BranchDrawing, _allowance: number): BranchDrawing {
  return drawing;
}
