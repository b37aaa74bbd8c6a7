/**
 * Recorded joints of conductors with each other: where an end of one meets an end of another, or where a splice at an end
 * is made onto another's run. Touching in plan is no connection: the conductors' own `joint` has to say that they are
 * joined. Sources: NEC 680.26(B), (B)(2), 250.8.
 */
import { pointToPath } from "../../geometry/distance.ts";
import { distanceBetween, grownBounds } from "../../geometry/points.ts";
import { boxIndex } from "../../geometry/spatial-index.ts";
import type { Path, Point } from "../../geometry/types.ts";
import type { Yard } from "../measures/yard.ts";
import type { ConductorElement } from "../site/elements.ts";
import type { Standing } from "./standing.ts";

/** Ends of conductors this close are drawn as meeting, inches: what a tape or a finger on a tablet may miss by. */
export const ENDS_MEET = 1;

export interface Joint {
  readonly a: string;
  readonly b: string;
  readonly at: Point;
  readonly standing: Standing;
}

interface Run {
  readonly conductor: ConductorElement;
  readonly path: Path;
  readonly ends: readonly Point[];
}

/** The joints between conductors, `no` ones left out. A conductor whose own ends meet is joint to itself (a = b). */
export function recordedJoints(yard: Yard): readonly Joint[] {
  return yard.kept("recorded joints", () => {
    const runs = yard.all("conductor").flatMap((conductor): Run[] => {
      const shape = yard.shape(conductor);
      return shape.kind === "path" ? [{ conductor, path: shape.path, ends: endsOf(shape.path) }] : [];
    });
    const index = boxIndex(runs.map(({ path }) => path.bounds));
    const joints: Joint[] = [];
    const add = (a: Run, b: Run, at: Point | undefined, standing: Standing) => {
      if (at && standing !== "no") joints.push({ a: a.conductor.id, b: b.conductor.id, at, standing });
    };
    for (const [i, run] of runs.entries()) {
      const [start, end] = run.ends;
      if (start && end && meet(start, end)) add(run, run, start, selfStanding(yard, run.conductor));
      for (const j of index.search(grownBounds(run.path.bounds, ENDS_MEET))) {
        const other = runs[j];
        if (!other || j === i) continue;
        for (const at of run.ends) {
          if (other.ends.some((far) => meet(at, far))) {
            if (j > i) add(run, other, at, pairStanding(yard, run.conductor, other.conductor));
          } else if (pointToPath(at, other.path).length <= ENDS_MEET) {
            add(run, other, at, ontoStanding(yard, run.conductor, other.conductor));
          }
        }
      }
    }
    return joints;
  });
}

/** How far from a conductor's end a tie that joins it to its other end may be drawn, inches. */
const TIE_NEAR = 12;

/** Whether a tie at `at` joins the two ends of one conductor, which meet there: so a ring is closed by a clamp. */
export function joinsOwnEnds(yard: Yard, conductor: ConductorElement, at: Point): boolean {
  const shape = yard.shape(conductor);
  if (shape.kind !== "path") return false;
  const [start, end] = endsOf(shape.path);
  return start !== undefined && end !== undefined && meet(start, end) && distanceBetween(start, at) <= TIE_NEAR;
}

function endsOf(path: Path): Point[] {
  const first = path.edges[0];
  const last = path.edges[path.edges.length - 1];
  return path.closed || !first || !last ? [] : [first.from, last.to];
}

function meet(a: Point, b: Point): boolean {
  return distanceBetween(a, b) <= ENDS_MEET;
}

/** What a conductor's `joint` says: a splice or weld that counts, none, refused, or nothing that can be judged. */
export function jointWord(yard: Yard, conductor: ConductorElement): "made" | "none" | "refused" | "open" {
  const { joint } = conductor;
  if (joint === undefined) return "open";
  if (joint === "none") return "none";
  if (yard.edition.value("connection.buriedJoints").includes(joint)) return "made";
  return yard.edition.value("connection.refusedHardware").includes(joint) ? "refused" : "open";
}

function selfStanding(yard: Yard, conductor: ConductorElement): Standing {
  const word = jointWord(yard, conductor);
  return word === "made" ? "sure" : word === "open" ? "doubtful" : "no";
}

/** Two ends meet: at least one conductor has to record a joint that counts, and none may record one that does not. */
function pairStanding(yard: Yard, a: ConductorElement, b: ConductorElement): Standing {
  const words = [jointWord(yard, a), jointWord(yard, b)];
  if (words.includes("refused") || words.every((word) => word === "none")) return "no";
  return words.includes("open") ? "doubtful" : "sure";
}

/** An end meets another's run: the conductor that ends there has to record the joint. */
function ontoStanding(yard: Yard, ending: ConductorElement, run: ConductorElement): Standing {
  if (jointWord(yard, ending) !== "made") return "no";
  const word = jointWord(yard, run);
  return word === "refused" ? "no" : word === "open" ? "doubtful" : "sure";
}
