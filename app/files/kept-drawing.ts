/**
 * A drawing that is under way, corner by corner, kept beside the record of the site that it is drawn on, so that it too
 * comes back when the page goes. It is no step of the document yet: what the tool had begun is kept, as the tool gave it.
 */
import { drawingKey } from "./kept-records.ts";
import { type KeptStore, storeProblem } from "./kept-store.ts";

export interface KeptDrawing {
  readonly tool: string;
  /** What the tool had begun: plain data. */
  readonly begun: unknown;
}

export interface DrawingKeeper {
  /** Keeps what is being drawn on the sheet now; null: nothing is, and what was kept is forgotten at once. */
  keep(drawing: KeptDrawing | null): void;
  /** Whether something is being drawn on the sheet. */
  isUnderWay(): boolean;
  /** The site is about to leave the sheet: what is being drawn on it stays with its record. False: nothing is. */
  leave(): boolean;
  /** Goes on with what was under way on a site when it left the sheet or its page went; false when nothing was. */
  goOn(record: string): Promise<boolean>;
}

interface Options {
  readonly store: KeptStore;
  /** The record of the site on the sheet; null while that is another tab's. */
  readonly recordId: () => string | null;
  readonly tellFailed: (reason: string) => void;
  /** Takes a drawing up; false when it cannot be. */
  readonly takeUp: (drawing: KeptDrawing) => boolean;
}

/** Time between writings, milliseconds. */
const EVERY = 250;

export function createDrawingKeeper({ store, recordId, tellFailed, takeUp }: Options): DrawingKeeper {
  let newest: KeptDrawing | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  /** What the store may hold: its name, and its text where that is known. */
  let held: { readonly key: string; readonly text: string | null } | null = null;

  async function write(): Promise<void> {
    timer = null;
    const record = recordId();
    const text = JSON.stringify(newest);
    if (newest === null || record === null || held?.text === text) return;
    held = { key: drawingKey(record), text };
    await told(store.set(held.key, newest));
  }

  async function told(done: Promise<void>): Promise<void> {
    try {
      await done;
    } catch (error) {
      tellFailed(storeProblem(error));
    }
  }

  return {
    keep(drawing) {
      newest = drawing;
      if (drawing !== null) {
        timer ??= setTimeout(() => void write(), EVERY);
        return;
      }
      if (timer !== null) clearTimeout(timer);
      timer = null;
      const forgotten = held;
      held = null;
      // Of a site that another tab has taken over, what lies there may be that tab's.
      if (forgotten !== null && recordId() !== null) void told(store.delete(forgotten.key));
    },
    isUnderWay: () => newest !== null,
    leave() {
      const drawing = newest;
      const record = recordId();
      if (timer !== null) clearTimeout(timer);
      [timer, newest, held] = [null, null, null];
      if (drawing === null || record === null) return false;
      void told(store.set(drawingKey(record), drawing));
      return true;
    },
    async goOn(record) {
      const key = drawingKey(record);
      const found = await store.get(key);
      // Another site may have been put on the sheet meanwhile, or something else be drawn on this one.
      if (!isKeptDrawing(found) || recordId() !== record || newest !== null) return false;
      held = { key, text: null };
      return takeUp(found);
    },
  };
}

function isKeptDrawing(value: unknown): value is KeptDrawing {
  if (typeof value !== "object" || value === null) return false;
  const { tool, begun } = value as Readonly<Record<string, unknown>>;
  return typeof tool === "string" && typeof begun === "object" && begun !== null;
}
