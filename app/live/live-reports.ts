/**
 * Reports that follow the document.
 *
 * Stages. 1. Every change of the shown site asks for its quick report (without routes); while one is being worked on,
 * only the newest waiting site is kept, older ones are dropped. 2. When nothing newer waits and no gesture runs, the
 * full report with its routes is asked for, in a second worker so that a long route never holds up the next change.
 * 3. Results carry the document's revision; one that is older than what is shown already is dropped. 4. When another site
 * comes onto the sheet there is no report until its first one has come: findings of one yard never stand beside another.
 *
 * While something is dragged on a large site, quick reports may be brief (workers/brief-report.ts): a whole one follows
 * at an easy pace, and after the last.
 *
 * A report without routes is shown as such (`routesPending`), never as a length of zero.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import type { DocumentStore } from "../site-document/store.ts";
import type { Depth, RecomputeReply, RecomputeRequest } from "../workers/messages.ts";
import { patchedReport, sitePatch } from "../workers/patch.ts";

export interface LiveState {
  /** The newest report about the site on the sheet; null until its first one has come. */
  readonly report: Report | null;
  /** The site that the report is about. */
  readonly site: Site | null;
  /** Revision of the document that the report is about. */
  readonly reportRevision: number;
  /** The routes of branches are still being worked out. */
  readonly routesPending: boolean;
  /** Set when working out a report failed: the last good report stays on the sheet beside it. */
  readonly failure: string | null;
  /** Milliseconds that the last quick report took. */
  readonly took: number;
}

export type LiveStore = StoreApi<LiveState>;

