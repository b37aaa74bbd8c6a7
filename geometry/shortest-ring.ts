/**
 * The shortest legal ring: closed curves of the least total length that keep ground farther than `max` from the water
 * apart from everything nearer than `min`, and cross no obstacle. Round one body that is a string pulled tight between
 * two fences.
 *
 * Stages. 1. The strips of legal ground (ring-strips.ts), first without obstacles. 2. In each strip, every way of going
 * round what has to be gone round (bodies together or apart, a pocket of ground by a loop of its own or left outside) is
 * pulled tight (taut-loop.ts; with nothing else in the strip, taut-zip.ts); the shortest counts. 3. Where that crosses an
 * obstacle, the strips are cut by the obstacles and the work is done again; one that stands free in the strip may be
 * passed on either side.
 *
 * The curve is drawn on the legal side, within TAUT_TOLERANCE of the exact limits, so its length is never too small and
 * too large by some thousandths of an inch. It is a bound, not a route to lay (geometry of a plan: ring.ts).
 */
import { clipLines, unionRegions } from "./clipping.ts";
import { openStrips, type Strip, type StripColor, strippedOf } from "./ring-strips.ts";
import { loopLength, tautLoop } from "./taut-loop.ts";
import { type TautMesh, tautMesh } from "./taut-mesh.ts";
import { zippedString } from "./taut-zip.ts";
import { TAUT_TOLERANCE } from "./tolerances.ts";
import type { Area, Point, Region } from "./types.ts";

export interface ShortestRingRequest {
  /** The bodies that share a perimeter. */
  readonly bodies: readonly Area[];
  /** Limits of the distance to the nearest inside wall, inches, 0 < min < max. */
  readonly min: number;
  readonly max: number;
  /** What the ring may not cross: keep-outs, footprints of buildings and walls; they may overlap. */
  readonly obstacles?: Region;
}

export interface TautRing {
  /** Counter-clockwise, first position not repeated. */
  readonly path: readonly Point[];
  readonly length: number;
  /** Numbers of the bodies it goes round; of a loop round a pocket of ground: none. */
  readonly bodies: readonly number[];
}

export type ShortestRing =
  | { readonly ok: true; readonly loops: readonly TautRing[]; readonly length: number }
  | {
      readonly ok: false;
      /** `blocked`: no legal ground is left at `where`. `unsolved`: the strip there could not be cut into triangles. */
      readonly reason: "blocked" | "unsolved";
      readonly where: Point;
    };

/** The shortest curves between the limits, or where none exists. No bodies: no loops. */
export function shortestRing(request: ShortestRingRequest): ShortestRing {
  const { bodies, min, max } = request;
  if (!(min > 0) || !(max > min) || !Number.isFinite(max))
    throw new Error(`ring limits must rise from above 0, not ${min} to ${max}`);
  const obstacles = unionRegions([request.obstacles ?? []]);
  const open = openStrips(bodies, min, max);
  const free = solveStrips(open);
  if (!free.ok || obstacles.length === 0 || !crosses(free.loops, obstacles)) return free;
  const { strips, blocked } = strippedOf(open, obstacles, bodies, min, max);
  const where = blocked[0] ?? uncovered(open, strips);
  return where ? { ok: false, reason: "blocked", where } : solveStrips(strips);
}

function crosses(loops: readonly TautRing[], obstacles: Region): boolean {
  const lines = loops.map(({ path }) => [...path, ...path.slice(0, 1)]);
  return clipLines(lines, obstacles).inside.some((line) => extent(line) > TAUT_TOLERANCE);
}

function extent(line: readonly Point[]): number {
  const [x0, y0] = line[0] ?? [0, 0];
  return Math.max(0, ...line.map(([x, y]) => Math.hypot(x - x0, y - y0)));
}

/** A place on a body's own curve where obstacles took all of the strip away. */
function uncovered(open: readonly Strip[], left: readonly Strip[]): Point | null {
  const covered = new Set(left.flatMap(({ holes }) => holes.flatMap((ring) => ring.bodies)));
  for (const { holes } of open) {
    for (const ring of holes) {
      if (ring.color === "near" && !ring.bodies.some((body) => covered.has(body))) return ring.points[0] ?? null;
    }
  }
  return null;
}

