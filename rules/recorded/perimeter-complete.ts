/**
 * Whether perimeter bonding is complete as recorded, loop by loop.
 *
 * Stages. 1. Each loop's course says which methods serve which stretch (loop-course.ts). 2. Paving steel that is named in a
 * tie, recorded grids and runs of recorded ring serve the stretches whose methods they are. 3. What is left is a gap; runs
 * that follow each other without being joined are a break (a gap of length 0); so is copper or steel that nothing joins to
 * the rest, unless one joined part is complete without it, and a loop on an island that is joined to neither the shell nor
 * the loop round the pool. 4. All of it twice: with what surely serves, and with what may.
 *
 * Source: NEC 680.26(B)(2) of the edition in force.
 */
import { offsetRegion, regionContains } from "../../geometry/clipping.ts";
import { distanceAlongPath, pointAlong, signedArea } from "../../geometry/outline.ts";
import type { Point } from "../../geometry/types.ts";
import type { Yard } from "../measures/yard.ts";
import type { PieceMethod } from "../perimeter/methods.ts";
import { MESH_QUESTION } from "../perimeter/surface-class.ts";
import { pavingSteel } from "./bearers.ts";
import { hasCopper, type Recorded } from "./graph.ts";
import { type GridCover, gridCover } from "./grid-cover.ts";
import { acrossStart, holdsWhere, type Interval, turnsIn, united, within, without } from "./intervals.ts";
import { ENDS_MEET } from "./joints.ts";
import { acrossBand, type CourseStretch, type PerimeterLoop, perimeterLoops } from "./loop-course.ts";
import { type Run, ringRuns } from "./ring-cover.ts";
import { chainOf } from "./run-chain.ts";
import type { Standing } from "./standing.ts";

export interface Gap {
  /** Along the loop; a single position where copper is only not joined. */
  readonly path: readonly Point[];
  /** Inches of the loop; 0 where copper is only not joined. */
  readonly length: number;
  /** The middle of it. */
  readonly at: Point;
  readonly surface: string | null;
  readonly body: string;
  /** Whether bonding is surely needed here (else a question about the surface is open). */
  readonly needed: boolean;
}

export interface LoopCheck {
  readonly bodies: readonly string[];
  readonly length: number;
  /** `doubtful`: complete only if facts that are not given turn out well. */
  readonly complete: Standing;
  readonly gaps: readonly Gap[];
}

export interface PerimeterCheck {
  readonly complete: Standing;
  readonly gaps: readonly Gap[];
}

/** Every loop of perimeter bonding of the yard, checked once. */
export function checkLoops(yard: Yard, recorded: Recorded): readonly LoopCheck[] {
  return yard.kept("loop checks", () => {
    // What is recorded goes on reading the yard; where nothing is, it says no to everything.
    if (hasCopper(yard)) yard.readsEverything();
    const loops = perimeterLoops(yard);
    const sure = gapsOfLoops(yard, recorded, loops, true);
    const possible = gapsOfLoops(yard, recorded, loops, false);
    return loops.map(({ bodies, length }, i) => {
      const [no, doubtful] = [possible[i] ?? [], sure[i] ?? []];
      return {
        bodies: bodies.map(({ id }) => id),
        length,
        complete: no.length > 0 ? "no" : doubtful.length > 0 ? "doubtful" : "sure",
        gaps: no.length > 0 ? no : doubtful,
      };
    });
  });
}

/** The perimeter bonding of one body; with `surface`, only where that surface (null: bare ground) lies on top. */
export function perimeterComplete(
  yard: Yard,
  body: string,
  recorded: Recorded,
  surface?: string | null,
): PerimeterCheck {
  const loops = checkLoops(yard, recorded).filter(({ bodies }) => bodies.includes(body));
  const mine = (gap: Gap) => gap.body === body && (surface === undefined || gap.surface === surface);
  const no = loops.filter(({ complete }) => complete === "no").flatMap(({ gaps }) => gaps.filter(mine));
  if (no.length > 0) return { complete: "no", gaps: no };
  const doubtful = loops.flatMap(({ gaps }) => gaps.filter(mine));
  return { complete: doubtful.length > 0 || loops.length === 0 ? "doubtful" : "sure", gaps: doubtful };
}

/** Steps in which a grid's cover is looked at, inches. */
const STEP = 2;
/** How far along the loop a joint may be recorded from where two runs meet, inches: a tie is drawn near the ends it joins. */
const JOINT_NEAR = 12;
/** Ends of a gap's drawing, inches apart. */
const DRAWN = 4;

/** What serves a loop: ring copper, grids, and the surfaces whose steel counts. */
interface Laid {
  readonly runs: readonly Run[];
  readonly grids: readonly GridCover[];
  counts(surface: string): boolean;
}

interface Served extends Interval {
  readonly by: string;
  readonly stretch: CourseStretch;
}

