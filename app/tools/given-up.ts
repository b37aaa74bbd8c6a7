/** A drawing that was given up before it was ended, by Escape or for another tool: it can be taken up again on the same sheet. */
import type { ToolId } from "../view/view-store.ts";
import type { HostPorts } from "./host-ports.ts";
import type { Tool } from "./tool.ts";

/** The command that takes it up again. */
export const TAKE_UP = "take-up-drawing";

interface Kept {
  readonly id: ToolId;
  readonly begun: unknown;
  /** The site that it was drawn on, by when that came onto the sheet. */
  readonly opened: number;
}

export class GivenUp {
  readonly #ports: HostPorts;
  #kept: Kept | null = null;
  /** The site that the drawing under way was begun on. */
  #since = 0;

  constructor(ports: HostPorts) {
    this.#ports = ports;
  }

  get #opened(): number {
    return this.#ports.document.getState().opened;
  }

  /** Looks at the tool in hand after each change of it. */
  watch(tool: Tool): void {
    if (!tool.begun?.()) this.#since = this.#opened;
  }

  /** Keeps what the tool has begun, before that is given up, and says how it comes back. */
  keep(tool: Tool): void {
    const begun = tool.begun?.() ?? null;
    if (begun === null || this.#since !== this.#opened) return;
    this.#kept = { id: tool.id, begun, opened: this.#opened };
    this.#ports.view.getState().say("The drawing was given up.", "plain", [TAKE_UP]);
  }

  get isThere(): boolean {
    return this.#kept?.opened === this.#opened;
  }

  /** What was kept, which is then forgotten here; null: nothing on this site. */
  release(): Pick<Kept, "id" | "begun"> | null {
    const kept = this.isThere ? this.#kept : null;
    this.#kept = null;
    return kept;
  }
}