function solveStrips(strips: readonly Strip[]): ShortestRing {
  const loops: TautRing[] = [];
  let length = 0;
  for (const strip of strips) {
    const solved = solveStrip(strip);
    if (!solved) return { ok: false, reason: "unsolved", where: strip.outer.points[0] ?? [Number.NaN, Number.NaN] };
    for (const loop of solved) {
      loops.push(loop);
      length += loop.length;
    }
  }
  return { ok: true, loops, length };
}

/** Ring numbers of the mesh that loops go round: one list for each loop. */
type Grouping = readonly (readonly number[])[];

function solveStrip({ outer, holes }: Strip): TautRing[] | null {
  const outside: StripColor = outer.color === "free" ? "far" : outer.color;
  const numbered = holes.map(({ color }, i) => ({ color, ring: i + 1 }));
  const inside = numbered.filter(({ color }) => color !== outside && color !== "free").map(({ ring }) => ring);
  if (inside.length === 0) return [];
  const only = inside.length === 1 ? holes[0] : undefined;
  if (only && holes.length === 1) {
    const zipped = zippedString(outer.points, only.points);
    if (zipped) return [{ ...zipped, bodies: only.bodies }];
  }
  const pockets = numbered.filter(({ color }) => color === outside).map(({ ring }) => ring);
  const posts = numbered.filter(({ color }) => color === "free").map(({ ring }) => ring);
  const mesh = tautMesh(
    outer.points,
    holes.map(({ points }) => points),
  );
  if (!mesh) return null;
  const pull = puller(mesh);
  let best: Grouping | null = null;
  let bestLength = Number.POSITIVE_INFINITY;
  const consider = (grouping: Grouping): boolean => {
    let sum = 0;
    for (const group of grouping) sum += pull(group)?.length ?? Number.POSITIVE_INFINITY;
    if (!(sum < bestLength)) return false;
    best = grouping;
    bestLength = sum;
    return true;
  };
  for (const groups of partitions(inside)) {
    consider(groups);
    for (const pocket of pockets) {
      groups.forEach((group, i) => {
        consider([...groups.map((other, k) => (k === i ? [...group, pocket] : other)), [pocket]]);
      });
    }
  }
  while (best && passPosts(best, posts, consider)) if (!best) return null;
  if (!best) return null;
  return (best as Grouping).map((group) => {
    const { loop, length } = pull(group) as Pulled;
    const bodies = new Set(group.flatMap((ring) => holes[ring - 1]?.bodies ?? []));
    return {
      path: loop.map((corner) => mesh.points[corner] as Point),
      length,
      bodies: [...bodies].sort((a, b) => a - b),
    };
  });
}

interface Pulled {
  readonly loop: readonly number[];
  readonly length: number;
}

/** Tight strings by what they go round, each worked out once. */
function puller(mesh: TautMesh): (group: readonly number[]) => Pulled | null {
  const known = new Map<string, Pulled | null>();
  return (group) => {
    const key = [...group].sort((a, b) => a - b).join(" ");
    const found = known.get(key);
    if (found !== undefined) return found;
    const loop = tautLoop(mesh, group);
    const pulled = loop && { loop, length: loopLength(mesh, loop) };
    known.set(key, pulled);
    return pulled;
  };
}

/** Tries every free obstacle on the other side of every loop; true when that made the loops shorter. */
function passPosts(grouping: Grouping, posts: readonly number[], consider: (grouping: Grouping) => boolean): boolean {
  for (const post of posts) {
    for (let i = 0; i < grouping.length; i++) {
      const flipped = grouping.map((group, k) =>
        k !== i ? group : group.includes(post) ? group.filter((ring) => ring !== post) : [...group, post],
      );
      if (consider(flipped)) return true;
    }
  }
  return false;
}

/** Most bodies of one strip for which every grouping is tried; of more, all together and all apart. */
const GROUPED_BODIES = 4;

function partitions(items: readonly number[]): number[][][] {
  if (items.length > GROUPED_BODIES) return [[[...items]], items.map((item) => [item])];
  const [first, ...rest] = items;
  if (first === undefined) return [[]];
  return partitions(rest).flatMap((groups) => [
    ...groups.map((group, i) => groups.map((other, k) => (k === i ? [first, ...group] : other))),
    [[first], ...groups],
  ]);
}
