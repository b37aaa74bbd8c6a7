/**
 * Pointer and keys that come while the code of the tool in hand is still being fetched: kept in their order, and handed on
 * once it is there. Moves between two presses count only by where they end.
 */
import type { Point } from "../../geometry/types.ts";
import { ARROWS } from "./arrows.ts";
import type { Key, OverlayShape } from "./tool.ts";

interface Input {
  /** Where the sheet was pressed; null: a move, a key or the end of a press. */
  readonly pressedAt: Point | null;
  readonly isMove: boolean;
  /** The end of a press. */
  readonly isRelease: boolean;
  /** Does what was asked for. */
  run(): void;
}

/** Whether a key waits for the tool. Escape gives up; those that lead through the page, or are only held, are never a tool's. */
export function mayWait({ key }: Key): boolean {
  return key.length === 1 || key === "Enter" || key === "Backspace" || key === "Delete" || key in ARROWS;
}

export class HeldBack {
  #inputs: Input[] = [];

  hold(
    run: () => void,
    { pressedAt = null, isMove = false, isRelease = false }: Partial<Omit<Input, "run">> = {},
  ): void {
    if (isMove && this.#inputs.at(-1)?.isMove) this.#inputs.pop();
    this.#inputs.push({ run, pressedAt, isMove, isRelease });
  }

  /** Hands everything on; what has to wait again, for another tool, keeps its order. */
  deliver(): void {
    for (const { run } of this.#inputs.splice(0)) run();
  }

  /** Whether anything would be lost: more than moves. */
  get isWorth(): boolean {
    return this.#inputs.some(({ isMove }) => !isMove);
  }

  /** Gives everything up; false when that was nothing but moves. */
  clear(): boolean {
    const had = this.isWorth;
    this.#inputs = [];
    return had;
  }

  /** Gives up the last press or key, with what came after it. */
  dropLast(): void {
    const at = this.#inputs.findLastIndex(({ pressedAt }) => pressedAt !== null);
    const last = at >= 0 ? at : this.#inputs.findLastIndex(({ isMove }) => !isMove);
    if (last >= 0) this.#inputs.splice(last);
  }

  /** Gives up the press that has not ended, as when a second finger comes down. */
  abandonPress(): void {
    const at = this.#inputs.findLastIndex(({ pressedAt, isRelease }) => pressedAt !== null || isRelease);
    if (at >= 0 && !this.#inputs[at]?.isRelease) this.#inputs.splice(at);
  }

  /** The places that were pressed, so that nobody thinks that they were missed. */
  overlay(): OverlayShape[] {
    const places = this.#inputs.flatMap(({ pressedAt }) => (pressedAt ? [pressedAt] : []));
    const last = places.at(-1);
    const shapes = places.map((at): OverlayShape => ({ kind: "handle", at, look: "placed" }));
    return last ? [...shapes, { kind: "words", at: last, lines: ["The tool is getting ready"] }] : shapes;
  }
}
