/**
 * One round of changes to a tree of branches: a joint for two edges that leave one place at a sharp angle, or for two
 * runs that go to the network side by side.
 *
 * Terms. Gain: what a change saves in length, less the allowance for the joints it adds. No joint between three places
 * can be shorter than half the triangle's outline, so most pairs are left out at once.
 */
import { type BranchDrawing, type BranchEdge, edgesAt, lengthStep, otherEnd, type Place } from "./branch-graph.ts";
import type { BranchGround } from "./branch-ground.ts";
import { fermatPoint } from "./fermat.ts";
import { distanceBetween, samePoint } from "./points.ts";
import { BRANCH_GAIN } from "./tolerances.ts";
import type { Point } from "./types.ts";

interface Change {
  readonly gain: number;
  /** The places that the change rests on. */
  readonly places: readonly number[];
  readonly gone: readonly BranchEdge[];
  /** Where the three ends meet: on open ground, or at a place that is there already. */
  readonly joint: Point | number;
  readonly ends: readonly (number | Point)[];
}

/** The drawing after the best changes that do not touch each other, or null when none gains anything. */
export function changedOnce(ground: BranchGround, drawing: BranchDrawing, allowance: number): BranchDrawing | null {
  const changes = [...sharpAngles(drawing, allowance), ...sideBySide(ground, drawing, allowance)];
  changes.sort((one, other) => lengthStep(other.gain) - lengthStep(one.gain) || byPlaces(one.places, other.places));
  const touched = new Set<number>();
  let places = [...drawing.places];
  let edges = [...drawing.edges];
  let changed = false;
  for (const change of changes) {
    if (change.places.some((place) => touched.has(place))) continue;
    const made = apply(ground, { places, edges }, change);
    if (!made) continue;
    for (const place of change.places) touched.add(place);
    places = [...made.places];
    edges = [...made.edges];
    changed = true;
  }
  return changed ? { places, edges } : null;
}

/** Of gains as great the one of the earlier parts: places of parts are numbered first. */
function byPlaces(one: readonly number[], other: readonly number[]): number {
  const inOrder = (places: readonly number[]) => [...places].sort((a, b) => a - b);
  const [a, b] = [inOrder(one), inOrder(other)];
  for (const [i, place] of a.entries()) if (place !== b[i]) return place - (b[i] ?? 0);
  return 0;
}

function apply(ground: BranchGround, drawing: BranchDrawing, change: Change): BranchDrawing | null {
  const places: Place[] = [...drawing.places];
  const joint =
    typeof change.joint === "number"
      ? change.joint
      : places.push({ kind: "joint", eye: { at: change.joint }, part: -1 }) - 1;
  const eye = (places[joint] as Place).eye;
  const gone = new Set(change.gone);
  const edges = drawing.edges.filter((edge) => !gone.has(edge));
  for (const end of change.ends) {
    if (end === joint) continue;
    const place = typeof end === "number" ? end : places.push({ kind: "network", eye: { at: end }, part: -1 }) - 1;
    if (!ground.sees(eye, (places[place] as Place).eye)) return null;
    edges.push({ a: joint, b: place });
  }
  return { places, edges };
}

function* pairs<T>(items: readonly T[]): Generator<[T, T]> {
  for (let i = 0; i < items.length; i++) {
    for (let j = i + 1; j < items.length; j++) yield [items[i] as T, items[j] as T];
  }
}

function sharpAngles(drawing: BranchDrawing, allowance: number): Change[] {
  const changes: Change[] = [];
  const at = edgesAt(drawing);
  const positions = drawing.places.map(({ eye }) => eye.at);
  at.forEach((edges, v) => {
    const center = positions[v] as Point;
    for (const [one, other] of pairs(edges)) {
      const [a, b] = [otherEnd(one, v), otherEnd(other, v)];
      const [pa, pb] = [positions[a] as Point, positions[b] as Point];
      const before = distanceBetween(center, pa) + distanceBetween(center, pb);
      if ((before - distanceBetween(pa, pb)) / 2 <= BRANCH_GAIN) continue;
      const p = fermatPoint(center, pa, pb);
      if (samePoint(p, center)) continue;
      const joint = samePoint(p, pa) ? a : samePoint(p, pb) ? b : p;
      const after = distanceBetween(p, center) + distanceBetween(p, pa) + distanceBetween(p, pb);
      const added =
        jointsAdded(drawing, at, v, -1) + (typeof joint === "number" ? jointsAdded(drawing, at, joint, 1) : 1);
      const gain = before - after - added * allowance;
      if (gain > BRANCH_GAIN) changes.push({ gain, places: [v, a, b], gone: [one, other], joint, ends: [v, a, b] });
    }
  });
  return changes;
}

/** How many more joints count at a place when `more` edges are added to it. */
function jointsAdded(drawing: BranchDrawing, at: readonly BranchEdge[][], place: number, more: number): number {
  const { kind } = drawing.places[place] as Place;
  if (kind === "part" || kind === "network") return 0;
  const count = at[place]?.length ?? 0;
  return Math.max(0, count + more - 2) - Math.max(0, count - 2);
}

function sideBySide(ground: BranchGround, drawing: BranchDrawing, allowance: number): Change[] {
  const runs = drawing.edges.flatMap((edge) => {
    for (const [end, start] of [
      [edge.a, edge.b],
      [edge.b, edge.a],
    ] as const) {
      if (drawing.places[end]?.kind !== "network" || drawing.places[start]?.kind === "network") continue;
      const [p, q] = [positionOfPlace(drawing, start), positionOfPlace(drawing, end)];
      return [{ edge, start, end, p, q, length: distanceBetween(p, q) }];
    }
    return [];
  });
  const changes: Change[] = [];
  for (const [one, other] of pairs(runs)) {
    if (one.start === other.start) continue;
    const before = one.length + other.length;
    if ((before - distanceBetween(one.p, other.p)) / 2 <= allowance) continue;
    for (const near of [one.q, other.q]) {
      const found = jointToNetwork(ground, one.p, other.p, near);
      if (!found || samePoint(found.joint, found.end)) continue;
      const { joint, end } = found;
      const at = samePoint(joint, one.p) ? one.start : samePoint(joint, other.p) ? other.start : joint;
      const after = distanceBetween(joint, end) + distanceBetween(joint, one.p) + distanceBetween(joint, other.p);
      const kind = typeof at === "number" ? drawing.places[at]?.kind : "joint";
      const gain = before - after - (kind === "joint" || kind === "bend" ? allowance : 0);
      if (gain <= BRANCH_GAIN) continue;
      const places = [one.start, other.start, one.end, other.end];
      changes.push({ gain, places, gone: [one.edge, other.edge], joint: at, ends: [one.start, other.start, end] });
    }
  }
  return changes;
}

function positionOfPlace(drawing: BranchDrawing, place: number): Point {
  return (drawing.places[place] as Place).eye.at;
}

const SLIDES = 24;

/** The joint of two places and the network: the joint and the place on the network move in turn until neither does. */
export function jointToNetwork(
  ground: BranchGround,
  a: Point,
  b: Point,
  near: Point,
): { joint: Point; end: Point } | null {
  let end = near;
  let joint = fermatPoint(a, b, end);
  for (let slide = 0; slide < SLIDES; slide++) {
    const found = ground.attachment({ at: joint }, Number.POSITIVE_INFINITY);
    if (!found) return null;
    end = found.at;
    const next = fermatPoint(a, b, end);
    if (distanceBetween(next, joint) <= BRANCH_GAIN) break;
    joint = next;
  }
  return { joint, end };
}
