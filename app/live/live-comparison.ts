/**
 * The comparison of two editions that follows the sheet while it is looked at.
 *
 * One request is out at a time; while it is, only the newest waiting one is kept. An answer that is not to the newest
 * request is dropped, and what is shown is marked as old until the newest answer has come. A worker that stops or takes too
 * long is ended: nothing is shown then, and another takes up what is asked next.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { CompareReply, CompareRequest, ShownComparison } from "../workers/compare-messages.ts";

export interface ComparisonState {
  readonly comparison: ShownComparison | null;
  /** A newer one is on its way. */
  readonly pending: boolean;
  readonly failure: string | null;
}

/** The part of a worker that is used here; a test gives its own. */
export interface ComparePort {
  postMessage(message: CompareRequest): void;
  onmessage: ((event: MessageEvent<CompareReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

export type ComparisonStore = StoreApi<ComparisonState> & {
  ask(request: Omit<CompareRequest, "turn">): void;
  close(): void;
};

/** How long one comparison, which is two reports with their routes, may take, milliseconds. */
export const LONGEST = 90_000;

/** The worker starts with the first request. */
export function createComparison(makePort: () => ComparePort): ComparisonStore {
  const store = createStore<ComparisonState>(() => ({ comparison: null, pending: false, failure: null }));
  let port: ComparePort | null = null;
  let turn = 0;
  let busy = false;
  let waiting: CompareRequest | null = null;
  let deadline: ReturnType<typeof setTimeout> | null = null;

  /** The worker is done with its request, or is not waited for any more. */
  function free(): void {
    busy = false;
    if (deadline !== null) clearTimeout(deadline);
    deadline = null;
  }

  function end(): void {
    free();
    port?.terminate();
    port = null;
  }

  function stopped(reason: string): void {
    end();
    store.setState({ comparison: null, pending: waiting !== null, failure: reason });
    sendNext();
  }

  function open(): ComparePort {
    if (port) return port;
    const made = makePort();
    made.onmessage = ({ data }) => {
      if (port !== made) return;
      free();
      if (data.turn === turn) {
        store.setState(
          data.ok
            ? { comparison: data.comparison, pending: false, failure: null }
            : { comparison: null, pending: false, failure: data.message },
        );
      }
      sendNext();
    };
    made.onerror = (event) => {
      if (port === made) stopped(event.message || "The comparison stopped.");
    };
    port = made;
    return made;
  }

  function sendNext(): void {
    if (busy || waiting === null) return;
    const next = waiting;
    waiting = null;
    busy = true;
    deadline = setTimeout(() => stopped("It takes longer than 90 seconds and is given up."), LONGEST);
    open().postMessage(next);
  }

  return Object.assign(store, {
    ask(request: Omit<CompareRequest, "turn">) {
      turn += 1;
      waiting = { ...request, turn };
      store.setState({ pending: true });
      sendNext();
    },
    close() {
      end();
      waiting = null;
    },
  });
}
