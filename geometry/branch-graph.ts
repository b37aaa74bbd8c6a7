/**
 * Branches as a drawing of straight edges between places, and the operations that keep it a tree.
 *
 * Terms. Place: a stop on the network, a part (each of its connection points is a place of its own), a bend at a barrier
 * corner, or a joint where edges meet on open ground. The network counts as one root; the places of one part count as
 * connected with each other.
 */
import { distanceBetween } from "./points.ts";
import type { Eye } from "./sight.ts";
import { BRANCH_GAIN, SIGHT_SLACK } from "./tolerances.ts";
import type { Point } from "./types.ts";

export type PlaceKind = "network" | "part" | "bend" | "joint";

export interface Place {
  readonly kind: PlaceKind;
  readonly eye: Eye;
  /** Number of the part, for parts; -1 otherwise. */
  readonly part: number;
}

export interface BranchEdge {
  readonly a: number;
  readonly b: number;
}

export interface BranchDrawing {
  readonly places: readonly Place[];
  readonly edges: readonly BranchEdge[];
}

export function positionOf(drawing: BranchDrawing, place: number): Point {
  return (drawing.places[place] as Place).eye.at;
}

export function lengthOfEdge(drawing: BranchDrawing, { a, b }: BranchEdge): number {
  return distanceBetween(positionOf(drawing, a), positionOf(drawing, b));
}

/**
 * A length as something to put in order by: lengths that differ by rounding are equal, so that what comes first of them
 * does not depend on how the yard is turned, but on the order of the parts.
 */
export function lengthStep(length: number): number {
  return Math.round(length / BRANCH_GAIN);
}

export function drawingLength(drawing: BranchDrawing): number {
  return drawing.edges.reduce((sum, edge) => sum + lengthOfEdge(drawing, edge), 0);
}

/** Edges at every place. */
export function edgesAt(drawing: BranchDrawing): BranchEdge[][] {
  const at: BranchEdge[][] = drawing.places.map(() => []);
  for (const edge of drawing.edges) {
    at[edge.a]?.push(edge);
    at[edge.b]?.push(edge);
  }
  return at;
}

export function otherEnd(edge: BranchEdge, place: number): number {
  return edge.a === place ? edge.b : edge.a;
}

/** Buried joints: at every bend or joint, one for each edge beyond the two of a plain run. */
export function jointCount(drawing: BranchDrawing): number {
  let joints = 0;
  edgesAt(drawing).forEach((edges, place) => {
    const { kind } = drawing.places[place] as Place;
    if (kind === "bend" || kind === "joint") joints += Math.max(0, edges.length - 2);
  });
  return joints;
}

/** Length plus the allowance for every buried joint. */
export function drawingCost(drawing: BranchDrawing, allowance: number): number {
  return drawingLength(drawing) + allowance * jointCount(drawing);
}

/**
 * The same drawing as a tree: edges are cut at places that lie on them, the longest edge of every circle goes, and so
 * does every run that ends at a bend or joint.
 */
export function asTree(drawing: BranchDrawing): BranchDrawing {
  const cut = cutAtPlaces(drawing);
  const edges = withoutCircles(cut);
  return withoutIdlePlaces(withoutLooseEnds({ places: cut.places, edges }));
}

function cutAtPlaces(drawing: BranchDrawing): BranchDrawing {
  const seen = new Set<string>();
  const edges: BranchEdge[] = [];
  const used = new Set(drawing.edges.flatMap(({ a, b }) => [a, b]));
  for (const edge of drawing.edges) {
    const a = positionOf(drawing, edge.a);
    const b = positionOf(drawing, edge.b);
    const length = distanceBetween(a, b);
    const stops: { t: number; place: number }[] = [{ t: 0, place: edge.a }];
    for (const place of used) {
      if (place === edge.a || place === edge.b || length === 0) continue;
      const p = positionOf(drawing, place);
      const t = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length;
      if (t <= SIGHT_SLACK || t >= length - SIGHT_SLACK) continue;
      const off = Math.abs((p[1] - a[1]) * (b[0] - a[0]) - (p[0] - a[0]) * (b[1] - a[1])) / length;
      if (off <= SIGHT_SLACK) stops.push({ t, place });
    }
    stops.push({ t: length, place: edge.b });
    stops.sort((one, other) => one.t - other.t);
    for (let i = 1; i < stops.length; i++) {
      const from = (stops[i - 1] as { place: number }).place;
      const to = (stops[i] as { place: number }).place;
      const key = from < to ? `${from} ${to}` : `${to} ${from}`;
      if (seen.has(key)) continue;
      seen.add(key);
      edges.push({ a: from, b: to });
    }
  }
  return { places: drawing.places, edges };
}

/** A forest of groups: which places are connected. The network is group 0, each part a group from the start. */
export function connectedGroups(places: readonly Place[]): {
  join(a: number, b: number): boolean;
  same(a: number, b: number): boolean;
} {
  const parent: number[] = places.map((_, i) => i);
  const find = (i: number): number => {
    let root = i;
    while (parent[root] !== root) root = parent[root] as number;
    parent[i] = root;
    return root;
  };
  const join = (a: number, b: number): boolean => {
    const [one, other] = [find(a), find(b)];
    if (one === other) return false;
    parent[Math.max(one, other)] = Math.min(one, other);
    return true;
  };
  const firstOf = new Map<string, number>();
  places.forEach(({ kind, part }, i) => {
    if (kind !== "network" && kind !== "part") return;
    const key = `${kind} ${part}`;
    const first = firstOf.get(key);
    if (first === undefined) firstOf.set(key, i);
    else join(first, i);
  });
  return { join, same: (a, b) => find(a) === find(b) };
}

function withoutCircles(drawing: BranchDrawing): BranchEdge[] {
  const groups = connectedGroups(drawing.places);
  return drawing.edges
    .map((edge, order) => ({ edge, order, length: lengthStep(lengthOfEdge(drawing, edge)) }))
    .sort((one, other) => one.length - other.length || one.order - other.order)
    .filter(({ edge }) => groups.join(edge.a, edge.b))
    .sort((one, other) => one.order - other.order)
    .map(({ edge }) => edge);
}

function withoutLooseEnds(drawing: BranchDrawing): BranchDrawing {
  let { edges } = drawing;
  for (;;) {
    const count = drawing.places.map(() => 0);
    for (const { a, b } of edges) {
      count[a] = (count[a] ?? 0) + 1;
      count[b] = (count[b] ?? 0) + 1;
    }
    const loose = (place: number): boolean => {
      const { kind } = drawing.places[place] as Place;
      return count[place] === 1 && (kind === "bend" || kind === "joint");
    };
    const kept = edges.filter(({ a, b }) => !loose(a) && !loose(b));
    if (kept.length === edges.length) return { places: drawing.places, edges };
    edges = kept;
  }
}

/** Leaves out places without edges (parts stay). */
function withoutIdlePlaces(drawing: BranchDrawing): BranchDrawing {
  const used = new Set(drawing.edges.flatMap(({ a, b }) => [a, b]));
  const places: Place[] = [];
  const renumbered = drawing.places.map((place, i) => {
    if (!used.has(i) && place.kind !== "part") return -1;
    places.push(place);
    return places.length - 1;
  });
  return {
    places,
    edges: drawing.edges.map(({ a, b }) => ({ a: renumbered[a] as number, b: renumbered[b] as number })),
  };
}
