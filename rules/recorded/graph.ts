/**
 * What the recorded copper connects: a graph of elements joined by recorded ties and joints, and which of them the
 * bonding network reaches.
 *
 * Stages. 1. Every tie whose hardware counts joins the elements that it names; joints of conductors join those.
 * 2. From the sources (perimeter copper, serving paving steel, conductive shells) the bonding spreads over ties and joints,
 * and through whatever bears it on. It spreads twice: over what is sure, and over what is at least possible.
 * 3. A part is reached when it is joined, by as many ties as it needs, to something the bonding has come to without it.
 *
 * Terms. Link: a tie or a joint. Lying over or touching something in plan joins nothing.
 */
import type { Point } from "../../geometry/types.ts";
import { shellFacts } from "../catalogue/common/shell-facts.ts";
import { bondedBodies } from "../catalogue/common/storable.ts";
import type { Yard } from "../measures/yard.ts";
import { perimeterMethods } from "../perimeter/methods.ts";
import type { KnownElement } from "../site/elements.ts";
import { bearing, shellGrids, sourceStanding } from "./bearers.ts";
import { recordedJoints } from "./joints.ts";
import { leastOf, mostOf, type Standing } from "./standing.ts";
import { type TieReading, tieReadings } from "./tie-reading.ts";

export interface Reach {
  /** Joined by sure connections, as many as needed. */
  readonly reached: boolean;
  /** Not surely, but it would be if facts that are not given turned out well. */
  readonly doubtful: boolean;
  /** Ties on it that surely connect, in file order; with `doubtful` also those that may. */
  readonly ties: readonly string[];
  /** Recorded elements on whose open facts a doubtful reach rests. */
  readonly doubts: readonly string[];
}

export interface Recorded {
  /** The site holds recorded copper: a conductor or a tie. Without any, needs stay `bond`. */
  readonly hasCopper: boolean;
  readonly ties: readonly TieReading[];
  /** Whether recorded connections join an element to the bonding network by at least so many ties. */
  reached(elementId: string, connections: number): Reach;
  /** Whether the bonding comes to an element at all, by ties or joints. */
  inNetwork(elementId: string): Standing;
  /** Ties that name both elements, and joints of both, with their places. */
  jointsBetween(a: string, b: string): readonly PlacedJoint[];
  /** Whether a conductor's own two ends meet in a recorded joint. */
  closedOnItself(conductor: string): Standing;
  /** Whether any tie that counts joins an element to something else that bears the bonding. */
  tied(id: string): Standing;
  /** Whether both are in one connected part of what is recorded. */
  connected(a: string, b: string): Standing;
}

export interface PlacedJoint {
  readonly at: Point;
  readonly standing: Standing;
}

interface Link {
  /** The tie's id; null for joints and for grids that are their shell. */
  readonly tie: string | null;
  readonly ends: readonly string[];
  /** Where it is made; null for grids that are their shell. */
  readonly at: Point | null;
  readonly standing: Standing;
}

/** The node of ties that name a body's perimeter where nothing of it is recorded. */
const UNRECORDED = "unrecorded perimeter of ";

interface Graph {
  readonly links: readonly Link[];
  readonly linksOf: ReadonlyMap<string, readonly number[]>;
  bears(id: string): Standing;
  source(id: string): Standing;
}

/** Reads what is recorded on the site; worked out once per yard. */
export function readRecorded(yard: Yard): Recorded {
  return yard.kept("recorded", () => {
    yard.readsEverything();
    const graph = graphOf(yard);
    const ties = tieReadings(yard);
    const sure = spread(graph, true);
    const possible = spread(graph, false);
    return {
      hasCopper: hasCopper(yard),
      ties,
      reached: (id, connections) => reachOf(graph, id, connections, sure, possible),
      inNetwork: (id) => (sure.ids.has(id) ? "sure" : possible.ids.has(id) ? "doubtful" : "no"),
      jointsBetween: (a, b) => jointsBetween(graph, a, b),
      closedOnItself: (id) =>
        mostOf([
          ...recordedJoints(yard).flatMap(({ a, b, standing }) => (a === id && b === id ? [standing] : [])),
          ...ties.flatMap(({ closes, standing }) => (closes === id ? [standing] : [])),
        ]),
      tied: (id) => tied(graph, id),
      connected: (a, b) => (connected(graph, a, b, true) ? "sure" : connected(graph, a, b, false) ? "doubtful" : "no"),
    };
  });
}

/** Whether the site holds recorded copper: a conductor or a tie. */
export function hasCopper(yard: Yard): boolean {
  return yard.all("tie").length > 0 || yard.all("conductor").length > 0;
}

