/**
 * The document's history: plain snapshots that share structure, each step with the words that undo and redo show.
 * Pure functions; the camera and the selection never enter here.
 *
 * Memory. A step holds on to what it replaced: its weight counts the elements that the site before it does not share with
 * the site after it, and the list that names them. Past MOST_WEIGHT or MOST_STEPS the oldest steps fall off; the newest
 * SURE_STEPS always stay.
 */
import type { Site } from "../../rules/site/site.ts";

/** One step back or forward: the site on the other side of it and what the step did. */
export interface Step {
  readonly label: string;
  readonly site: Site;
  /** What keeping it costs, in elements. */
  readonly weight: number;
}

export interface History {
  /** Oldest first; `site` is the state before the step. */
  readonly past: readonly Step[];
  readonly present: Site;
  /** Nearest first; `site` is the state after the step. */
  readonly future: readonly Step[];
  /** Sum of the weights of the past. */
  readonly weight: number;
  /** How many steps fell off the far end. */
  readonly dropped: number;
}

/** Steps kept at most. */
export const MOST_STEPS = 12_000;
/** Elements that all steps together hold on to at most: some 100 MB of ordinary ones. */
export const MOST_WEIGHT = 400_000;
/** Steps that are kept whatever they weigh. */
export const SURE_STEPS = 25;
/** A name in a list costs that many times less than an element of its own. */
const NAMES_PER_ELEMENT = 30;

export function startHistory(site: Site): History {
  return { past: [], present: site, future: [], weight: 0, dropped: 0 };
}

/** The history after a step. A step that changes nothing leaves it as it is. */
export function step(history: History, site: Site, label: string): History {
  if (site === history.present) return history;
  const made = { label, site: history.present, weight: weightOf(history.present, site) };
  const past = [...history.past, made];
  let weight = history.weight + made.weight;
  let from = 0;
  while (past.length - from > MOST_STEPS || (weight > MOST_WEIGHT && past.length - from > SURE_STEPS)) {
    weight -= past[from]?.weight ?? 0;
    from++;
  }
  return {
    past: from === 0 ? past : past.slice(from),
    present: site,
    future: [],
    weight,
    dropped: history.dropped + from,
  };
}

/** Goes back (negative) or forward by a number of steps, as far as there are any. */
export function go(history: History, steps: number): History {
  return steps < 0 ? back(history, -steps) : forward(history, steps);
}

function back(history: History, wanted: number): History {
  const { past, present } = history;
  const count = Math.min(wanted, past.length);
  const first = past[past.length - count];
  if (!first) return history;
  const taken = past.slice(past.length - count);
  // The site after a step of the past is the one before the next step.
  const undone = taken.map((one, i) => ({ ...one, site: taken[i + 1]?.site ?? present }));
  return {
    ...history,
    past: past.slice(0, past.length - count),
    present: first.site,
    future: undone.concat(history.future),
    weight: history.weight - total(taken),
  };
}

function forward(history: History, wanted: number): History {
  const { future, present } = history;
  const count = Math.min(wanted, future.length);
  const last = future[count - 1];
  if (!last) return history;
  const taken = future.slice(0, count);
  const done = taken.map((one, i) => ({ ...one, site: taken[i - 1]?.site ?? present }));
  return {
    ...history,
    past: history.past.concat(done),
    present: last.site,
    future: future.slice(count),
    weight: history.weight + total(taken),
  };
}

function total(steps: readonly Step[]): number {
  return steps.reduce((sum, { weight }) => sum + weight, 0);
}

/** Elements of `before` that `after` does not share, and the list of them all. */
function weightOf(before: Site, after: Site): number {
  if (before.elements === after.elements) return 1;
  const shared = new Set<unknown>(after.elements);
  const own = before.elements.reduce((count, element) => (shared.has(element) ? count : count + 1), 0);
  return 1 + own + before.elements.length / NAMES_PER_ELEMENT;
}
