/**
 * For few parts: the best tree on a graph of likely places, by Dreyfus and Wagner's method, as a start for the
 * improvements of branch-junctions.ts, which then move its joints to where they belong.
 *
 * Stages. 1. Places: connection points, barrier corners near the parts, and the Fermat points of three of these or of
 * two and the network that would save more than a joint's allowance, the most saving ones first. 2. For every set of
 * parts and every place the least cost of a tree that joins the set and ends there: two smaller trees meet at the place
 * (a joint, unless it is a part), or one comes along an edge. 3. Trees that reach the network add up for nothing.
 *
 * Terms. Set: parts as bits of a number. Cost: length plus allowance for joints.
 */
import { asTree, type BranchDrawing, type BranchEdge, type Place } from "./branch-graph.ts";
import type { Attachment, BranchGround } from "./branch-ground.ts";
import { jointToNetwork } from "./branch-moves.ts";
import type { PartEyes } from "./branch-spanning.ts";
import { fermatPoint } from "./fermat.ts";
import { distanceBetween } from "./points.ts";
import { BRANCH_GAIN } from "./tolerances.ts";
import type { Point } from "./types.ts";

/** Most parts for which this is worth its time: it triples with every part more. */
export const EXACT_PARTS = 8;
const MOST_EYES = 24;
const MOST_CORNERS = 24;
const MOST_JOINTS = 64;
/** Likely joints this near to each other are one. */
const JOINT_SPACING = 1;

/** The tree of all parts that have connection points; null for fewer than two, for too many, or where not all can be joined. */
export function exactTree(ground: BranchGround, parts: readonly PartEyes[], allowance: number): BranchDrawing | null {
  const reached = parts.flatMap((eyes, part) => (eyes.length > 0 ? [part] : []));
  if (reached.length < 2 || reached.length > EXACT_PARTS) return null;
  if (parts.reduce((sum, eyes) => sum + eyes.length, 0) > MOST_EYES) return null;
  const places = likelyPlaces(ground, parts, allowance);
  const graph = graphOf(ground, places);
  return solve(graph, reached, allowance);
}

interface Graph {
  readonly places: readonly Place[];
  readonly count: number;
  /** Inches from place to place, row by row; infinite where one does not see the other, 0 between places of one part. */
  readonly lengths: Float64Array;
  readonly ends: readonly (Attachment | null)[];
}

function likelyPlaces(ground: BranchGround, parts: readonly PartEyes[], allowance: number): Place[] {
  const places: Place[] = parts.flatMap((eyes, part) => eyes.map((eye): Place => ({ kind: "part", eye, part })));
  const ofParts = places.length;
  const nearest = (p: Point): number =>
    Math.min(...places.slice(0, ofParts).map(({ eye }) => distanceBetween(eye.at, p)));
  const corners = ground.map.turning
    .map((sector) => ({ sector, away: nearest(sector.at) }))
    .sort((a, b) => a.away - b.away)
    .slice(0, MOST_CORNERS);
  for (const { sector } of corners) places.push({ kind: "bend", eye: { at: sector.at, sector }, part: -1 });
  const joints = likelyJoints(ground, places, ofParts, allowance);
  for (const at of joints) places.push({ kind: "joint", eye: { at }, part: -1 });
  return places;
}

function likelyJoints(ground: BranchGround, places: readonly Place[], ofParts: number, allowance: number): Point[] {
  const found: { at: Point; gain: number; ends: readonly Place[] }[] = [];
  const attached = places.map(({ eye }, i) => {
    const joinedFrom = i < ofParts ? ground.attachment({ at: eye.at }, Number.POSITIVE_INFINITY) : null;
    return { joinedFrom, end: ground.attachment(eye, Number.POSITIVE_INFINITY), least: ground.leastToNetwork(eye.at) };
  });
  for (let i = 0; i < ofParts; i++) {
    const ofOne = attached[i] as (typeof attached)[number];
    for (let j = i + 1; j < places.length; j++) {
      const [one, other] = [places[i] as Place, places[j] as Place];
      const [a, b] = [one.eye.at, other.eye.at];
      const side = distanceBetween(a, b);
      for (let k = j + 1; k < places.length; k++) {
        const third = places[k] as Place;
        const c = third.eye.at;
        const sides = [side, distanceBetween(a, c), distanceBetween(b, c)] as const;
        const least = sides[0] + sides[1] + sides[2] - Math.max(...sides);
        if (least - (sides[0] + sides[1] + sides[2]) / 2 <= allowance) continue;
        const at = fermatPoint(a, b, c);
        const gain = least - distanceBetween(at, a) - distanceBetween(at, b) - distanceBetween(at, c) - allowance;
        if (gain > BRANCH_GAIN) found.push({ at, gain, ends: [one, other, third] });
      }
      const near = ofOne.joinedFrom;
      if (!near) continue;
      const ofOther = attached[j] as (typeof attached)[number];
      const toEnd = ofOther.end?.distance ?? side;
      const sides = [side, near.distance, toEnd] as const;
      const least = sides[0] + sides[1] + sides[2] - Math.max(...sides);
      // Two legs of a joint are never shorter than the straight lines between their ends.
      if (least - (side + ofOne.least + ofOther.least) / 2 <= allowance) continue;
      const joined = jointToNetwork(ground, a, b, near.at);
      if (!joined) continue;
      const { joint, end } = joined;
      const sum = distanceBetween(joint, a) + distanceBetween(joint, b) + distanceBetween(joint, end);
      if (least - sum - allowance > BRANCH_GAIN)
        found.push({ at: joint, gain: least - sum - allowance, ends: [one, other] });
    }
  }
  found.sort((a, b) => b.gain - a.gain);
  const joints: Point[] = [];
  for (const { at, ends } of found) {
    if (joints.length >= MOST_JOINTS) break;
    if (joints.some((known) => distanceBetween(known, at) < JOINT_SPACING)) continue;
    if (ends.every(({ eye }) => ground.sees({ at }, eye))) joints.push(at);
  }
  return joints;
}

