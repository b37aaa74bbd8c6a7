/**
 * Which stretches of a perimeter loop recorded ring copper serves.
 *
 * Stages. 1. Of each ring conductor the stretches at the right offset are cut out, exactly; those behind a wall do not
 * serve. 2. Positions along them are put on the loop (the nearest of all loops); two that follow each other cover the way
 * between them. 3. What follows on one conductor without a break is one run.
 *
 * Terms. Run: an unbroken piece of one conductor at the right offset; `from` and `to` in inches along the loop, `to` not
 * less than `from`, both of any size (a run may pass the loop's start).
 */

import { pointToPath } from "../../geometry/distance.ts";
import { edgeLength, pointAt } from "../../geometry/edge.ts";
import { distanceAlongPath } from "../../geometry/outline.ts";
import { boundsDistance } from "../../geometry/points.ts";
import { LIMIT_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Area, Path, Point } from "../../geometry/types.ts";
import type { Yard } from "../measures/yard.ts";
import type { ConductorElement } from "../site/elements.ts";
import { perimeterCopper } from "./bearers.ts";
import { behindFact, behindWall } from "./behind-walls.ts";
import { standingOfFacts } from "./fact.ts";
import { layingFacts } from "./laying.ts";
import { type Stretch, stretchesBetween } from "./offset-range.ts";
import { watersFor } from "./place.ts";
import { leastOf } from "./standing.ts";
import { wireOf } from "./wire.ts";

export interface Run {
  readonly conductor: string;
  readonly from: number;
  readonly to: number;
  /** Nearer to the inside wall than the least offset: serves only where there is no room farther off. */
  readonly near: boolean;
}

/** Positions looked at along a stretch, inches apart. */
const STEP = 1;
/** Two positions that follow each other on the copper but lie farther apart on the loop have jumped to another part of it. */
const LONGEST_JUMP = 36;

/** The runs on each loop: of copper that surely serves, or of all that may. */
export function ringRuns(yard: Yard, loops: readonly Path[], surely: boolean): Run[][] {
  return yard.kept(`ring runs ${surely} ${loops.length}`, () => {
    if (yard.all("conductor").length > 0) yard.readsEverything();
    const runs: Run[][] = loops.map(() => []);
    if (loops.length === 0) return runs;
    for (const ring of perimeterCopper(yard)) {
      if (ring.role !== "ring" || !serves(yard, ring, surely)) continue;
      const shape = yard.shape(ring);
      if (shape.kind !== "path") continue;
      // Copper behind a wall serves what lies before it only by the site's answer.
      const before = behindFact(yard, ring).standing;
      const serving = before === "sure" || (!surely && before === "doubtful");
      const left = (p: Point) => !serving && behindWall(yard, p) !== null;
      for (const near of surely ? [false] : [false, true]) {
        const [min, max] = limits(yard, surely, near);
        for (const run of runsOf(ring.id, shape.path, watersFor(yard), min, max, loops, left))
          runs[run.loop]?.push({ ...run.run, near });
      }
    }
    return runs;
  });
}

function serves(yard: Yard, ring: ConductorElement, surely: boolean): boolean {
  const wire = wireOf(yard, ring);
  const standing = leastOf([wire.standing, wire.bare, standingOfFacts(layingFacts(yard, ring))]);
  return standing === "sure" || (!surely && standing === "doubtful");
}

/** The offsets that count; the site's accuracy narrows what is sure and widens what is possible. */
function limits(yard: Yard, surely: boolean, near: boolean): [min: number, max: number] {
  // A margin of exactly the accuracy is not sure (measures/compare.ts), and the stretches take in what equals a limit.
  const sure = yard.accuracy > 0 ? yard.accuracy + 2 * LIMIT_TOLERANCE : 0;
  const slack = surely ? sure : -yard.accuracy;
  const min = yard.edition.value("ring.min") + slack;
  return near ? [LIMIT_TOLERANCE, min] : [min, yard.edition.value("ring.max") - slack];
}

function runsOf(
  conductor: string,
  path: Path,
  waters: readonly Area[],
  min: number,
  max: number,
  loops: readonly Path[],
  left: (p: Point) => boolean,
) {
  const found: { loop: number; run: Omit<Run, "near"> }[] = [];
  const near = loops.flatMap((loop, i) => (boundsDistance(loop.bounds, path.bounds) <= max ? [i] : []));
  if (near.length === 0) return found;
  for (const chain of chainsOf(path, stretchesBetween(path, waters, min, max))) {
    let open: { loop: number; at: number; from: number; to: number } | null = null;
    const close = () => {
      if (open) found.push({ loop: open.loop, run: { conductor, from: open.from, to: open.to } });
    };
    for (const p of positionsOf(chain)) {
      if (left(p)) {
        close();
        open = null;
        continue;
      }
      const loop = nearestLoop(p, loops, near);
      const course = loops[loop] as Path;
      const total = lengthOf(course);
      const s = distanceAlongPath(course, p);
      const step: number = open === null || open.loop !== loop ? Number.NaN : shortWay(s - open.at, total);
      if (open !== null && Math.abs(step) <= LONGEST_JUMP) {
        const at: number = open.at + step;
        open = { loop, at, from: Math.min(open.from, at), to: Math.max(open.to, at) };
      } else {
        close();
        open = { loop, at: s, from: s, to: s };
      }
    }
    close();
  }
  return found;
}

/** Stretches that follow each other without a break, as chains; on a closed path the last may run on into the first. */
function chainsOf(path: Path, stretches: readonly Stretch[]): Stretch[][] {
  const chains: Stretch[][] = [];
  for (const stretch of stretches) {
    const chain = chains[chains.length - 1];
    const last = chain?.[chain.length - 1];
    if (chain && last && last.edge + 1 === stretch.edge && last.to === 1 && stretch.from === 0) chain.push(stretch);
    else chains.push([stretch]);
  }
  const first = chains[0];
  const last = chains[chains.length - 1];
  const end = last?.[last.length - 1];
  const start = first?.[0];
  if (
    path.closed &&
    first &&
    last &&
    start &&
    end &&
    start.edge === 0 &&
    start.from === 0 &&
    end.edge === path.edges.length - 1 &&
    end.to === 1
  ) {
    if (first === last) return [[...first, start]];
    chains[0] = [...last, ...first];
    chains.pop();
  }
  return chains;
}

function positionsOf(chain: readonly Stretch[]): Point[] {
  const points: Point[] = [];
  for (const { path } of chain) {
    for (const edge of path.edges) {
      const count = Math.max(1, Math.ceil(edgeLength(edge) / STEP));
      for (let i = points.length === 0 ? 0 : 1; i <= count; i++) points.push(pointAt(edge, i / count));
    }
  }
  return points;
}

/** Of the loops numbered in `among`, the number of the nearest. */
function nearestLoop(p: Point, loops: readonly Path[], among: readonly number[]): number {
  let best = among[0] ?? 0;
  if (among.length < 2) return best;
  let least = Number.POSITIVE_INFINITY;
  for (const i of among) {
    const away = pointToPath(p, loops[i] as Path).length;
    if (away < least) {
      least = away;
      best = i;
    }
  }
  return best;
}

const lengths = new WeakMap<Path, number>();

function lengthOf(path: Path): number {
  const known = lengths.get(path);
  if (known !== undefined) return known;
  const length = path.edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
  lengths.set(path, length);
  return length;
}

/** A step along a closed loop, the shorter way round. */
function shortWay(step: number, total: number): number {
  const inside = ((step % total) + total) % total;
  return inside > total / 2 ? inside - total : inside;
}