function gapsOfLoops(yard: Yard, recorded: Recorded, loops: readonly PerimeterLoop[], surely: boolean): Gap[][] {
  const runs = ringRuns(
    yard,
    loops.map(({ path }) => path),
    surely,
  );
  const grids = grownGrids(yard, surely);
  const checked = loops.map((loop, i): Checked => {
    const laid: Laid = { runs: runs[i] ?? [], grids, counts: () => true };
    const found = checkLoop(yard, recorded, loop, laid, surely);
    // Only joints are lacking: copper that one joined part of it makes superfluous does not have to be joined to that.
    if (found.gaps.length === 0 || found.gaps.some(({ length }) => length > 0)) return found;
    const parts = joinedParts(recorded, loop, laid, surely);
    return (
      parts.map((part) => checkLoop(yard, recorded, loop, part, surely)).find(({ gaps }) => gaps.length === 0) ?? found
    );
  });
  return checked.map(({ gaps, first }, i) => {
    const loop = loops[i];
    if (!loop || !first || gaps.length > 0 || isJoined(recorded, loops, checked, i, surely)) return gaps;
    return [gapAt(loop, first.from, first.stretch)];
  });
}

/** What one loop lacks, and the first thing that serves it. */
interface Checked {
  readonly gaps: Gap[];
  readonly first: Served | undefined;
}

/** Whether what serves a loop on an island is joined to the shell of its body or to what serves the loop round that. */
function isJoined(
  recorded: Recorded,
  loops: readonly PerimeterLoop[],
  checked: readonly Checked[],
  i: number,
  surely: boolean,
): boolean {
  const loop = loops[i];
  const by = checked[i]?.first?.by;
  if (!loop || by === undefined || signedArea(loop.path) > 0) return true;
  const shared = (other: PerimeterLoop) => other.bodies.some((body) => loop.bodies.includes(body));
  const round = loops.flatMap((other, k) =>
    signedArea(other.path) > 0 && shared(other) ? (checked[k]?.first?.by ?? []) : [],
  );
  return [...loop.bodies.map(({ id }) => id), ...round].some((id) => holds(recorded.connected(id, by), surely));
}

/** What is laid on a loop, taken apart into what is joined. */
function joinedParts(recorded: Recorded, loop: PerimeterLoop, { runs, grids }: Laid, surely: boolean): Laid[] {
  const surfaces = loop.course.flatMap(({ entry }) => entry.piece.surface ?? []);
  const ids = new Set([...runs.map(({ conductor }) => conductor), ...grids.map(({ id }) => id), ...surfaces]);
  const parts: string[][] = [];
  for (const id of ids) {
    const part = parts.find(([first]) => first !== undefined && holds(recorded.connected(first, id), surely));
    if (part) part.push(id);
    else parts.push([id]);
  }
  // Copper that nothing is tied to does not stand in for copper that is tied to shell and parts.
  const tied = parts.filter((part) => part.some((id) => holds(recorded.tied(id), surely)));
  return (tied.length > 0 ? tied : parts).map((part) => ({
    runs: runs.filter(({ conductor }) => part.includes(conductor)),
    grids: grids.filter(({ id }) => part.includes(id)),
    counts: (id) => part.includes(id),
  }));
}

/** A mesh reaches half its spacing beyond its last wire. */
function grownGrids(yard: Yard, surely: boolean): GridCover[] {
  const half = yard.edition.value("grid.spacing") / 2;
  return gridCover(yard, surely).map((cover) => ({ ...cover, region: offsetRegion(cover.region, half) }));
}

