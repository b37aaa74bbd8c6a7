/**
 * Reports that follow the document while workers crash, never answer, cannot be loaded, or answer about a sheet that is
 * gone. Workers are played by the test. Source: arithmetic; that a worker which cannot be loaded fires an error event is
 * from the HTML standard.
 */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { EMPTY_REPORT } from "../../../app/canvas/empty-report.ts";
import { setSiteField } from "../../../app/edits/set-site-field.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import { followDocument, LATE, type WorkerPort } from "../../../app/live/live-reports.ts";
import { createDocumentStore } from "../../../app/site-document/store.ts";
import type { RecomputeReply, RecomputeRequest } from "../../../app/workers/messages.ts";
import type { Report } from "../../../rules/report.ts";
import type { Site } from "../../../rules/site/site.ts";
import { DEMO_SITES } from "../../support/demo-sites.ts";

const SITE = (DEMO_SITES[0] as (typeof DEMO_SITES)[number]).site;
const FILE = { name: "", saved: null };

interface PlayedWorker extends WorkerPort {
  readonly requests: RecomputeRequest[];
  ended: boolean;
}

/** A report that tells itself apart by its name. */
const called = (site: string): Report => ({ ...EMPTY_REPORT, site });

describe("workers that fail", () => {
  const workers: PlayedWorker[] = [];
  const make = (): WorkerPort => {
    const worker: PlayedWorker = {
      requests: [],
      ended: false,
      onmessage: null,
      onerror: null,
      postMessage: (message) => void worker.requests.push(message),
      terminate: () => {
        worker.ended = true;
      },
    };
    workers.push(worker);
    return worker;
  };
  /** The newest worker that was asked for reports of a depth, and its last request. */
  const asked = (depth: "quick" | "full") => {
    const worker = workers.findLast(({ requests }) => requests.some((request) => request.depth === depth));
    const request = worker?.requests.at(-1);
    if (!worker || !request) throw new Error(`No ${depth} report has been asked for.`);
    return { worker, request };
  };
  const reply = (depth: "quick" | "full", name: string) => {
    const { worker, request } = asked(depth);
    const report = called(name);
    const says =
      "site" in request
        ? { report }
        : {
            changes: {
              same: [],
              fields: Object.fromEntries(Object.entries(report).filter(([field]) => field !== "findings")),
              findings: [],
            },
          };
    const data = { revision: request.revision, depth, ok: true, took: 1, ...says } as RecomputeReply;
    worker.onmessage?.({ data } as MessageEvent<RecomputeReply>);
  };
  const crash = (depth: "quick" | "full", message: string) => {
    const { worker, request } = asked(depth);
    const data: RecomputeReply = { revision: request.revision, depth, ok: false, message };
    worker.onmessage?.({ data } as MessageEvent<RecomputeReply>);
  };
  const start = (site: Site = SITE) => {
    const document = createDocumentStore(site, FILE);
    const live = followDocument(document, make);
    const rename = (name: string) => void document.getState().edit(setSiteField("name", name));
    return { document, live, rename };
  };
  /** Lets the document rest until the routes are asked for. */
  const rests = () => vi.advanceTimersByTime(200);

  beforeEach(() => {
    vi.useFakeTimers();
    workers.length = 0;
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it("a crash of the routes leaves the report without them: never as if there were none", () => {
    const { live } = start();
    reply("quick", "first");
    rests();
    crash("full", "a route broke");
    expect(live.getState()).toMatchObject({ routesPending: true, routesFailure: "a route broke", failure: null });
    live.close();
  });

  it("a crash of the routes that comes before the quick report is told with it", () => {
    const { live } = start();
    rests();
    crash("full", "a route broke");
    expect(live.getState()).toMatchObject({ report: null, failure: null, routesFailure: null });
    reply("quick", "first");
    expect(live.getState()).toMatchObject({ routesPending: true, routesFailure: "a route broke", failure: null });
    live.close();
  });

  it("routes that take too long are given up: the rest of the report is about the sheet", () => {
    const { live, rename } = start();
    reply("quick", "first");
    rests();
    vi.advanceTimersByTime(46_000);
    expect(live.getState().failure).toBeNull();
    expect(live.getState().routesFailure).toBe("They take longer than 45 seconds.");
    // The next change asks anew.
    rename("Second");
    reply("quick", "second");
    expect(live.getState().routesFailure).toBeNull();
    rests();
    reply("full", "second");
    expect(live.getState()).toMatchObject({ routesPending: false, routesFailure: null });
    live.close();
  });

  it("a crash stays said when late routes of the sheet before come in", () => {
    const { live, rename } = start();
    reply("quick", "first");
    rests();
    rename("Second");
    crash("quick", "a rule broke");
    reply("full", "first");
    expect(live.getState()).toMatchObject({ reportRevision: 1, failure: "a rule broke" });
    rests();
    reply("full", "second");
    expect(live.getState()).toMatchObject({ reportRevision: 2, failure: null });
    live.close();
  });

  it("a failure about a site that is gone is not said of the one on the sheet", () => {
    const { document, live } = start();
    reply("quick", "first");
    rests();
    document.getState().open(emptySite(), FILE);
    crash("full", "a route broke");
    expect(live.getState()).toMatchObject({ failure: null, routesFailure: null });
    live.close();
  });

  it("work on a site that is gone holds up the routes of the next one a second at most", () => {
    const { document, live } = start();
    reply("quick", "first");
    rests();
    const old = asked("full").worker;
    document.getState().open({ ...SITE, name: "Second" }, FILE);
    reply("quick", "second");
    vi.advanceTimersByTime(1_100);
    expect(old.ended).toBe(true);
    expect(asked("full").worker).not.toBe(old);
    expect(asked("full").request.revision).toBe(2);
    expect(live.getState()).toMatchObject({ failure: null, routesFailure: null });
    live.close();
  });

  it("a worker that cannot be loaded is said to have failed, and is made anew once for each change only", () => {
    const { live, rename } = start();
    expect(workers).toHaveLength(2);
    for (let i = 0; i < 10; i++) for (const worker of [...workers]) worker.onerror?.({ message: "" } as ErrorEvent);
    expect(workers.filter(({ ended }) => !ended).length).toBeLessThan(2);
    expect(workers.length).toBeLessThan(4);
    expect(live.getState().failure).toBe("It broke off, or could not be loaded.");
    rename("Second");
    reply("quick", "second");
    expect(live.getState()).toMatchObject({ failure: null, report: { site: "second" } });
    live.close();
  });

  it("what an ended worker had still sent is not taken for the answer of the one in its place", () => {
    const { live, rename } = start();
    const first = asked("quick").worker;
    rename("Second");
    vi.advanceTimersByTime(16_000);
    expect(asked("quick").worker).not.toBe(first);
    const data = { revision: 1, depth: "quick", ok: true, took: 1, report: called("late") } as RecomputeReply;
    first.onmessage?.({ data } as MessageEvent<RecomputeReply>);
    expect(live.getState().report).toBeNull();
    reply("quick", "second");
    expect(live.getState()).toMatchObject({ reportRevision: 2, report: { site: "second" } });
    live.close();
  });

  it("says that the report is behind once the next one takes longer than a moment, and no longer than that", () => {
    const { live, rename } = start();
    reply("quick", "first");
    rename("Second");
    vi.advanceTimersByTime(LATE - 1);
    expect(live.getState().isBehind).toBe(false);
    vi.advanceTimersByTime(1);
    expect(live.getState().isBehind).toBe(true);
    reply("quick", "second");
    expect(live.getState().isBehind).toBe(false);
    vi.advanceTimersByTime(10 * LATE);
    expect(live.getState().isBehind).toBe(false);
    // A crash says more.
    rename("Third");
    vi.advanceTimersByTime(LATE);
    crash("quick", "a rule broke");
    expect(live.getState()).toMatchObject({ isBehind: false, failure: "a rule broke" });
    live.close();
  });
});