function graphOf(yard: Yard): Graph {
  const links: Link[] = [];
  for (const { tie, joins, perimeterUnrecorded, standing, body } of tieReadings(yard)) {
    if (standing === "no") continue;
    const ends = joins.map(({ id }) => id);
    const needed = body !== null && perimeterMethods(yard, body).some(({ planned }) => planned !== "none-needed");
    if (perimeterUnrecorded && needed) ends.push(UNRECORDED + body.id);
    links.push({ tie: tie.id, ends, at: tie.at, standing });
  }
  for (const { a, b, at, standing } of recordedJoints(yard)) {
    if (a !== b) links.push({ tie: null, ends: [a, b], at, standing });
  }
  for (const body of bondedBodies(yard)) {
    for (const grid of shellGrids(yard, body.id)) {
      // Where the steel cannot serve, a pool's id in `joins` means its shell's grid.
      if (shellFacts(yard, body).steel !== "bare")
        links.push({ tie: null, ends: [body.id, grid.id], at: null, standing: "sure" });
    }
  }
  const linksOf = new Map<string, number[]>();
  for (const [i, { ends }] of links.entries()) {
    for (const id of ends) {
      const list = linksOf.get(id);
      if (list) list.push(i);
      else linksOf.set(id, [i]);
    }
  }
  const known = (judge: (element: KnownElement) => Standing) => {
    const kept = new Map<string, Standing>();
    return (id: string): Standing => {
      const before = kept.get(id);
      if (before !== undefined) return before;
      if (id.startsWith(UNRECORDED)) return "doubtful";
      const element = yard.get(id);
      const standing = element ? judge(element) : "no";
      kept.set(id, standing);
      return standing;
    };
  };
  const bears = known((element) => bearing(yard, element));
  const source = known((element) => sourceStanding(yard, element));
  return { links, linksOf, bears, source };
}

function holds(standing: Standing, surely: boolean): boolean {
  return standing === "sure" || (!surely && standing === "doubtful");
}

interface Spread {
  readonly ids: ReadonlySet<string>;
  /** By which link, from which element, an element was come to; sources have none. */
  readonly from: ReadonlyMap<string, { readonly link: number; readonly id: string }>;
}

/** Where the bonding comes to from the sources, or from one element; `without` stands as if it were not there. */
function spread(graph: Graph, surely: boolean, without?: string, start?: string): Spread {
  const ids = new Set<string>();
  const from = new Map<string, { link: number; id: string }>();
  const queue: string[] = [];
  const starts = start === undefined ? graph.linksOf.keys() : [start];
  for (const id of starts) {
    if (id === without || (start === undefined && !holds(graph.source(id), surely))) continue;
    ids.add(id);
    queue.push(id);
  }
  for (let i = 0; i < queue.length; i++) {
    const id = queue[i] as string;
    if (!holds(graph.bears(id), surely)) continue;
    for (const link of graph.linksOf.get(id) ?? []) {
      const { ends, standing } = graph.links[link] as Link;
      if (!holds(standing, surely)) continue;
      for (const end of ends) {
        if (end === without || ids.has(end)) continue;
        ids.add(end);
        from.set(end, { link, id });
        queue.push(end);
      }
    }
  }
  return { ids, from };
}

function reachOf(graph: Graph, id: string, connections: number, sure: Spread, possible: Spread): Reach {
  const own = (graph.linksOf.get(id) ?? []).length > 0;
  if (!own) return { reached: false, doubtful: false, ties: [], doubts: [] };
  const sureTies = tiesOn(graph, id, true, connections > 1 ? spread(graph, true, id) : sure);
  if (sureTies.length >= Math.max(1, connections))
    return { reached: true, doubtful: false, ties: sureTies, doubts: [] };
  const maybeTies = tiesOn(graph, id, false, connections > 1 ? spread(graph, false, id) : possible);
  if (maybeTies.length < Math.max(1, connections))
    return { reached: false, doubtful: false, ties: sureTies, doubts: [] };
  return { reached: false, doubtful: true, ties: maybeTies, doubts: doubtsOf(graph, id, maybeTies, possible) };
}

/** Ties on an element that join it to something the bonding has come to and that bears it on. */
function tiesOn(graph: Graph, id: string, surely: boolean, spreadSoFar: Spread): string[] {
  const ties: string[] = [];
  for (const link of graph.linksOf.get(id) ?? []) {
    const { tie, ends, standing } = graph.links[link] as Link;
    if (tie === null || !holds(standing, surely) || ties.includes(tie)) continue;
    if (ends.some((end) => end !== id && spreadSoFar.ids.has(end) && holds(graph.bears(end), surely))) ties.push(tie);
  }
  return ties;
}

/** Along the way by which the bonding may have come: what is not sure. */
function doubtsOf(graph: Graph, id: string, ties: readonly string[], possible: Spread): string[] {
  const doubts: string[] = [];
  const add = (name: string, standing: Standing) => {
    if (standing === "doubtful" && !doubts.includes(name)) doubts.push(name);
  };
  for (const { tie, standing } of graph.links) if (tie !== null && ties.includes(tie)) add(tie, standing);
  let step = possible.from.get(id);
  while (step) {
    const { tie, standing } = graph.links[step.link] as Link;
    const unrecorded = step.id.startsWith(UNRECORDED);
    if (tie !== null) add(tie, unrecorded ? "doubtful" : standing);
    if (!unrecorded) add(step.id, graph.bears(step.id));
    const next = possible.from.get(step.id);
    if (!next && !unrecorded) add(step.id, graph.source(step.id));
    step = next;
  }
  return doubts;
}

function jointsBetween(graph: Graph, a: string, b: string): PlacedJoint[] {
  return (graph.linksOf.get(a) ?? []).flatMap((link) => {
    const { ends, at, standing } = graph.links[link] as Link;
    return ends.includes(b) && at !== null ? [{ at, standing }] : [];
  });
}

function tied(graph: Graph, id: string): Standing {
  const links = (graph.linksOf.get(id) ?? []).map((i) => graph.links[i] as Link).filter(({ tie }) => tie !== null);
  return mostOf(
    links.map(({ ends, standing }) => {
      const others = ends.filter((end) => end !== id).map((end) => graph.bears(end));
      return leastOf([standing, mostOf(others)]);
    }),
  );
}

function connected(graph: Graph, a: string, b: string, surely: boolean): boolean {
  return a === b || spread(graph, surely, undefined, a).ids.has(b);
}