function checkLoop(
  yard: Yard,
  recorded: Recorded,
  loop: PerimeterLoop,
  { runs, grids, counts }: Laid,
  surely: boolean,
): Checked {
  const gaps: Gap[] = [];
  const served: Served[] = [];
  const byRing: (Interval & { readonly stretch: CourseStretch })[] = [];
  for (const stretch of loop.course) {
    const methods = methodsOf(stretch.entry);
    if (methods.length === 0) continue;
    const surface = stretch.entry.piece.surface;
    if (
      surface !== null &&
      counts(surface) &&
      methods.includes("steel") &&
      steelServes(yard, recorded, surface, surely)
    ) {
      served.push({ from: stretch.from, to: stretch.to, by: surface, stretch });
      continue;
    }
    const covered: Interval[] = [];
    if (methods.includes("grid")) {
      for (const grid of grids) {
        for (const part of holdsWhere(stretch, STEP, (s) => gridServes(yard, loop, stretch, grid, s))) {
          covered.push(part);
          served.push({ ...part, by: grid.id, stretch });
        }
      }
    }
    const rest = without(stretch, covered);
    if (!methods.includes("ring")) {
      for (const part of holesOf(loop, stretch, rest)) {
        if (part.to - part.from > STEP) gaps.push(gapOf(loop, stretch, part));
      }
      continue;
    }
    const ring = runs.filter(({ near }) => stretch.tight || !near).flatMap((run) => turnsIn(run, loop.length, stretch));
    const holes = rest.flatMap((part) => without(part, united(ring, ENDS_MEET)));
    for (const hole of holesOf(loop, stretch, holes)) {
      if (hole.to - hole.from > ENDS_MEET) gaps.push(gapOf(loop, stretch, hole));
    }
    for (const part of rest)
      byRing.push(...within(part, united(ring, ENDS_MEET)).map((served) => ({ ...served, stretch })));
  }
  const joined = (a: Run, b: Run, where: Interval) => {
    if (a === b) return holds(recorded.closedOnItself(a.conductor), surely);
    // Two runs of one conductor are one wire: what parts them is a stretch out of place, which is a gap of its own.
    if (a.conductor === b.conductor) return true;
    const seam = { from: where.from - JOINT_NEAR, to: where.to + JOINT_NEAR };
    return recorded
      .jointsBetween(a.conductor, b.conductor)
      .some(
        ({ at, standing }) => holds(standing, surely) && passes(seam, distanceAlongPath(loop.path, at), loop.length),
      );
  };
  for (const interval of acrossStart(united(byRing, ENDS_MEET), loop.length, ENDS_MEET)) {
    const closed = interval.to - interval.from >= loop.length - ENDS_MEET;
    const chain = chainOf(interval, loop.length, closed, runs, joined);
    const stretchAt = (at: number) => (byRing.find((part) => passes(part, at, loop.length)) ?? byRing[0])?.stretch;
    for (const at of chain.breaks) {
      const stretch = stretchAt(at);
      if (stretch) gaps.push(gapAt(loop, at, stretch));
    }
    const stretch = stretchAt(interval.from);
    if (stretch) for (const by of chain.conductors) served.push({ ...interval, by, stretch });
  }
  const first = served[0];
  for (const entry of served) {
    if (!first || served.findIndex(({ by }) => by === entry.by) !== served.indexOf(entry)) continue;
    if (!holds(recorded.connected(first.by, entry.by), surely)) gaps.push(gapAt(loop, entry.from, entry.stretch));
  }
  return { gaps, first };
}

/** On a stretch that is the whole loop, a hole may pass the loop's start. */
function holesOf(loop: PerimeterLoop, stretch: CourseStretch, holes: readonly Interval[]): Interval[] {
  return stretch.to - stretch.from < loop.length ? [...holes] : acrossStart(holes, loop.length, 0);
}

function holds(standing: Standing, surely: boolean): boolean {
  return standing === "sure" || (!surely && standing === "doubtful");
}

/** The methods that may serve a piece; none where it needs no bonding. */
function methodsOf({ allowed, planned }: PieceMethod): readonly string[] {
  if (planned === "none-needed" || allowed.includes("none-needed")) return [];
  return [...new Set([...allowed, planned])];
}

/** A piece whose need hangs on an open question; which steel counts is no question of need. */
function surelyNeeded({ bonding, question }: PieceMethod): boolean {
  return bonding !== "review" || question?.id === MESH_QUESTION.id;
}

function steelServes(yard: Yard, recorded: Recorded, surface: string, surely: boolean): boolean {
  const element = yard.get(surface);
  return (
    element?.kind === "surface" && holds(pavingSteel(yard, element), surely) && holds(recorded.tied(surface), surely)
  );
}

/** Whether a grid lies under all of the stretch's piece at a place of the loop, straight across the band. */
function gridServes(yard: Yard, loop: PerimeterLoop, stretch: CourseStretch, grid: GridCover, s: number): boolean {
  const body = yard.body(stretch.body);
  if (!body) return false;
  const here = pointAlong(loop.path, s);
  const probes = [here, ...acrossBand(yard, body, here)].filter((p) => regionContains(stretch.entry.piece.region, p));
  return probes.length > 0 && probes.every((p) => regionContains(grid.region, p));
}

function gapOf(loop: PerimeterLoop, stretch: CourseStretch, { from, to }: Interval): Gap {
  const count = Math.max(1, Math.ceil((to - from) / DRAWN));
  const path = Array.from({ length: count + 1 }, (_, i) => pointAlong(loop.path, from + ((to - from) * i) / count));
  const at = pointAlong(loop.path, (from + to) / 2);
  return {
    path,
    length: to - from,
    at,
    surface: stretch.entry.piece.surface,
    body: stretch.body,
    needed: surelyNeeded(stretch.entry),
  };
}

function gapAt(loop: PerimeterLoop, s: number, { entry, body }: CourseStretch): Gap {
  const at = pointAlong(loop.path, s);
  return { path: [at], length: 0, at, surface: entry.piece.surface, body, needed: surelyNeeded(entry) };
}

/** Whether an interval, turn after turn, has a place of the loop in it, its ends included. */
function passes(interval: Interval, at: number, total: number): boolean {
  return turnsIn(interval, total, { from: at - ENDS_MEET, to: at + ENDS_MEET }).length > 0;
}
