/**
 * Shells that are tied to the perimeter bonding, grouped where they share a wall, and the recorded ties of each group.
 *
 * Term. Outline: of one shell its inside wall, in the file's order; of shells that share a wall the curve just outside
 * round all of them, so that no tie falls on the wall between them.
 */
import { areaToArea } from "../../geometry/distance.ts";
import { offsetCurves } from "../../geometry/offset.ts";
import { distanceAlongPath, pathFrom, pathLength } from "../../geometry/outline.ts";
import type { Path, PathData } from "../../geometry/types.ts";
import { type ShellFacts, shellFacts } from "../catalogue/common/shell-facts.ts";
import type { Body, Yard } from "../measures/yard.ts";
import type { KnownElement } from "../site/elements.ts";
import { bearing, perimeterBodies, perimeterCopper, shellOfGrid, steelSurfaces } from "./bearers.ts";
import { deadEndFact } from "./dead-end.ts";
import { ENDS_MEET } from "./joints.ts";
import { PERIMETER } from "./perimeter-name.ts";
import { leastOf, mostOf, type Standing } from "./standing.ts";
import { type TieReading, tieReadings } from "./tie-reading.ts";

/** Waters no farther apart than this share a wall, inches. Basis: judgement, common practice (a spa's dam wall). */
const SHARED_WALL = 18;
/** How far outside of shells that share a wall their common outline runs, beyond half of that wall, inches. */
const OUTSIDE = 1;

export interface RecordedTie {
  readonly reading: TieReading;
  readonly standing: Standing;
  /** Inches along the group's outline. */
  readonly along: number;
}

export interface TieGroup {
  /** The first is the one that the group's ties are reported with. */
  readonly bodies: readonly Body[];
  readonly outline: Path;
  readonly length: number;
  /** How many ties it needs. */
  readonly needed: number;
  /** Recorded ties that join perimeter and shell, one at a point, those left out that surely do not hold, in file order. */
  readonly recorded: readonly RecordedTie[];
}

/** Whether a body's shell is tied to the perimeter; a body that needs no perimeter bonding has nothing to tie. */
export function tiesOf(yard: Yard, body: Body): ShellFacts["ties"] {
  return perimeterBodies(yard).includes(body) ? shellFacts(yard, body).ties : "no";
}

/** The groups of shells that need ties, in file order; worked out once per yard. */
export function tieGroups(yard: Yard): readonly TieGroup[] {
  return yard.kept("tie groups", () => {
    const bodies = perimeterBodies(yard).filter((body) => tiesOf(yard, body) === "yes");
    const grouped: Body[][] = [];
    for (const body of bodies) {
      const touching = grouped.filter((group) => group.some((other) => gapBetween(other, body) <= SHARED_WALL));
      const rest = grouped.filter((group) => !touching.includes(group));
      grouped.splice(0, grouped.length, ...rest, [...touching.flat(), body]);
    }
    const order = (group: Body[]) => bodies.indexOf(group[0] as Body);
    return grouped.sort((a, b) => order(a) - order(b)).map((group) => groupOf(yard, group));
  });
}

export function groupWith(yard: Yard, body: Body): TieGroup | null {
  return tieGroups(yard).find(({ bodies }) => bodies.includes(body)) ?? null;
}

function gapBetween(a: Body, b: Body): number {
  return areaToArea(a.water, b.water).length;
}

function groupOf(yard: Yard, bodies: readonly Body[]): TieGroup {
  const outline = outlineOf(bodies);
  const needed = Math.ceil(Math.max(yard.edition.value("perimeter.ties"), yard.settings.ties));
  return { bodies, outline, length: pathLength(outline), needed, recorded: recordedTies(yard, bodies, outline) };
}

function outlineOf(bodies: readonly Body[]): Path {
  const only = bodies[0] as Body;
  if (bodies.length === 1) return drawnOutline(only.element.outline);
  let gap = 0;
  for (const body of bodies) {
    const others = bodies.filter((other) => other !== body).map((other) => gapBetween(body, other));
    gap = Math.max(gap, Math.min(...others));
  }
  const { loops } = offsetCurves(
    bodies.map(({ water }) => water),
    gap / 2 + OUTSIDE,
  );
  const round = loops.reduce((a, b) => (b.area > a.area ? b : a));
  return round.path;
}

function recordedTies(yard: Yard, bodies: readonly Body[], outline: Path): RecordedTie[] {
  const shells = new Set(bodies.map(({ id }) => id));
  const ties = tieReadings(yard).flatMap((reading): RecordedTie[] => {
    if (shellNames(yard, reading, shells).length === 0 || reading.standing === "no") return [];
    const made = namesPerimeter(yard, reading) ? reading.standing : overJumper(yard, reading);
    const standing = leastOf([made, shellEnd(yard, reading, shells)]);
    if (standing === "no") return [];
    return [{ reading, standing, along: distanceAlongPath(outline, reading.tie.at) }];
  });
  return atOnePoint(ties, pathLength(outline));
}

/** Ties at one point of the wall are one attachment: of them the surest counts, else the first. */
function atOnePoint(ties: readonly RecordedTie[], total: number): RecordedTie[] {
  const points: RecordedTie[] = [];
  for (const tie of ties) {
    const known = points.findIndex(({ along }) => {
      const apart = Math.abs(along - tie.along);
      return Math.min(apart, total - apart) <= ENDS_MEET;
    });
    if (known < 0) points.push(tie);
    else if (tie.standing === "sure" && points[known]?.standing !== "sure") points[known] = tie;
  }
  return points;
}

/** Whether there is anything in the shell to tie to: what it is known to hold, else what the site answers about this tie. */
function shellEnd(yard: Yard, reading: TieReading, shells: ReadonlySet<string>): Standing {
  const named = shellNames(yard, reading, shells);
  const best = mostOf(named.map((end) => bearing(yard, end)));
  return best === "sure" || named.every(({ kind }) => kind === "conductor")
    ? best
    : deadEndFact(yard, reading).standing;
}

/** What a tie names of shells: a pool, or the grid recorded in one by its own id. */
function shellNames(yard: Yard, { joins }: TieReading, shells: ReadonlySet<string>): readonly KnownElement[] {
  return joins.filter((end) => shells.has(end.kind === "conductor" ? (shellOfGrid(yard, end) ?? "") : end.id));
}

function namesPerimeter(yard: Yard, { tie, joins }: TieReading): boolean {
  if (tie.joins.includes(PERIMETER)) return true;
  const copper = perimeterCopper(yard);
  return joins.some(({ id }) => copper.some((conductor) => conductor.id === id) || steelSurfaces(yard).has(id));
}

/** The shell is tied to a branch whose other tie joins the perimeter: the branch and both ties have to hold. */
function overJumper(yard: Yard, reading: TieReading): Standing {
  const branches = reading.joins
    .filter((end) => end.kind === "conductor" && shellOfGrid(yard, end) === null)
    .map(({ id }) => id);
  const others = tieReadings(yard).filter(
    (other) => other !== reading && namesPerimeter(yard, other) && other.joins.some(({ id }) => branches.includes(id)),
  );
  const found = mostOf(others.map(({ standing }) => standing));
  return reading.standing === "sure" ? found : found === "no" ? "no" : "doubtful";
}

/** Outlines as they are drawn, whose first vertex and direction ties are counted by. */
const drawn = new WeakMap<PathData, Path>();

export function drawnOutline(data: PathData): Path {
  const known = drawn.get(data);
  if (known) return known;
  const made = pathFrom(data);
  drawn.set(data, made);
  return made;
}
