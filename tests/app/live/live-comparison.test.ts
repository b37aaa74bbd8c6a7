// The comparison that follows the sheet: one request out at a time, only the newest answer shown. Common practice, no source.
import { afterEach, describe, expect, it, vi } from "vitest";
import { type ComparePort, createComparison, LONGEST } from "../../../app/live/live-comparison.ts";
import type { CompareReply, CompareRequest } from "../../../app/workers/compare-messages.ts";
import { concretePool } from "../../../rules/catalogue/common/example-yard.ts";
import { compareEditions } from "../../../rules/compare-editions.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";

function bench() {
  const sent: CompareRequest[] = [];
  const ports: ComparePort[] = [];
  const ended: ComparePort[] = [];
  const store = createComparison(() => {
    const port: ComparePort = {
      postMessage: (request) => sent.push(request),
      onmessage: null,
      onerror: null,
      terminate: () => ended.push(port),
    };
    ports.push(port);
    return port;
  });
  const reply = (data: CompareReply) => ports.at(-1)?.onmessage?.({ data } as MessageEvent<CompareReply>);
  return { store, sent, ports, ended, reply };
}

const site = siteOf([concretePool()]);
const ask = { site, before: "nec-2020", after: "nec-2023" } as const;
const { reports: _, ...comparison } = compareEditions(site, "nec-2020", "nec-2023");

describe("the comparison on the screen", () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  it("starts no worker before it is asked for", () => {
    const { store, ports } = bench();
    expect(ports).toHaveLength(0);
    store.ask(ask);
    expect(ports).toHaveLength(1);
    expect(store.getState()).toMatchObject({ comparison: null, pending: true });
  });

  it("keeps only the newest waiting request and shows only the newest answer", () => {
    const { store, sent, reply } = bench();
    store.ask(ask);
    store.ask({ ...ask, after: "nec-2017" });
    store.ask({ ...ask, before: "nec-2017" });
    expect(sent).toHaveLength(1);
    reply({ turn: 1, ok: true, comparison });
    expect(store.getState()).toMatchObject({ comparison: null, pending: true });
    expect(sent.map(({ turn, before }) => [turn, before])).toEqual([
      [1, "nec-2020"],
      [3, "nec-2017"],
    ]);
    reply({ turn: 3, ok: true, comparison });
    expect(store.getState()).toEqual({ comparison, pending: false, failure: null });
  });

  it("says that it stopped, and starts anew when asked again", () => {
    const { store, ports, ended, reply } = bench();
    store.ask(ask);
    reply({ turn: 1, ok: false, message: "a rule crashed" });
    expect(store.getState()).toMatchObject({ comparison: null, failure: "a rule crashed", pending: false });
    store.ask(ask);
    ports[0]?.onerror?.({ message: "" } as ErrorEvent);
    expect(store.getState().failure).toBe("The comparison stopped.");
    expect(ended).toEqual([ports[0]]);
    store.ask(ask);
    expect(ports).toHaveLength(2);
    reply({ turn: 3, ok: true, comparison });
    expect(store.getState()).toEqual({ comparison, pending: false, failure: null });
  });

  it("shows no comparison of before once its worker has stopped", () => {
    const { store, ports, reply } = bench();
    store.ask(ask);
    reply({ turn: 1, ok: true, comparison });
    store.ask({ ...ask, before: "nec-2017" });
    ports[0]?.onerror?.({ message: "out of memory" } as ErrorEvent);
    expect(store.getState()).toEqual({ comparison: null, pending: false, failure: "out of memory" });
  });

  it("gives up a worker that never answers, says so, and takes up what waits", () => {
    vi.useFakeTimers();
    const { store, sent, ports, ended, reply } = bench();
    store.ask(ask);
    store.ask({ ...ask, before: "nec-2017" });
    vi.advanceTimersByTime(LONGEST);
    expect(ended).toEqual([ports[0]]);
    expect(store.getState()).toMatchObject({ comparison: null, pending: true });
    expect(sent.map(({ turn }) => turn)).toEqual([1, 2]);
    // What the ended one had still sent answers nothing.
    ports[0]?.onmessage?.({ data: { turn: 2, ok: true, comparison } } as MessageEvent<CompareReply>);
    expect(store.getState().pending).toBe(true);
    vi.advanceTimersByTime(LONGEST);
    expect(store.getState()).toMatchObject({
      pending: false,
      failure: expect.stringMatching(/longer than 90 seconds/),
    });
    store.ask(ask);
    reply({ turn: 3, ok: true, comparison });
    vi.advanceTimersByTime(2 * LONGEST);
    expect(store.getState()).toEqual({ comparison, pending: false, failure: null });
  });

  it("ends its worker when it is closed", () => {
    const { store, ports, ended } = bench();
    store.ask(ask);
    store.close();
    expect(ended).toEqual(ports);
  });
});
