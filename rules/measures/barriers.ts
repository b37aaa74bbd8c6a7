/**
 * Which walls and buildings stand in the way of which measure (the table of the geometry's definitions), and how
 * surely: a wall counts when it is known to be permanent and high enough on the pool side.
 *
 * Terms. `counted`: stands in the way. Of those, `assumed` ones rest on a level that the drawing does not give, or on a
 * height as near to the limit as the drawing may be off.
 * `possible`: would stand in the way if a fact that the drawing does not give turned out so.
 */
import { lengthWithin, pathToArea, pointToArea } from "../../geometry/distance.ts";
import { contains, flattenPath, pathLength, pointAlong } from "../../geometry/outline.ts";
import { between } from "../../geometry/points.ts";
import { FINE_FLATTEN_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Area, Barrier, Path, Point } from "../../geometry/types.ts";
import type { BuildingElement, OpeningElement, WallElement } from "../site/elements.ts";
import { reaches } from "./compare.ts";
import type { Level } from "./levels.ts";
import { withoutOpenings } from "./openings.ts";

/** Perimeter surface, a hand's reach to fixed metal, a cord from a receptacle. */
export type BarrierMeasure = "band" | "metal" | "cord";

export interface BarrierModel {
  readonly id: string;
  readonly barriers: readonly Barrier[];
  /** Facts of the element that are not given and on which its counting rests. */
  readonly openFacts: readonly string[];
}

export interface BarrierSet {
  readonly counted: readonly BarrierModel[];
  /** Ids among `counted` that rest on a level that is not given, or on a height that is not sure. */
  readonly assumed: ReadonlySet<string>;
  readonly possible: readonly BarrierModel[];
}

export interface WallModel {
  readonly element: WallElement;
  readonly path: Path;
  readonly footprint: Area;
  readonly thickness: number;
}

export interface BuildingModel {
  readonly element: BuildingElement;
  readonly area: Area;
}

export interface BarrierInputs {
  readonly walls: readonly WallModel[];
  readonly buildings: readonly BuildingModel[];
  readonly openings: readonly OpeningElement[];
  readonly wallHeight: number;
  /** How far the drawing may be off, inches. */
  readonly accuracy: number;
  levelAt(p: Point): Level;
}

/** The barriers of one measure as seen from one body of water. */
export function barriersFor(measure: BarrierMeasure, water: Area, inputs: BarrierInputs): BarrierSet {
  const counted: BarrierModel[] = [];
  const assumed = new Set<string>();
  const possible: BarrierModel[] = [];
  for (const wall of inputs.walls) {
    const standing = standingOf(wall, water, inputs);
    if (standing === "no") continue;
    const barriers = wallBarriers(wall, inputs.openings);
    if (standing.possible) possible.push({ id: wall.element.id, barriers, openFacts: standing.openFacts });
    else {
      counted.push({ id: wall.element.id, barriers, openFacts: standing.openFacts });
      if (standing.openFacts.length > 0) assumed.add(wall.element.id);
    }
  }
  for (const building of inputs.buildings) {
    const barriers = buildingBarriers(building, water, measure, inputs.openings);
    const { id, top } = building.element;
    if (measure !== "band") {
      counted.push({ id, barriers, openFacts: [] });
      continue;
    }
    if (top === undefined) {
      possible.push({ id, barriers, openFacts: ["top"] });
      continue;
    }
    const level = poolSideLevel(building.area.outer, water, inputs);
    const high = reaches(top - level.z, inputs.wallHeight, inputs.accuracy);
    if (high === "no") continue;
    const openFacts = [...(level.given ? [] : ["level"]), ...(high === "doubtful" ? [MEASURED_HEIGHT] : [])];
    counted.push({ id, barriers, openFacts });
    if (openFacts.length > 0) assumed.add(id);
  }
  return { counted, assumed, possible };
}

/** The open fact of a height that is as near to the limit as the drawing may be off. */
const MEASURED_HEIGHT = "measured height";

