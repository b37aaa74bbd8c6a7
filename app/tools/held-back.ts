/**
 * Pointer and keys that come while the code of the tool in hand is still being fetched: kept in their order, and handed on
 * once it is there. Moves between two presses count only by where they end.
 */
import type { Point } from "../../geometry/types.ts";
import type { OverlayShape } from "./tool.ts";

interface Input {
  /** Where the sheet was pressed; null: a move, a key or the end of a press. */
  readonly pressedAt: Point | null;
  readonly isMove: boolean;
  /** Does what was asked for. */
  run(): void;
}

export class HeldBack {
  #inputs: Input[] = [];

  hold(run: () => void, { pressedAt = null, isMove = false }: Partial<Omit<Input, "run">> = {}): void {
    if (isMove && this.#inputs.at(-1)?.isMove) this.#inputs.pop();
    this.#inputs.push({ run, pressedAt, isMove });
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

  /** The places that were pressed, so that nobody thinks that they were missed. */
  overlay(): OverlayShape[] {
    const places = this.#inputs.flatMap(({ pressedAt }) => (pressedAt ? [pressedAt] : []));
    const last = places.at(-1);
    const shapes = places.map((at): OverlayShape => ({ kind: "handle", at, look: "placed" }));
    return last ? [...shapes, { kind: "words", at: last, lines: ["The tool is getting ready"] }] : shapes;
  }
}
