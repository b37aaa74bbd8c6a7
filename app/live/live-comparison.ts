/**
 * The comparison of two editions that follows the sheet while it is looked at.
 *
 * One request is out at a time; while it is, only the newest waiting one is kept. An answer that is not to the newest
 * request is dropped, and what is shown is marked as old until the newest answer has come.
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

/** The worker starts with the first request. */
export function createComparison(makePort: () => ComparePort): ComparisonStore {
  const store = createStore<ComparisonState>(() => ({ comparison: null, pending: false, failure: null }));
  let port: ComparePort | null = null;
  let turn = 0;
  let busy = false;
  let waiting: CompareRequest | null = null;

  function open(): ComparePort {
    if (port) return port;
    const made = makePort();
    made.onmessage = ({ data }) => {
      busy = false;
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
      busy = false;
      made.terminate();
      if (port === made) port = null;
      store.setState({ pending: waiting !== null, failure: event.message || "The comparison stopped." });
      sendNext();
    };
    port = made;
    return made;
  }

  function sendNext(): void {
    if (busy || waiting === null) return;
    const next = waiting;
    waiting = null;
    busy = true;
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
      port?.terminate();
      port = null;
      busy = false;
      waiting = null;
    },
  });
}
