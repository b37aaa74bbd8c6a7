/**
 * Reports that follow the document, with a worker played by the test: whole sites first, then edits; a worker that takes
 * too long is ended and says so. Source: arithmetic.
 */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { setSiteField } from "../../../app/edits/set-site-field.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import { followDocument, WHOLE_PACE, type WorkerPort } from "../../../app/live/live-reports.ts";
import { createDocumentStore, type DocumentStore } from "../../../app/site-document/store.ts";
import type { RecomputeRequest } from "../../../app/workers/messages.ts";
import { patchedSite, reportPatch } from "../../../app/workers/patch.ts";
import { Recomputer, recompute } from "../../../rules/recompute.ts";
import type { Report } from "../../../rules/report.ts";
import type { Site } from "../../../rules/site/site.ts";
import { DEMO_SITES } from "../../support/demo-sites.ts";

interface PlayedWorker extends WorkerPort {
  readonly requests: RecomputeRequest[];
  ended: boolean;
  /** `isBrief`: says that some findings were left as they were. */
  answer(isBrief?: boolean): void;
}

function playedWorker(): PlayedWorker {
  const recomputer = new Recomputer();
  let held: { site: Site; report: Report } | null = null;
  const worker: PlayedWorker = {
    requests: [],
    ended: false,
    onmessage: null,
    onerror: null,
    postMessage: (message) => void worker.requests.push(structuredClone(message)),
    terminate: () => {
      worker.ended = true;
    },
    answer(isBrief = false) {
      const request = worker.requests[worker.requests.length - 1] as RecomputeRequest;
      const { revision, depth } = request;
      const before = "edit" in request ? held : null;
      const site = "site" in request ? request.site : patchedSite((held as { site: Site }).site, request.edit);
      const report = recomputer.recompute(site, { withoutRoutes: depth === "quick" });
      held = { site, report };
      const says = before ? { changes: reportPatch(before.report, report) } : { report };
      const data = structuredClone({ revision, depth, ok: true as const, took: 1, isBrief, ...says });
      worker.onmessage?.({ data } as MessageEvent);
    },
  };
  return worker;
}

/** A document of which only what the reports follow is there. */
function played(first: Site) {
  let state: { shown: Site; revision: number; gesture: object | null } = { shown: first, revision: 1, gesture: null };
  const listeners: ((now: typeof state, before: typeof state) => void)[] = [];
  const store = {
    getState: () => state,
    subscribe: (listener: (now: typeof state, before: typeof state) => void) => {
      listeners.push(listener);
      return () => undefined;
    },
  };
  const show = (shown: Site) => {
    const before = state;
    state = { ...state, shown, revision: state.revision + 1 };
    for (const listener of listeners) listener(state, before);
  };
  const hold = (isHeld: boolean) => {
    state = { ...state, gesture: isHeld ? {} : null };
  };
  return { store: store as unknown as DocumentStore, show, hold };
}

describe("reports that follow the document", () => {
  const site = (DEMO_SITES[0] as (typeof DEMO_SITES)[number]).site;
  const fewer: Site = { ...site, elements: site.elements.slice(0, -1) };
  const workers: PlayedWorker[] = [];
  const make = () => {
    const worker = playedWorker();
    workers.push(worker);
    return worker;
  };

  beforeEach(() => {
    vi.useFakeTimers();
    workers.length = 0;
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it("sends a whole site once and then what differs, and puts the report together", () => {
    const { store, show } = played(site);
    const live = followDocument(store, make);
    workers[0]?.answer();
    expect(live.getState().report).toEqual(recompute(site, { withoutRoutes: true }));
    show(fewer);
    expect(Object.keys(workers[0]?.requests[1] ?? {})).toContain("edit");
    workers[0]?.answer();
    expect(live.getState().report).toEqual(recompute(fewer, { withoutRoutes: true }));
    live.close();
  });

  it("knows nothing of another site that is opened until its own first report, and drops what comes late about the one before", () => {
    const file = { name: "", saved: null };
    const document = createDocumentStore(site, file);
    const live = followDocument(document, make);
    const quick = workers[0] as PlayedWorker;
    quick.answer();
    expect(live.getState().report?.counts).toEqual(recompute(site, { withoutRoutes: true }).counts);
    document.getState().edit(setSiteField("name", "Changed"));
    document.getState().open(emptySite(), file);
    expect(live.getState()).toMatchObject({ report: null, site: null, routesPending: true });
    // The answer about the change comes after the other site has been opened.
    quick.answer();
    expect(live.getState().report).toBeNull();
    quick.answer();
    expect(live.getState().report).toEqual(recompute(emptySite(), { withoutRoutes: true }));
    live.close();
  });

  it("ends a worker that takes too long, says so, and takes up the next edit whole", () => {
    const { store, show } = played(site);
    const live = followDocument(store, make);
    show(fewer);
    vi.advanceTimersByTime(16_000);
    expect(workers[0]?.ended).toBe(true);
    expect(live.getState().failure).toMatch(/longer than 15 seconds/);
    expect(live.getState().routesPending).toBe(true);
    const again = workers.find(({ requests, ended }) => !ended && requests.some(({ depth }) => depth === "quick"));
    expect(again?.requests[0]).toMatchObject({ site: fewer, revision: 2 });
    again?.answer();
    expect(live.getState().failure).toBeNull();
    expect(live.getState().report).toEqual(recompute(fewer, { withoutRoutes: true }));
    live.close();
  });

  it("lets reports be brief during a drag, and asks for a whole one at an easy pace and after the last", () => {
    const { store, show, hold } = played(site);
    const live = followDocument(store, make, () => ["fence-1"]);
    const quick = workers[0] as PlayedWorker;
    quick.answer();
    hold(true);
    show(fewer);
    expect(quick.requests.at(-1)).toMatchObject({ revision: 2, watched: ["fence-1"] });
    quick.answer(true);
    show(site);
    expect(quick.requests.at(-1)).toMatchObject({ revision: 3, watched: ["fence-1"] });
    quick.answer(true);
    hold(false);
    // Nothing has changed since, but the findings in the lists are old.
    vi.advanceTimersByTime(WHOLE_PACE);
    expect(quick.requests).toHaveLength(4);
    expect(quick.requests.at(-1)).toMatchObject({ revision: 3 });
    expect(quick.requests.at(-1)).not.toHaveProperty("watched");
    quick.answer();
    vi.advanceTimersByTime(10 * WHOLE_PACE);
    expect(quick.requests).toHaveLength(4);
    live.close();
  });

  it("holds up nobody while a worker is at work: the newest site waits, and nothing is sent before the answer", () => {
    const { store, show, hold } = played(site);
    const live = followDocument(store, make);
    const quick = workers[0] as PlayedWorker;
    hold(true);
    for (let frame = 0; frame < 200; frame++) show(frame % 2 === 0 ? fewer : site);
    expect(quick.requests).toHaveLength(1);
    expect(live.getState().report).toBeNull();
    quick.answer();
    expect(quick.requests).toHaveLength(2);
    expect(quick.requests.at(-1)).toMatchObject({ revision: 201 });
    live.close();
  });
});
