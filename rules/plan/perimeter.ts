/**
 * The perimeter plan: what the band asks on each surface, the ring where a ring is planned, the grid where a grid is,
 * the ties to the shell, and the lines that branches may meet.
 *
 * Terms. `planned`: what the plan lays on a piece of the band (for a question: the careful method).
 * A stretch: the part of the ring's course that lies over pieces planned as ring, or beside them.
 */
import { shellGrid } from "../../geometry/aligned-grid.ts";
import { unionRegions } from "../../geometry/clipping.ts";
import type { Point, Region } from "../../geometry/types.ts";
import type { Judged } from "../judged.ts";
import type { Body, Yard } from "../measures/yard.ts";
import { type PieceMethod, perimeterMethods } from "../perimeter/methods.ts";
import { perimeterBodies } from "../recorded/bearers.ts";
import { plannedTies } from "../recorded/ties.ts";
import type { BandReport, Report, RingReport, TieReport } from "../report.ts";
import { copperBy } from "./copper-by-choice.ts";
import { gridRolls } from "./grid-rolls.ts";
import { laidRing } from "./laid-ring.ts";

export interface PerimeterPlan {
  readonly bands: readonly BandReport[];
  readonly methods: ReadonlyMap<string, readonly PieceMethod[]>;
  readonly ring: RingReport;
  readonly grid: Report["grid"];
  readonly ties: readonly TieReport[];
  /** Polylines of perimeter bonding that a branch may meet. */
  readonly network: readonly (readonly Point[])[];
  /** Paving whose steel serves: a part over it may be tied to it where it stands. */
  readonly steel: Region;
}

/** Plans the perimeter of every body that needs one. `verdicts`: those that have a need. */
export function planPerimeter(yard: Yard, verdicts: readonly Judged[]): PerimeterPlan {
  const { needing: _, bandGrid, ...laid } = laidPerimeter(yard);
  const ties = yard.kept("planned ties", () => {
    const { needing, network } = laidPerimeter(yard);
    return needing.flatMap((body) => plannedTies(yard, body, network));
  });
  const { developed, ...shell } = shellGrids(yard, verdicts);
  const rolls = gridRolls(yard, developed);
  return { ...laid, grid: { band: bandGrid, shell, ...(rolls ? { rolls } : {}) }, ties };
}

interface LaidPerimeter extends Omit<PerimeterPlan, "grid" | "ties"> {
  /** Bodies that need perimeter bonding somewhere. */
  readonly needing: readonly Body[];
  readonly bandGrid: Report["grid"]["band"];
}

function laidPerimeter(yard: Yard): LaidPerimeter {
  return yard.kept("laid perimeter", () => layPerimeter(yard));
}

function layPerimeter(yard: Yard): LaidPerimeter {
  const methods = new Map<string, readonly PieceMethod[]>();
  const bands: BandReport[] = [];
  for (const body of yard.bodies) {
    const pieces = perimeterMethods(yard, body);
    methods.set(body.id, pieces);
    const band = yard.band(body);
    bands.push({
      pool: body.id,
      area: band.area,
      region: band.region,
      bySurface: pieces.map(({ piece, bonding }) => ({ surface: piece.surface, area: piece.area, bonding })),
    });
  }
  const { ring, grids } = copperBy(yard, yard.settings.perimeterMethod);
  const laid = grids.flatMap(({ grid }) => grid ?? []);
  const lines = laid.flatMap((grid) => grid.lines);
  const steel = unionRegions(
    [...methods.values()].flatMap((pieces) => pieces.filter((p) => p.planned === "steel").map((p) => p.piece.region)),
  );
  const network: Point[][] = laidRing(ring, yard.settings.ringStyle).loops.map((loop) => [...loop.path]);
  for (const line of lines) network.push([...line]);
  for (const polygon of steel) for (const edge of polygon) network.push([...edge]);
  return {
    bands,
    methods,
    ring,
    needing: perimeterBodies(yard),
    bandGrid: {
      length: sum(laid.map((grid) => grid.length)),
      crossings: sum(laid.map((grid) => grid.crossings)),
      ...(laid.length > 0 ? { loose: sum(laid.map((grid) => grid.loose)), lines } : {}),
    },
    network,
    steel,
  };
}

function shellGrids(yard: Yard, needing: readonly Judged[]): Report["grid"]["shell"] & { developed: number } {
  let [length, crossings, developed] = [0, 0, 0];
  for (const { verdict } of needing) {
    if (verdict.need?.kind !== "shell-grid") continue;
    const body = yard.bodies.find((b) => b.id === verdict.body);
    if (!body) continue;
    const grid = yard.kept(`shell grid ${body.id}`, () =>
      shellGrid(body.water, body.element.depth ?? 0, yard.edition.value("shell.gridSpacing")),
    );
    length += grid.length;
    crossings += grid.crossings;
    developed += grid.developed;
  }
  return { length, crossings, developed };
}

function sum(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0);
}