function graphOf(ground: BranchGround, places: readonly Place[]): Graph {
  const count = places.length;
  const lengths = new Float64Array(count * count).fill(Number.POSITIVE_INFINITY);
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      const [a, b] = [places[i] as Place, places[j] as Place];
      const same = a.kind === "part" && a.part === b.part;
      if (!same && !ground.sees(a.eye, b.eye)) continue;
      const length = same ? 0 : distanceBetween(a.eye.at, b.eye.at);
      lengths[i * count + j] = length;
      lengths[j * count + i] = length;
    }
  }
  const ends = places.map(({ eye }) => ground.attachment(eye, Number.POSITIVE_INFINITY));
  return { places, count, lengths, ends };
}

/** How the best tree of a set at a place was made: -1 it starts there, otherwise from a place, or as two halves. */
interface Trees {
  readonly cost: Float64Array;
  readonly from: Int32Array;
  readonly half: Int32Array;
}

function solve(graph: Graph, reached: readonly number[], allowance: number): BranchDrawing | null {
  const { places, count, ends } = graph;
  const sets = 2 ** reached.length;
  const trees: Trees[] = Array.from({ length: sets }, () => ({
    cost: new Float64Array(count).fill(Number.POSITIVE_INFINITY),
    from: new Int32Array(count).fill(-1),
    half: new Int32Array(count),
  }));
  const treeOf = (set: number): Trees => trees[set] as Trees;
  /** Best cost of a set whose trees all end on the network, and how: place, or two halves. */
  const rooted = Array.from({ length: sets }, () => ({ cost: Number.POSITIVE_INFINITY, place: -1, half: 0 }));
  for (let set = 1; set < sets; set++) {
    const tree = treeOf(set);
    const best = rooted[set] as (typeof rooted)[number];
    places.forEach(({ kind, part }, v) => {
      if (kind === "part" && set === 1 << reached.indexOf(part)) tree.cost[v] = 0;
    });
    for (let half = (set - 1) & set; half > (set ^ half); half = (half - 1) & set) {
      meet(places, treeOf(half), treeOf(set ^ half), half, tree, allowance);
      const sum = (rooted[half]?.cost ?? 0) + (rooted[set ^ half]?.cost ?? 0);
      if (sum < best.cost) Object.assign(best, { cost: sum, place: -1, half });
    }
    spread(graph, tree);
    ends.forEach((end, v) => {
      const sum = (tree.cost[v] as number) + (end?.distance ?? Number.POSITIVE_INFINITY);
      if (sum < best.cost) Object.assign(best, { cost: sum, place: v, half: 0 });
    });
  }
  if (!Number.isFinite(rooted[sets - 1]?.cost)) return null;
  const drawn: Place[] = [...places];
  const edges: BranchEdge[] = [];
  const drawTree = (set: number, v: number): void => {
    const { from, half } = treeOf(set);
    const u = from[v] as number;
    const part = half[v] as number;
    if (u >= 0) {
      if ((graph.lengths[v * count + u] as number) > 0) edges.push({ a: u, b: v });
      drawTree(set, u);
    } else if (part > 0) {
      drawTree(part, v);
      drawTree(set ^ part, v);
    }
  };
  const drawRooted = (set: number): void => {
    const { place, half } = rooted[set] as (typeof rooted)[number];
    if (half > 0) {
      drawRooted(half);
      drawRooted(set ^ half);
      return;
    }
    const end = ends[place];
    if (end) edges.push({ a: place, b: drawn.push({ kind: "network", eye: { at: end.at }, part: -1 }) - 1 });
    drawTree(set, place);
  };
  drawRooted(sets - 1);
  return asTree({ places: drawn, edges });
}

function meet(places: readonly Place[], one: Trees, other: Trees, half: number, into: Trees, allowance: number): void {
  places.forEach(({ kind }, v) => {
    const sum = (one.cost[v] as number) + (other.cost[v] as number) + (kind === "part" ? 0 : allowance);
    if (sum >= (into.cost[v] as number)) return;
    into.cost[v] = sum;
    into.half[v] = half;
    into.from[v] = -1;
  });
}

/** Along edges from every place at its cost (Dijkstra's method). */
function spread({ count, lengths }: Graph, { cost, from }: Trees): void {
  const done = new Uint8Array(count);
  for (;;) {
    let at = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let v = 0; v < count; v++) {
      if (done[v] || (cost[v] as number) >= least) continue;
      least = cost[v] as number;
      at = v;
    }
    if (at < 0) return;
    done[at] = 1;
    for (let v = 0; v < count; v++) {
      const through = least + (lengths[at * count + v] as number);
      if (through >= (cost[v] as number)) continue;
      cost[v] = through;
      from[v] = at;
    }
  }
}
