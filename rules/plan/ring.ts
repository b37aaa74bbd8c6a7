/**
 * The ring of the plan: even at the site's offset, its taut bounds, and the links that join loops of bodies far apart.
 *
 * Where only some of the band is planned as ring, the ring's course is cut to those stretches.
 */
import { branchTree } from "../../geometry/branches.ts";
import { clipLines, offsetRegion } from "../../geometry/clipping.ts";
import { pointToArea, pointToPath } from "../../geometry/distance.ts";
import { flattenToSide } from "../../geometry/flatten-side.ts";
import { flattenPath, signedArea } from "../../geometry/outline.ts";
import { boundsOverlap, distanceBetween, grownBounds } from "../../geometry/points.ts";
import { evenRing } from "../../geometry/ring.ts";
import { shortestRing } from "../../geometry/shortest-ring.ts";
import {
  CLIP_UNITS_PER_INCH,
  FINE_FLATTEN_TOLERANCE,
  FLATTEN_TOLERANCE,
  RING_SPIKE,
} from "../../geometry/tolerances.ts";
import type { Barrier, Path, Point, Region } from "../../geometry/types.ts";
import { boxOfBarrier } from "../measures/boxes.ts";
import type { Body, Yard } from "../measures/yard.ts";
import type { RingLoop, RingReport } from "../report.ts";
import { ringObstacles } from "./ring-obstacles.ts";

/** What the ring goes round and what it must stay clear of. */
export interface RingCourse {
  readonly bodies: readonly Body[];
  /** Walls and buildings: the ring stays on the pool side of them. */
  readonly barriers: readonly Barrier[];
  /** Ground that the ring only may not run through. */
  readonly keepOuts: readonly Barrier[];
}

/** The ring's curves round everything, before they are cut to where a ring is wanted. */
export interface RingCurves {
  readonly course: RingCourse;
  readonly offset: number;
  readonly even: readonly { readonly pools: readonly string[]; readonly path: Path; readonly length: number }[];
  /** Null: there is no room for one. */
  readonly short: readonly RingLoop[] | null;
  readonly bound: readonly RingLoop[] | null;
  /** Where walls leave no legal ring all round: the parts of the open ground's that they stand in. Else empty. */
  readonly barred: readonly RingLoop[];
  readonly tooClose: readonly { readonly path: readonly Point[]; readonly length: number }[];
}

export function ringCurves(yard: Yard, course: RingCourse): RingCurves {
  const min = yard.edition.value("ring.min");
  const max = yard.edition.value("ring.max");
  const offset = Math.min(max, Math.max(min, yard.settings.ringOffset));
  const margin = yard.settings.ringMargin;
  // Only what stands near the water shapes the curves: something else that moves leaves them as they are.
  const near = {
    bodies: course.bodies,
    barriers: yard.same.steady("barriers near the ring", nearby(course.barriers, course.bodies, max)),
    keepOuts: yard.same.steady("keep-outs near the ring", nearby(course.keepOuts, course.bodies, max)),
  };
  const inputs = [...near.bodies, near.barriers, near.keepOuts, min, max, offset, margin];
  return { ...yard.same.of("ring curves", inputs, () => curvesOf(near, { min, max, offset, margin })), course };
}

function nearby(barriers: readonly Barrier[], bodies: readonly Body[], distance: number): Barrier[] {
  const boxes = bodies.map(({ water }) => grownBounds(water.outer.bounds, distance));
  return barriers.filter((barrier) => boxes.some((box) => boundsOverlap(boxOfBarrier(barrier), box)));
}

interface RingLimits {
  readonly min: number;
  readonly max: number;
  readonly offset: number;
  readonly margin: number;
}

