/**
 * Branches: copper from the perimeter bonding to every part that needs bonding and that no recorded connection reaches,
 * as a tree that crosses no water, building or keep-out.
 */

import { type BranchTarget, branchTree } from "../../geometry/branches.ts";
import { regionContains } from "../../geometry/clipping.ts";
import { pointToArea } from "../../geometry/distance.ts";
import { keyholeRing } from "../../geometry/keyhole.ts";
import { areaOfPaths, flattenPath } from "../../geometry/outline.ts";
import { between } from "../../geometry/points.ts";
import { FINE_FLATTEN_TOLERANCE, RING_SPIKE } from "../../geometry/tolerances.ts";
import type { Barrier, Path, Point } from "../../geometry/types.ts";
import { waterInside } from "../measures/barriers.ts";
import type { Yard } from "../measures/yard.ts";
import type { Compared } from "../recorded/compare.ts";
import type { BranchReport } from "../report.ts";
import { RISE_TO_GROUND } from "../site/defaults.ts";
import type { PerimeterPlan } from "./perimeter.ts";

export interface Routes {
  readonly branches: readonly BranchReport[];
  /** Buried joints where one branch meets another. */
  readonly joints: number;
  /** Connections beyond the first that the parts need (the second cup of a ladder, the gate of a fence). */
  readonly furtherClamps: number;
  /** Parts that no way leads to. */
  readonly unreachable: readonly string[];
}

/** Routes to the parts that `compared` still finds unreached. */
export function branchesFor(yard: Yard, compared: Compared, plan: PerimeterPlan): Routes {
  const targets: (BranchTarget & { at: Point[]; drop: number; connections: number })[] = [];
  for (const { verdict } of compared.judged) {
    const { need, outcome } = verdict;
    if (!need || (outcome !== "bond" && outcome !== "missing")) continue;
    if (need.kind !== "part" && need.kind !== "water") continue;
    const id = need.elements[0];
    if (id === undefined || need.at.length === 0 || targets.some((t) => t.id === id)) continue;
    const { at, along, connections } = need;
    targets.push({ id, at: [...at], ...(along ? { along } : {}), drop: need.drop + RISE_TO_GROUND, connections });
  }
  const network = [...plan.network, ...targets.flatMap((t) => onSteel(t.at, plan))];
  if (targets.length === 0 || network.length === 0) {
    return { branches: [], joints: 0, furtherClamps: further(targets), unreachable: targets.map((t) => t.id) };
  }
  const tree = branchTree({
    network,
    targets,
    blocked: blockedGround(yard, network),
    junctionAllowance: yard.settings.junctionAllowance,
  });
  const branches = tree.branches.map((branch): BranchReport => {
    const target = targets.find((t) => t.id === branch.to);
    return {
      to: branch.to,
      path: branch.path,
      run: branch.run,
      drop: target?.drop ?? 0,
      ...(branch.penetration ? { penetration: branch.penetration } : {}),
    };
  });
  return { branches, joints: tree.joints, furtherClamps: further(targets), unreachable: tree.unreachable };
}

function further(targets: readonly { connections: number }[]): number {
  let count = 0;
  for (const target of targets) count += Math.max(0, target.connections - 1);
  return count;
}

/** A part that stands over serving steel can be tied to it where it stands. */
function onSteel(at: readonly Point[], plan: PerimeterPlan): Point[][] {
  if (plan.steel.length === 0) return [];
  return at.filter((p) => regionContains(plan.steel, p)).map((p) => [p, p]);
}

/**
 * What no copper may cross: the water of every body, buildings, keep-outs. An island that has copper or steel of the network
 * is ground, on which its parts are reached; another counts as water, through which its parts are entered.
 */
function blockedGround(yard: Yard, network: readonly (readonly Point[])[]): Barrier[] {
  const blocked: Barrier[] = [];
  const hasNetwork = (island: Path): boolean => {
    const ground = areaOfPaths(island);
    const isOnIt = (p: Point, from: Point) => pointToArea(between(from, p, 1 / 2), ground).length <= RING_SPIKE;
    return network.some((line) => line.some((p, i) => isOnIt(p, line[i - 1] ?? p)));
  };
  const add = (id: string, path: Path) =>
    blocked.push({ id, shape: "solid", points: flattenPath(path, FINE_FLATTEN_TOLERANCE) });
  for (const { id, water } of yard.bodies) {
    const ground = { outer: water.outer, holes: water.holes.filter(hasNetwork) };
    blocked.push({ id, shape: "solid", points: keyholeRing(ground, FINE_FLATTEN_TOLERANCE) });
  }
  for (const building of yard.buildings) {
    if (!yard.bodies.some((body) => waterInside(body.water, building.area)))
      add(building.element.id, building.area.outer);
  }
  for (const keepOut of yard.all("keep-out")) {
    const shape = yard.shape(keepOut);
    if (shape.kind === "area") add(keepOut.id, shape.area.outer);
  }
  return blocked;
}
