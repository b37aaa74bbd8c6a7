/**
 * The takeoff: copper by run, hardware counted from the plan's own connections, weight.
 * Runs share no length, so they sum; `total` is their sum and the spare.
 */
import type { Point } from "../../geometry/types.ts";
import { laidRing } from "../plan/laid-ring.ts";
import type { BranchReport, GridRolls, RingReport, TakeoffReport, TieReport } from "../report.ts";
import { copperPounds } from "./copper-wire.ts";

export interface TakeoffInputs {
  readonly ring: RingReport;
  /** Whether the plan lays the even or the short ring. */
  readonly ringStyle: "even" | "short";
  readonly gridLength: number;
  readonly gridCrossings: number;
  /** Stretches of grid that cross no other. */
  readonly gridLoose: number;
  /** The rolls that the grids can be bought as. */
  readonly gridRolls: GridRolls | null;
  readonly ties: readonly TieReport[];
  readonly branches: readonly BranchReport[];
  /** Places where a part of the plan is clamped: connections beyond the first that a part needs. */
  readonly furtherClamps: number;
  /** Joints where a branch meets another branch under ground. */
  readonly branchJoints: number;
  /** Tails left at double-insulated motors, inches each. */
  readonly tails: readonly number[];
  readonly spareFraction: number;
  readonly awg: number;
}

export function takeoff(inputs: TakeoffInputs): TakeoffReport {
  const links = inputs.ring.links ?? [];
  const ring = laidRing(inputs.ring, inputs.ringStyle).length + sum(links.map((link) => link.length));
  const grid = inputs.gridLength;
  const ties = sum(inputs.ties.map((tie) => Math.hypot(tie.to[0] - tie.at[0], tie.to[1] - tie.at[1])));
  const branches = sum(inputs.branches.map((branch) => branch.run));
  const drops = sum(inputs.branches.map((branch) => branch.drop));
  const tails = sum(inputs.tails);
  const runs = ring + grid + ties + branches + drops + tails;
  const spare = runs * inputs.spareFraction;
  const total = runs + spare;
  return {
    conductor: { ring, grid, ties, branches, drops, tails, spare, total },
    hardware: hardwareOf(inputs),
    weightPounds: copperPounds(inputs.awg, total),
  };
}

function hardwareOf(inputs: TakeoffInputs): { item: string; count: number }[] {
  const { ring, ties, branches } = inputs;
  const tails = inputs.tails.length;
  const links = ring.links ?? [];
  const toShell = links.filter(({ shell }) => shell).length;
  const { loops } = laidRing(ring, inputs.ringStyle);
  const closed = loops.filter(({ path }) => isClosed(path)).length;
  const rows = [
    { item: "direct-burial splice, ring closed on itself", count: closed },
    {
      item: "direct-burial connector, end of a ring stretch to steel or grid",
      count: 2 * (loops.length - closed),
    },
    {
      item: "direct-burial connector, wire to wire",
      count: branches.length + inputs.branchJoints + 2 * links.length - toShell,
    },
    { item: "direct-burial clamp, wire to shell steel", count: ties.length + toShell },
    { item: "direct-burial connector, tie to perimeter", count: ties.length },
    { item: "listed clamp or lug at a metal part", count: branches.length + inputs.furtherClamps },
    { item: "grid joint at a crossing", count: inputs.gridCrossings },
    { item: "joint of a lone grid wire to what lies beside it", count: inputs.gridLoose },
    ...rollRows(inputs.gridRolls),
    { item: "tail left at a double-insulated motor", count: tails },
  ];
  return rows.filter((row) => row.count > 0);
}

/** Rolls of grid: the grid's own copper as it is sold, with the spacing that is allowed. */
function rollRows(rolls: GridRolls | null): { item: string; count: number }[] {
  if (rolls === null) return [];
  const { width, spacing, tolerance } = rolls;
  return rolls.rolls.map(({ length, count }) => ({
    item: `grid roll ${feet(width)} x ${feet(length)} ft, mesh ${spacing} in. give or take ${tolerance}`,
    count,
  }));
}

function feet(inches: number): number {
  return Number((inches / 12).toFixed(2));
}

/** Whether a stretch of ring comes back to where it starts. */
export function isClosed(path: readonly Point[]): boolean {
  const first = path[0];
  const last = path[path.length - 1];
  return first !== undefined && last !== undefined && first[0] === last[0] && first[1] === last[1];
}

function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