function curvesOf(course: RingCourse, { min, max, offset, margin }: RingLimits): Omit<RingCurves, "course"> {
  const waters = course.bodies.map((body) => body.water);
  const even = evenRing({ bodies: waters, offset, barriers: course.barriers, keepOuts: course.keepOuts, min });
  const names = (numbers: readonly number[]) => numbers.flatMap((n) => course.bodies[n]?.id ?? []);
  const obstacles = ringObstacles(waters, course.barriers, course.keepOuts, max);
  const taut = (from: number, to: number, around: Region): RingLoop[] | null => {
    if (!(from > 0 && to > from)) return null;
    const ring = shortestRing({ bodies: waters, min: from, max: to, obstacles: around });
    if (!ring.ok) return null;
    return ring.loops.map((loop) => ({ pools: names(loop.bodies), path: closed(loop.path), length: loop.length }));
  };
  const legal = taut(min, max, obstacles);
  // Where obstacles leave no legal way all round, the bound is that of the open ground, as far as it is legal.
  const { outside, inside } = legal ? { outside: legal, inside: [] } : partedBy(obstacles, taut(min, max, []));
  return {
    offset,
    even: even.loops.map(({ bodies, path, length }) => ({ pools: names(bodies), path, length })),
    short: taut(min + margin, max - margin, obstacles),
    bound: outside,
    barred: inside,
    tooClose: even.tooClose.map(({ path, length }) => ({ path: flattenPath(path), length })),
  };
}

/** What of the loops lies outside of a region and what inside; what runs along its edge is outside. */
function partedBy(
  region: Region,
  loops: readonly RingLoop[] | null,
): { readonly outside: readonly RingLoop[] | null; readonly inside: readonly RingLoop[] } {
  if (loops === null) return { outside: null, inside: [] };
  const taken = offsetRegion(region, -RING_SPIKE);
  const parts = loops.map(({ pools, path }) => {
    const cut = clipLines([[...path]], taken);
    const stretches = (lines: readonly Point[][]): RingLoop[] =>
      lines.map((line) => ({ pools, path: line, length: lengthOf(line) }));
    return { outside: stretches(cut.outside), inside: stretches(cut.inside) };
  });
  return { outside: parts.flatMap(({ outside }) => outside), inside: parts.flatMap(({ inside }) => inside) };
}

/** The ring over `region` (null: all of its course). */
export function layRing(yard: Yard, curves: RingCurves, region: Region | null): RingReport {
  const { course, offset, even, short, bound, barred, tooClose } = curves;
  const cut = (loops: readonly RingLoop[]): readonly RingLoop[] =>
    region === null ? loops : loops.flatMap(({ path, pools }) => stretchesOver(path, region, pools));
  const laid = even.map((loop): { inner: boolean; stretches: RingLoop[] } => {
    const { pools, path, length } = loop;
    const all = region === null;
    return {
      inner: signedArea(path) < 0,
      stretches: all
        ? [{ pools, path: closedPoints(path, FLATTEN_TOLERANCE), length }]
        : stretchesOver(closedPoints(path), region, pools),
    };
  });
  const loops = laid.flatMap(({ stretches }) => stretches);
  const toShell = laid.flatMap(({ inner, stretches }) => (inner ? linksToShell(yard, course, stretches) : []));
  const whole = even.filter((loop) => signedArea(loop.path) > 0);
  const shortLoops = short === null ? null : cut(short);
  return {
    offset,
    loops,
    length: total(loops),
    shortestLegal: bound ? total(cut(bound)) : total(loops),
    ...(total(cut(barred)) > GRID_STEP ? { legalIn: "part" as const } : {}),
    ...(shortLoops ? { short: { loops: shortLoops, length: total(shortLoops) } } : {}),
    ...(tooClose.length > 0 ? { tooClose } : {}),
    ...linksOf([...(region === null && whole.length > 1 ? linksBetween(yard, course, whole) : []), ...toShell]),
    pending: false,
  };
}

function linksOf(links: NonNullable<RingReport["links"]>): Pick<RingReport, "links"> {
  return links.length > 0 ? { links } : {};
}

/**
 * An inner loop (on an island, in a pocket of ground) has no dry way to the ring round the pool: each stretch of it is
 * joined to the steel or grid of a shell that conducts, straight at the inside wall. Another shell offers nothing there.
 */
function linksToShell(
  yard: Yard,
  course: RingCourse,
  stretches: readonly RingLoop[],
): NonNullable<RingReport["links"]> {
  const conductive = yard.edition.value("shell.conductive");
  const shells = course.bodies.filter(({ element }) => conductive.includes(element.shell));
  return stretches.flatMap(({ pools, path: [at] }) => {
    if (!at) return [];
    const ways = shells.filter(({ id }) => pools.includes(id)).map(({ water }) => pointToArea(at, water));
    const [way] = ways.sort((a, b) => a.length - b.length);
    return way ? [{ path: [at, way.from], length: way.length, pools, shell: true as const }] : [];
  });
}

