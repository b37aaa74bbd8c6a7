/**
 * The document's history: plain snapshots that share structure, each step with the words that undo and redo show.
 * Pure functions; the camera and the selection never enter here.
 */
import type { Site } from "../../rules/site/site.ts";

/** One step back or forward: the site on the other side of it and what the step did. */
export interface Step {
  readonly label: string;
  readonly site: Site;
}

export interface History {
  /** Oldest first; `site` is the state before the step. */
  readonly past: readonly Step[];
  readonly present: Site;
  /** Nearest first; `site` is the state after the step. */
  readonly future: readonly Step[];
}

/** Steps kept; older ones fall off the far end. */
export const STEPS_KEPT = 500;

export function startHistory(site: Site): History {
  return { past: [], present: site, future: [] };
}

/** The history after a step. A step that changes nothing leaves it as it is. */
export function step(history: History, site: Site, label: string): History {
  if (site === history.present) return history;
  const past = [...history.past, { label, site: history.present }];
  return { past: past.slice(-STEPS_KEPT), present: site, future: [] };
}

export function undo(history: History): History {
  const last = history.past.at(-1);
  if (!last) return history;
  return {
    past: history.past.slice(0, -1),
    present: last.site,
    future: [{ label: last.label, site: history.present }, ...history.future],
  };
}

export function redo(history: History): History {
  const next = history.future[0];
  if (!next) return history;
  return {
    past: [...history.past, { label: next.label, site: history.present }],
    present: next.site,
    future: history.future.slice(1),
  };
}

/** Goes back (negative) or forward by a number of steps, as far as there are any. */
export function go(history: History, steps: number): History {
  let now = history;
  for (let i = 0; i < Math.abs(steps); i++) {
    const then = steps < 0 ? undo(now) : redo(now);
    if (then === now) break;
    now = then;
  }
  return now;
}