function standingOf(
  wall: WallModel,
  water: Area,
  inputs: BarrierInputs,
): "no" | { readonly possible: boolean; readonly openFacts: string[] } {
  const { permanent, top } = wall.element;
  if (permanent === false) return "no";
  const openFacts: string[] = [];
  if (permanent === undefined) openFacts.push("permanent");
  if (top === undefined) openFacts.push("top");
  const level = poolSideLevel(wall.path, water, inputs);
  const high = top === undefined ? "doubtful" : reaches(top - level.z, inputs.wallHeight, inputs.accuracy);
  if (level.given && high === "no") return "no";
  if (openFacts.length > 0) return { possible: true, openFacts };
  if (!level.given) openFacts.push("level");
  if (high === "no") return { possible: true, openFacts };
  if (high === "doubtful") openFacts.push(MEASURED_HEIGHT);
  return { possible: false, openFacts };
}

/**
 * The level on the pool's side of a wall: just off its point nearest to the water, towards the water. Along a stretch that
 * is as near everywhere the highest level counts (the wall is lowest there), and it is given only where it is given all along.
 */
export function poolSideLevel(path: Path, water: Area, inputs: Pick<BarrierInputs, "levelAt">): Level {
  const nearest = pathToArea(path, water);
  if (nearest.length === 0) return inputs.levelAt(nearest.to);
  const { pieces } = lengthWithin(path, water, nearest.length);
  const places = pieces.filter((piece) => pathLength(piece) > STEP_OFF).flatMap(everyStep);
  const levels = [nearest, ...places.map((p) => pointToArea(p, water))].map(({ length, from, to }) => {
    const share = Math.max(0, 1 - STEP_OFF / length);
    return inputs.levelAt(between(from, to, share));
  });
  const highest = levels.reduce((best, level) => (level.z > best.z ? level : best));
  return { ...highest, given: levels.every(({ given }) => given) };
}

/** How far off a wall its pool side is looked at: beyond half of any usual thickness, inches; and how far apart. */
const STEP_OFF = 12;

function everyStep(piece: Path): Point[] {
  const length = pathLength(piece);
  const count = Math.ceil(length / STEP_OFF);
  return Array.from({ length: count + 1 }, (_, i) => pointAlong(piece, (i * length) / count));
}

function wallBarriers(wall: WallModel, openings: readonly OpeningElement[]): Barrier[] {
  const { id } = wall.element;
  const pieces = withoutOpenings(
    wall.path,
    wall.thickness / 2,
    openings.filter((o) => o.opening === "passage"),
  );
  if (pieces === null) {
    const solid: Barrier[] = [
      { id, shape: "solid", points: flattenPath(wall.footprint.outer, FINE_FLATTEN_TOLERANCE) },
    ];
    if (wall.footprint.holes.length > 0) {
      // A wall that closes on itself: its footprint is a frame, so its center line and both faces stand as thin lines.
      const closed = (path: Path): Point[] => {
        const points = flattenPath(path, FINE_FLATTEN_TOLERANCE);
        return points[0] ? [...points, points[0]] : points;
      };
      return [wall.footprint.outer, ...wall.footprint.holes].map((path) => ({
        id,
        shape: "thin",
        points: closed(path),
      }));
    }
    return solid;
  }
  return pieces.footprints(wall.thickness).map((points) => ({ id, shape: "solid", points }));
}

function buildingBarriers(
  building: BuildingModel,
  water: Area,
  measure: BarrierMeasure,
  openings: readonly OpeningElement[],
): Barrier[] {
  const { id } = building.element;
  const outer = building.area.outer;
  const containsPool = waterInside(water, building.area);
  const passages = measure === "cord" ? openings.filter((o) => o.opening === "passage") : [];
  const pieces = withoutOpenings(outer, 0, passages);
  if (pieces !== null) return pieces.lines.map((points) => ({ id, shape: "thin", points }));
  const points = flattenPath(outer, FINE_FLATTEN_TOLERANCE);
  if (containsPool && points[0]) return [{ id, shape: "thin", points: [...points, points[0]] }];
  return [{ id, shape: "solid", points }];
}

/** Whether all of the water lies inside an area. */
export function waterInside(water: Area, area: Area): boolean {
  return water.outer.edges.every((edge) => contains(area, edge.from));
}