/** Copper from loop to loop, so that all of the perimeter is one. */
function linksBetween(
  yard: Yard,
  course: RingCourse,
  loops: readonly { readonly pools: readonly string[]; readonly path: Path }[],
): { path: readonly Point[]; length: number; pools: readonly string[] }[] {
  const [first, ...others] = loops;
  if (!first) return [];
  // Coarser chords than a branch runs round, all of them outside of the water: links of large round pools take a moment, not half a minute.
  const water: Barrier[] = course.bodies.map((body) => ({
    id: body.id,
    shape: "solid",
    points: flattenToSide(body.water.outer, "right", FLATTEN_TOLERANCE),
  }));
  const blocked = yard.same.steady("between the loops", [...water, ...course.barriers, ...course.keepOuts]);
  // A link that bends last at a corner of what it goes round ends where the loop is nearest to that corner.
  const corners = [...course.barriers, ...course.keepOuts].flatMap(({ points }) => points);
  const bends = corners.length <= MOST_BENDS ? corners : [];
  const { junctionAllowance } = yard.settings;
  const tree = yard.same.of("ring links", [...loops.map(({ path }) => path), blocked, junctionAllowance], () =>
    branchTree({
      network: [closedPoints(first.path)],
      targets: others.map(({ path }, i) => ({
        id: String(i),
        at: [...everySoOften(closedPoints(path)), ...bends.map((bend) => pointToPath(bend, path).from)],
        along: [path],
      })),
      blocked,
      junctionAllowance,
    }),
  );
  return tree.branches.map((branch) => ({
    path: branch.path,
    length: branch.run,
    pools: others[Number(branch.to)]?.pools ?? [],
  }));
}

/** How far apart the places on a loop are that a link may start from whatever it bends at, inches. */
const LINK_STEP = 24;
/** Corners of walls and buildings up to which each has its place on a loop: with more, pairs of loops would take too long. */
const MOST_BENDS = 200;

function everySoOften(loop: readonly Point[]): Point[] {
  const places: Point[] = [];
  let last: Point | null = null;
  for (const p of loop) {
    if (last !== null && distanceBetween(last, p) < LINK_STEP) continue;
    if (last !== null) {
      const pieces = Math.floor(distanceBetween(last, p) / LINK_STEP);
      for (let i = 1; i < pieces; i++) {
        const t = i / pieces;
        places.push([last[0] + (p[0] - last[0]) * t, last[1] + (p[1] - last[1]) * t]);
      }
    }
    places.push(p);
    last = p;
  }
  return places;
}

function stretchesOver(loop: readonly Point[], region: Region, pools: readonly string[]): RingLoop[] {
  const { inside } = clipLines([[...loop]], region);
  return joinedAtStart(inside).map((path) => ({ pools, path, length: lengthOf(path) }));
}

/** Stretches of a closed loop: one that runs over the loop's start comes out of the clipping in two, and is put together. */
function joinedAtStart(stretches: readonly Point[][]): Point[][] {
  for (const [i, before] of stretches.entries()) {
    const end = before[before.length - 1];
    const j = stretches.findIndex(
      (after, k) => k !== i && end && after[0] && distanceBetween(end, after[0]) <= GRID_STEP,
    );
    const after = stretches[j];
    if (after === undefined) continue;
    return [...stretches.filter((_, k) => k !== i && k !== j), [...before, ...after.slice(1)]];
  }
  return [...stretches];
}

/** One step of the clipping's grid, inches: its results meet at the same place within this. */
const GRID_STEP = 2 / CLIP_UNITS_PER_INCH;

function closedPoints(path: Path, tolerance = FINE_FLATTEN_TOLERANCE): Point[] {
  return closed(flattenPath(path, tolerance));
}

function closed(points: readonly Point[]): Point[] {
  return points[0] ? [...points, points[0]] : [];
}

function lengthOf(points: readonly Point[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) length += distanceBetween(points[i - 1] as Point, points[i] as Point);
  return length;
}

function total(loops: readonly RingLoop[]): number {
  let length = 0;
  for (const loop of loops) length += loop.length;
  return length;
}
