/**
 * The copper of the perimeter as one choice of method lays it: the ring over its stretches, the grid over its pieces.
 *
 * Stages. 1. Groups: bodies whose perimeters run together are planned as one. 2. Each piece of the band gets the chosen
 * method where it is allowed there, else the allowed one. 3. The ring's curves, the same for every choice, are cut to the
 * pieces that take a ring; each group's grid covers its pieces that take a grid, along the direction of its own waters.
 */
import { type AlignedGrid, alignedGrid } from "../../geometry/aligned-grid.ts";
import { offsetRegion, unionRegions } from "../../geometry/clipping.ts";
import { areaToArea } from "../../geometry/distance.ts";
import { flattenPath } from "../../geometry/outline.ts";
import { FINE_FLATTEN_TOLERANCE, RING_SPIKE } from "../../geometry/tolerances.ts";
import type { Area, Barrier, Region } from "../../geometry/types.ts";
import { waterInside } from "../measures/barriers.ts";
import type { Body, Yard } from "../measures/yard.ts";
import { type Method, methodBy, type PieceMethod, perimeterMethods } from "../perimeter/methods.ts";
import { perimeterBodies } from "../recorded/bearers.ts";
import type { RingReport } from "../report.ts";
import { PERIMETER_CHOICES, type PerimeterChoice } from "../site/site.ts";
import { ringStrips } from "./beside-strips.ts";
import { layRing, type RingCourse, ringCurves } from "./ring.ts";

/** Bodies whose perimeters run together, in file order. */
export type Group = readonly Body[];

export interface GroupGrid {
  readonly group: Group;
  /** The ground that it covers. */
  readonly region: Region;
  /** Null where none is laid. */
  readonly grid: AlignedGrid | null;
}

export interface LaidCopper {
  readonly ring: RingReport;
  readonly grids: readonly GroupGrid[];
}

/** The groups of the bodies that need perimeter bonding: two belong together where their bands can meet. */
export function perimeterGroups(yard: Yard): readonly Group[] {
  return yard.kept("perimeter groups", () => {
    const near = 2 * yard.edition.value("perimeter.width");
    let groups: Body[][] = [];
    for (const body of perimeterBodies(yard)) {
      const meets = (group: Body[]) => group.some((other) => areaToArea(other.water, body.water).length <= near);
      const joined = groups.filter(meets);
      groups = [...groups.filter((group) => !joined.includes(group)), [...joined.flat(), body]];
    }
    const places = new Map(yard.bodies.map((body, i) => [body.id, i]));
    const place = (body: Body | undefined) => places.get(body?.id ?? "") ?? 0;
    for (const group of groups) group.sort((a, b) => place(a) - place(b));
    return groups.sort((a, b) => place(a[0]) - place(b[0]));
  });
}

/** The pieces of a group's bands. */
export function piecesOf(yard: Yard, group: Group): readonly PieceMethod[] {
  return group.flatMap((body) => [...perimeterMethods(yard, body)]);
}

/** The copper that a choice lays. Choices that lay the same methods everywhere share one plan. */
export function copperBy(yard: Yard, choice: PerimeterChoice): LaidCopper {
  const methods = (one: PerimeterChoice) =>
    yard.bodies.flatMap((body) => perimeterMethods(yard, body).map(({ allowed }) => methodBy(one, allowed))).join();
  const same = PERIMETER_CHOICES.find((one) => methods(one) === methods(choice)) ?? choice;
  return yard.kept(`copper by ${same}`, () => layCopper(yard, same));
}

function layCopper(yard: Yard, choice: PerimeterChoice): LaidCopper {
  const groups = perimeterGroups(yard);
  const pieces = groups.flatMap((group) => [...piecesOf(yard, group)]);
  const laid = ({ allowed }: PieceMethod): Method => methodBy(choice, allowed);
  const ground = (list: readonly PieceMethod[], method: Method): Region =>
    unionRegions(list.filter((one) => laid(one) === method).map(({ piece }) => piece.region));
  const whole = pieces.every((piece) => laid(piece) === "ring");
  const ringPieces = ground(pieces, "ring");
  const ringGround = whole ? ringPieces : unionRegions([ringPieces, ringStrips(yard, choice)]);
  const spacing = yard.edition.value("grid.spacing");
  return {
    ring: ringGround.length === 0 ? noRing(yard) : layRing(yard, curves(yard), whole ? null : withEdges(ringGround)),
    grids: groups.map((group): GroupGrid => {
      const region = ground(piecesOf(yard, group), "grid");
      const waters = group.map(({ water }) => water);
      return { group, region, grid: region.length === 0 ? null : alignedGrid(region, spacing, waters) };
    }),
  };
}

/**
 * Ground with what runs along its edge: the face of a wall, the edge of a slab. Seams of no width (between the water and a
 * house that stands on the inside wall) are no ground: whether the clipping grid has them depends on how the yard is turned.
 */
function withEdges(region: Region): Region {
  return offsetRegion(offsetRegion(region, -RING_SPIKE / 2), 1.5 * RING_SPIKE);
}

function curves(yard: Yard) {
  return yard.kept("ring curves", () => ringCurves(yard, courseOf(yard, perimeterBodies(yard))));
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
