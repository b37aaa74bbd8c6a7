/**
 * Reports that follow the document.
 *
 * Stages. 1. Every change of the shown site asks for its quick report (without routes); while one is being worked on,
 * only the newest waiting site is kept, older ones are dropped. 2. When nothing newer waits and no gesture runs, the
 * full report with its routes is asked for, in a second worker so that a long route never holds up the next change.
 * 3. Results carry the document's revision; one that is older than what is shown already is dropped. 4. When another site
 * comes onto the sheet there is no report until its first one has come: findings of one yard never stand beside another.
 * 5. What failed is said as long as nothing newer has come: a crash or a time that ran out is about one revision.
 *
 * While something is dragged on a large site, quick reports may be brief (workers/brief-report.ts): a whole one follows
 * at an easy pace, and after the last.
 *
 * A report without routes is shown as such (`routesPending`), never as a length of zero, also where they cannot be had.
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
  /** The report is without the routes of branches: they are on their way, or `routesFailure` says why they are not. */
  readonly routesPending: boolean;
  /** Why the routes are not worked out, while all else of the report is. */
  readonly routesFailure: string | null;
  /** Set when working out a report failed: the last good report stays on the sheet beside it. */
  readonly failure: string | null;
  /** The report is about the sheet as it was, and the next one takes longer than a moment. */
  readonly isBehind: boolean;
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
  quick: "This drawing takes longer than 15 seconds to work out. Outlines of fewer corners help.",
  full: "They take longer than 45 seconds.",
};

const STOPPED = "It broke off, or could not be loaded.";

/** How long the document must rest before routes are asked for, milliseconds. */
const REST_BEFORE_ROUTES = 120;

/** From so many milliseconds on it is said that a report is being waited for. */
export const LATE = 400;

/** How long work on a site may go on that is not on the sheet any more, milliseconds. */
const GRACE = 1_000;

/** A brief report is followed by a whole one within so many milliseconds. */
export const WHOLE_PACE = 250;

interface Asked {
  readonly revision: number;
  readonly site: Site;
}

interface Lane {
  /** Null once it has failed, until something is asked again: a worker that cannot even start is not made over and over. */
  port: WorkerPort | null;
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
    routesFailure: null,
    failure: null,
    isBehind: false,
    took: 0,
  }));
  const lanes: Record<Depth, Lane> = { quick: laneFor("quick"), full: laneFor("full") };
  let rest: ReturnType<typeof setTimeout> | null = null;
  let whole: ReturnType<typeof setTimeout> | null = null;
  let isWholeDue = false;

  /** The revision of the last failure, and that of the last one of routes with its reason. */
  let failed = 0;
  let noRoutes: { readonly revision: number; readonly reason: string } | null = null;
  let late: ReturnType<typeof setTimeout> | null = null;

  function laneFor(depth: Depth): Lane {
    const lane: Lane = { port: null, busy: null, waiting: null, held: null, deadline: null };
    openPort(lane, depth);
    return lane;
  }

  function openPort(lane: Lane, depth: Depth): WorkerPort {
    const port = makeWorker();
    port.onmessage = ({ data }) => {
      // What one that was ended had still sent is not the answer to what another works on.
      if (lane.port === port) answered(lane, depth, data);
    };
    port.onerror = (event) => {
      if (lane.port === port) startAgain(lane, depth, event.message || STOPPED);
    };
    lane.port = port;
    return port;
  }

  function answered(lane: Lane, depth: Depth, data: RecomputeReply): void {
    const { busy, held } = lane;
    if (!busy) return;
    if (!data.ok) {
      lane.held = null;
      free(lane);
      fail(depth, data.revision, data.message);
    } else {
      const report = "report" in data ? data.report : held ? patchedReport(held.report, data.changes) : null;
      if (!report) {
        startAgain(lane, depth, STOPPED);
        return;
      }
      lane.held = { site: busy.site, report };
      free(lane);
      take(data, report, busy.site);
      if (data.isBrief === true) whole ??= setTimeout(askWhole, WHOLE_PACE);
    }
    if (lane.waiting) send(lane, depth, lane.waiting);
  }

  function free(lane: Lane): void {
    if (lane.deadline !== null) clearTimeout(lane.deadline);
    lane.deadline = null;
    lane.busy = null;
  }

  function askWhole(): void {
    whole = null;
    isWholeDue = true;
    const { shown, revision } = document.getState();
    send(lanes.quick, "quick", { revision, site: shown });
  }

  /** A worker that failed or took too long is ended; another takes up what is asked next. */
  function startAgain(lane: Lane, depth: Depth, reason: string): void {
    lane.port?.terminate();
    lane.port = null;
    lane.held = null;
    const { busy } = lane;
    free(lane);
    if (busy) fail(depth, busy.revision, reason);
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
    const port = lane.port ?? openPort(lane, depth);
    port.postMessage(lane.held ? { ...request, edit: sitePatch(lane.held.site, site) } : { ...request, site });
  }

  function take(reply: RecomputeReply & { readonly ok: true }, report: Report, site: Site): void {
    const state = store.getState();
    const { revision, depth } = reply;
    if (revision < state.reportRevision) return;
    // A full report is never pushed aside by a quick one of the same revision that comes later.
    if (depth === "quick" && revision === state.reportRevision && !state.routesPending) return;
    store.setState({
      report,
      site,
      reportRevision: revision,
      routesPending: depth === "quick",
      routesFailure: depth === "quick" && noRoutes?.revision === revision ? noRoutes.reason : null,
      failure: revision >= failed ? null : state.failure,
      took: depth === "quick" ? reply.took : state.took,
    });
    settled(revision);
  }

  /** Says that a revision could not be worked out, or only without its routes; nothing once more is known than that. */
  function fail(depth: Depth, revision: number, reason: string): void {
    const { report, reportRevision, routesPending } = store.getState();
    const isShown = report !== null && revision === reportRevision;
    if (revision < reportRevision || (isShown && !routesPending)) return;
    if (depth === "full") {
      noRoutes = { revision, reason };
      if (isShown) store.setState({ routesFailure: reason });
      return;
    }
    failed = revision;
    store.setState({ failure: reason });
    settled(revision);
  }

  /** Nothing more is awaited for a revision; where the sheet is further on, the wait for that begins. */
  function settled(revision: number): void {
    if (late !== null) clearTimeout(late);
    late = null;
    if (store.getState().isBehind) store.setState({ isBehind: false });
    if (document.getState().revision > revision) awaitReport();
  }

  function awaitReport(): void {
    late ??= setTimeout(() => {
      late = null;
      store.setState({ isBehind: true });
    }, LATE);
  }

  function changed(): void {
    const { shown, revision, gesture } = document.getState();
    awaitReport();
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

  /** Lets go of what is known about the site that was on the sheet before, and soon of the work on it. */
  function forget(revision: number): void {
    store.setState({
      report: null,
      site: null,
      reportRevision: revision,
      routesPending: true,
      routesFailure: null,
      failure: null,
    });
    for (const depth of ["quick", "full"] as const) {
      const lane = lanes[depth];
      lane.waiting = null;
      if (!lane.busy || lane.busy.site.elements.length === 0) continue;
      if (lane.deadline !== null) clearTimeout(lane.deadline);
      lane.deadline = setTimeout(() => startAgain(lane, depth, TOO_LONG[depth]), GRACE);
    }
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
      if (late !== null) clearTimeout(late);
      for (const lane of Object.values(lanes)) {
        if (lane.deadline !== null) clearTimeout(lane.deadline);
        lane.port?.terminate();
        lane.port = null;
      }
    },
  });
}
