/**
 * Branches: the copper that joins every part to the bonding network as one tree of least length and few joints, crossing
 * no water, building or keep-out.
 *
 * Stages. 1. A part wholly inside a solid is entered at the nearest place of its outline; one that reaches out of it is met
 * outside. Lines that may be met anywhere are, where they come nearest to the network (branch-parts.ts). 2. The spanning
 * tree over shortest routes round the barriers (branch-spanning.ts). 3. Joints on open ground where each saves more than
 * its allowance (branch-junctions.ts), never longer than the spanning tree. 4. The tree is walked from the network and cut
 * into one branch for each part, which share no length.
 */
import { type BranchDrawing, type BranchEdge, edgesAt, jointCount, otherEnd, type Place } from "./branch-graph.ts";
import { branchGround } from "./branch-ground.ts";
import { withJunctions } from "./branch-junctions.ts";
import { type BranchTarget, branchParts, type Part } from "./branch-parts.ts";
import { spanningTree } from "./branch-spanning.ts";
import { flattenPath } from "./outline.ts";
import { distanceBetween, samePoint } from "./points.ts";
import { FINE_FLATTEN_TOLERANCE } from "./tolerances.ts";
import type { Barrier, Path, Point } from "./types.ts";

export type { BranchTarget };

export interface BranchRequest {
  /** Ring, grid and steel that a branch may meet anywhere: paths, or flattened lines. */
  readonly network: readonly (Path | readonly Point[])[];
  readonly targets: readonly BranchTarget[];
  /** What copper may not cross: water, buildings, keep-outs. */
  readonly blocked: readonly Barrier[];
  /** Inches that one more buried joint has to save (0 or more). */
  readonly junctionAllowance: number;
}

export interface Branch {
  readonly to: string;
  /** From where it leaves the network, another part or another branch, to the part. */
  readonly path: readonly Point[];
  /** Length of the path, inches. */
  readonly run: number;
  readonly from: "network" | "part" | "joint";
  /** Where it goes through the outline of a solid that the part stands in. */
  readonly penetration?: Point;
}

export interface BranchTree {
  /** In an order in which each leaves the network or a branch before it. */
  readonly branches: readonly Branch[];
  /** Ids of targets to which no way leads, in the order given. */
  readonly unreachable: readonly string[];
  /** Buried joints: places away from parts and network where branches meet. */
  readonly joints: number;
  /** Length of all branches, inches. */
  readonly length: number;
}

/** The tree. Deterministic. Without a network every target is unreachable; without targets the tree is empty. */
export function branchTree(request: BranchRequest): BranchTree {
  const { junctionAllowance, targets } = request;
  if (!(junctionAllowance >= 0)) throw new Error(`a joint's allowance must be 0 or more, not ${junctionAllowance}`);
  const network = request.network.map(positions);
  const ground = branchGround(network, request.blocked);
  const parts = branchParts(ground, targets);
  const eyes = parts.map((part) => part.eyes);
  const { drawing, unreachable } = spanningTree(ground, eyes);
  const reached = eyes.map((ofPart, i) => (unreachable.includes(i) ? [] : ofPart));
  const tree = withJunctions(ground, drawing, reached, junctionAllowance);
  return {
    ...cutIntoBranches(tree, parts),
    unreachable: unreachable.map((i) => (parts[i] as Part).id),
  };
}

function positions(line: Path | readonly Point[]): readonly Point[] {
  if (!("edges" in line)) return line;
  const points = flattenPath(line, FINE_FLATTEN_TOLERANCE);
  const first = points[0];
  return line.closed && first ? [...points, first] : points;
}

/** Stage 4. */
function cutIntoBranches(tree: BranchDrawing, parts: readonly Part[]): Omit<BranchTree, "unreachable"> {
  const { places } = tree;
  const at = edgesAt(tree);
  const placesOfPart = parts.map((): number[] => []);
  places.forEach(({ kind, part }, i) => {
    if (kind === "part") placesOfPart[part]?.push(i);
  });
  const branches: Branch[] = [];
  let entryJoints = 0;
  const walked = new Set<BranchEdge>();
  const waiting: { place: number; from: Branch["from"] }[] = [];
  const start = (place: number, from: Branch["from"]): void => {
    for (const edge of at[place] ?? []) if (!walked.has(edge)) waiting.push({ place, from });
  };
  places.forEach(({ kind }, i) => {
    if (kind === "network") start(i, "network");
  });
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    const points: Point[] = [(places[next.place] as Place).eye.at];
    let place = next.place;
    for (;;) {
      const edge = (at[place] ?? []).find((one) => !walked.has(one));
      if (!edge) break;
      walked.add(edge);
      place = otherEnd(edge, place);
      const { kind, eye, part } = places[place] as Place;
      points.push(eye.at);
      if (kind === "part") {
        const { id, eyes, points: connections } = parts[part] as Part;
        const inside = connections[eyes.indexOf(eye)];
        const entered = inside !== undefined && !samePoint(inside, eye.at);
        if (entered) points.push(inside);
        branches.push({
          to: id,
          path: points,
          run: runOf(points),
          from: next.from,
          ...(entered ? { penetration: eye.at } : {}),
        });
        for (const other of placesOfPart[part] ?? []) {
          const goesOn = (at[other] ?? []).some((one) => !walked.has(one));
          if (goesOn && entered) entryJoints++;
          start(other, entered ? "joint" : "part");
        }
        break;
      }
      // The run goes on along the first edge; the others start here.
      const rest = (at[place] ?? []).filter((one) => !walked.has(one));
      for (let i = 1; i < rest.length; i++) waiting.push({ place, from: "joint" });
    }
  }
  const length = branches.reduce((sum, { run }) => sum + run, 0);
  return { branches, joints: jointCount(tree) + entryJoints, length };
}

function runOf(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) sum += distanceBetween(points[i - 1] as Point, points[i] as Point);
  return sum;
}