/** The part of a worker that is used here; a test gives its own. */
export interface WorkerPort {
  postMessage(message: RecomputeRequest): void;
  onmessage: ((event: MessageEvent<RecomputeReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/**
 * How long one report may take, milliseconds. A noisy outline of thousands of vertices among many walls can take longer
 * than anybody waits: then it is said that it is not worked out, and the next edit is taken up by a new worker.
 */
const LONGEST: Readonly<Record<Depth, number>> = { quick: 15_000, full: 45_000 };

const TOO_LONG: Readonly<Record<Depth, string>> = {
  quick:
    "This drawing takes longer than 15 seconds to work out. Outlines of fewer vertices help; the last report stays.",
  full: "The routes of the copper take longer than 45 seconds and are not worked out. Everything else is.",
};

/** How long the document must rest before routes are asked for, milliseconds. */
const REST_BEFORE_ROUTES = 120;

/** A brief report is followed by a whole one within so many milliseconds. */
export const WHOLE_PACE = 250;

interface Asked {
  readonly revision: number;
  readonly site: Site;
}

interface Lane {
  port: WorkerPort;
  busy: Asked | null;
  waiting: Asked | null;
  /** What the worker holds: the last site that it answered with a report, and that report. Only edits are sent on it. */
  held: { readonly site: Site; readonly report: Report } | null;
  /** Runs out when an answer takes too long. */
  deadline: ReturnType<typeof setTimeout> | null;
}

/**
 * Starts following a document. `close` ends the workers. `watched` tells which findings and elements are looked at: theirs
 * are up to date in every report.
 */
export function followDocument(
  document: DocumentStore,
  makeWorker: () => WorkerPort,
  watched: () => readonly string[] = () => [],
): LiveStore & { close(): void } {
  const store = createStore<LiveState>(() => ({
    report: null,
    site: null,
    reportRevision: 0,
    routesPending: true,
    failure: null,
    took: 0,
  }));
  const lanes: Record<Depth, Lane> = { quick: laneFor("quick"), full: laneFor("full") };
  let rest: ReturnType<typeof setTimeout> | null = null;
  let whole: ReturnType<typeof setTimeout> | null = null;
  let isWholeDue = false;

  function laneFor(depth: Depth): Lane {
    const lane: Lane = { port: makeWorker(), busy: null, waiting: null, held: null, deadline: null };
    listen(lane, depth);
    return lane;
  }

  function listen(lane: Lane, depth: Depth): void {
    lane.port.onmessage = ({ data }) => {
      const site = lane.busy?.site;
      const before = lane.held?.report;
      const report = !data.ok
        ? null
        : "report" in data
          ? data.report
          : before
            ? patchedReport(before, data.changes)
            : null;
      lane.held = site && report ? { site, report } : null;
      lane.busy = null;
      if (lane.deadline !== null) clearTimeout(lane.deadline);
      take(data, report);
      if (data.ok && data.isBrief === true) whole ??= setTimeout(askWhole, WHOLE_PACE);
      if (lane.waiting) send(lane, depth, lane.waiting);
    };
    lane.port.onerror = (event) => startAgain(lane, depth, event.message || "The calculation stopped.");
  }

  function askWhole(): void {
    whole = null;
    isWholeDue = true;
    const { shown, revision } = document.getState();
    send(lanes.quick, "quick", { revision, site: shown });
  }

  /** A worker that failed or took too long is ended; another takes up what waits. */
  function startAgain(lane: Lane, depth: Depth, failure: string): void {
    if (lane.deadline !== null) clearTimeout(lane.deadline);
    lane.port.terminate();
    lane.port = makeWorker();
    lane.busy = null;
    lane.held = null;
    listen(lane, depth);
    store.setState({ failure });
    if (lane.waiting) send(lane, depth, lane.waiting);
  }

  function send(lane: Lane, depth: Depth, asked: Asked): void {
    if (lane.busy) {
      lane.waiting = asked;
      return;
    }
    lane.waiting = null;
    lane.busy = asked;
    lane.deadline = setTimeout(() => startAgain(lane, depth, TOO_LONG[depth]), LONGEST[depth]);
    const { revision, site } = asked;
    const mayBeBrief = depth === "quick" && document.getState().gesture !== null && !isWholeDue;
    if (depth === "quick" && !mayBeBrief) isWholeDue = false;
    const request = { revision, depth, ...(mayBeBrief ? { watched: watched() } : {}) };
    lane.port.postMessage(lane.held ? { ...request, edit: sitePatch(lane.held.site, site) } : { ...request, site });
  }

  function take(reply: RecomputeReply, report: Report | null): void {
    const state = store.getState();
    if (report === null && reply.ok) throw new Error("an answer that rests on a report that is not held");
    if (!reply.ok) {
      if (reply.revision >= state.reportRevision) store.setState({ failure: reply.message, routesPending: false });
      return;
    }
    if (reply.revision < state.reportRevision) return;
    // A full report is never pushed aside by a quick one of the same revision that comes later.
    if (reply.depth === "quick" && reply.revision === state.reportRevision && !state.routesPending) return;
    const site = sites.get(reply.revision) ?? null;
    for (const revision of sites.keys()) if (revision < reply.revision) sites.delete(revision);
    store.setState({
      report,
      site,
      reportRevision: reply.revision,
      routesPending: reply.depth === "quick",
      failure: null,
      took: reply.depth === "quick" ? reply.took : state.took,
    });
  }

  const sites = new Map<number, Site>();

  function changed(): void {
    const { shown, revision, gesture } = document.getState();
    sites.set(revision, shown);
    send(lanes.quick, "quick", { revision, site: shown });
    if (rest !== null) clearTimeout(rest);
    rest = setTimeout(
      () => {
        rest = null;
        send(lanes.full, "full", { revision, site: shown });
      },
      gesture ? REST_BEFORE_ROUTES * 2 : REST_BEFORE_ROUTES,
    );
  }

  /** Lets go of what is known about the site that was on the sheet before. */
  function forget(revision: number): void {
    sites.clear();
    store.setState({ report: null, site: null, reportRevision: revision, routesPending: true, failure: null });
  }

  changed();
  const stop = document.subscribe((state, before) => {
    if (state.opened !== before.opened) forget(state.revision);
    if (state.revision !== before.revision) changed();
  });
  return Object.assign(store, {
    close() {
      stop();
      if (rest !== null) clearTimeout(rest);
      if (whole !== null) clearTimeout(whole);
      for (const lane of Object.values(lanes)) {
        if (lane.deadline !== null) clearTimeout(lane.deadline);
        lane.port.terminate();
      }
    },
  });
}
