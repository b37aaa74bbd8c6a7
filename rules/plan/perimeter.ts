/**
 * The perimeter plan: what the band asks on each surface, the ring where a ring is planned, the grid where a grid is,
 * the ties to the shell, and the lines that branches may meet.
 *
 * Terms. `planned`: what the plan lays on a piece of the band (for a question: the careful method).
 * A stretch: the part of the ring's course that lies over pieces planned as ring, or beside them.
 */
import { unionRegions } from "../../geometry/clipping.ts";
import { gridOver, shellGrid } from "../../geometry/grid.ts";
import { flattenPath } from "../../geometry/outline.ts";
import { FINE_FLATTEN_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Area, Barrier, Point, Region } from "../../geometry/types.ts";
import type { Judged } from "../judged.ts";
import { waterInside } from "../measures/barriers.ts";
import type { Body, Yard } from "../measures/yard.ts";
import { type PieceMethod, perimeterMethods } from "../perimeter/methods.ts";
import { plannedTies } from "../recorded/ties.ts";
import type { BandReport, Report, RingReport, TieReport } from "../report.ts";
import { ringStrips } from "./beside-strips.ts";
import { layRing, type RingCourse } from "./ring.ts";

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

/** Plans the perimeter of every body that needs one. */
export function planPerimeter(yard: Yard, judged: readonly Judged[]): PerimeterPlan {
  const { needing: _, bandGrid, ...laid } = laidPerimeter(yard);
  const ties = yard.kept("planned ties", () => {
    const { needing, network } = laidPerimeter(yard);
    return needing.flatMap((body) => plannedTies(yard, body, network));
  });
  return { ...laid, grid: { band: bandGrid, shell: shellGrids(yard, judged) }, ties };
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
  const planned = (want: PieceMethod["planned"]): Region =>
    unionRegions(
      [...methods.values()].flatMap((pieces) => pieces.filter((p) => p.planned === want).map((p) => p.piece.region)),
    );
  const needing = yard.bodies.filter((body) => methods.get(body.id)?.some((p) => p.planned !== "none-needed"));
  const ringRegion = unionRegions([planned("ring"), ringStrips(yard)]);
  const whole = needing.every((body) => methods.get(body.id)?.every((p) => p.planned === "ring"));
  const ring =
    ringRegion.length === 0 ? noRing(yard) : layRing(yard, courseOf(yard, needing), whole ? null : ringRegion);
  const gridRegion = planned("grid");
  const band = gridRegion.length === 0 ? null : gridOver(gridRegion, yard.edition.value("grid.spacing"));
  const steel = planned("steel");
  const network: Point[][] = ring.loops.map((loop) => [...loop.path]);
  for (const line of band?.lines ?? []) network.push([...line]);
  for (const polygon of steel) for (const edge of polygon) network.push([...edge]);
  return {
    bands,
    methods,
    ring,
    needing,
    bandGrid: band
      ? { length: band.length, crossings: band.crossings, lines: band.lines }
      : { length: 0, crossings: 0 },
    network,
    steel,
  };
}

function noRing(yard: Yard): RingReport {
  return { offset: yard.settings.ringOffset, loops: [], length: 0, shortestLegal: 0, pending: false };
}

function courseOf(yard: Yard, bodies: readonly Body[]): RingCourse {
  const barriers: Barrier[] = [];
  const keepOuts: Barrier[] = [];
  const seen = new Set<string>();
  const waters = bodies.map((body) => body.water);
  const addArea = (to: Barrier[], id: string, area: Area) => {
    if (seen.has(id)) return;
    seen.add(id);
    to.push({ id, shape: "solid", points: flattenPath(area.outer, FINE_FLATTEN_TOLERANCE) });
  };
  for (const body of bodies) {
    for (const model of yard.barriers("band", body).counted) {
      if (seen.has(model.id)) continue;
      seen.add(model.id);
      barriers.push(...model.barriers);
    }
  }
  for (const building of yard.buildings) {
    if (!waters.some((water) => waterInside(water, building.area)))
      addArea(barriers, building.element.id, building.area);
  }
  for (const keepOut of yard.all("keep-out")) {
    const shape = yard.shape(keepOut);
    if (shape.kind === "area") addArea(keepOuts, keepOut.id, shape.area);
  }
  return { bodies, barriers, keepOuts };
}

function shellGrids(yard: Yard, judged: readonly Judged[]): { length: number; crossings: number } {
  let length = 0;
  let crossings = 0;
  for (const { verdict } of judged) {
    if (verdict.need?.kind !== "shell-grid") continue;
    const body = yard.bodies.find((b) => b.id === verdict.body);
    if (!body) continue;
    const grid = shellGrid(body.water, body.element.depth ?? 0, yard.edition.value("shell.gridSpacing"));
    length += grid.length;
    crossings += grid.crossings;
  }
  return { length, crossings };
}
