/** What stands on the ground: surfaces, buildings, water, walls, fences, openings, structures, keep-outs. */
import { pointToArea } from "../../geometry/distance.ts";
import { tangentAt } from "../../geometry/edge.ts";
import { areaFrom, pathFrom, pathLength, pointAlong } from "../../geometry/outline.ts";
import type { Path, Point } from "../../geometry/types.ts";
import { wallFootprint } from "../../geometry/wall-footprint.ts";
import type {
  BuildingElement,
  FenceElement,
  KnownElement,
  PoolElement,
  SurfaceElement,
  WallElement,
} from "../../rules/site/elements.ts";
import type { Drafting } from "./drafting.ts";
import type { HatchName } from "./hatches.ts";
import type { Item, ShapeItem } from "./scene.ts";
import { areaSteps, pathSteps } from "./steps.ts";
import type { SymbolName } from "./symbols.ts";

/** Paper distance between the marks along a fence, points. */
const FENCE_STEP = 20;

/** Draws a standing element into its layer; false when it is not of this sort. */
export function drawGround(element: KnownElement, drafting: Drafting): boolean {
  switch (element.kind) {
    case "surface":
      drafting.add("surfaces", surfaceItem(element));
      return true;
    case "building":
      drafting.add("buildings", buildingItem(element, drafting));
      return true;
    case "pool":
      for (const item of poolItems(element)) drafting.add("water", item);
      return true;
    case "inset":
      drafting.add("water", shape("inset", areaSteps(areaFrom(element.outline)), element.id));
      return true;
    case "wall":
      drafting.add("walls", wallItem(element));
      return true;
    case "opening":
      for (const role of ["opening-gap", "opening"] as const) {
        drafting.add("walls", shape(role, pathSteps(pathFrom(element.path)), element.id));
      }
      return true;
    case "fence":
      drawFence(element, drafting);
      return true;
    case "structure":
      drafting.add("structures", shape("structure", areaSteps(areaFrom(element.outline)), element.id));
      return true;
    case "keep-out":
      drafting.add("keep-outs", shape("keep-out", areaSteps(areaFrom(element.outline)), element.id, "keep-out"));
      return true;
    default:
      return false;
  }
}

function shape(role: ShapeItem["role"], steps: ShapeItem["steps"], element: string, hatch?: HatchName): Item {
  return { kind: "shape", role, steps, element, ...(hatch ? { hatch } : {}) };
}

function surfaceItem(surface: SurfaceElement): Item {
  const role = surface.material === "lawn" || surface.material === "artificial-turf" ? "lawn" : "surface";
  return shape(role, areaSteps(areaFrom(surface.outline, surface.holes)), surface.id, surface.material);
}

/** A building that stands round a body of water is drawn by its outline alone, as the room it is. */
function buildingItem(building: BuildingElement, drafting: Drafting): Item {
  const area = areaFrom(building.outline);
  const holdsWater = drafting.pools.some((pool) => {
    const corner = pool.outline.vertices[0];
    return corner !== undefined && pointToArea([corner[0], corner[1]], area).length === 0;
  });
  if (holdsWater) return shape("building-open", areaSteps(area), building.id);
  return shape("building", areaSteps(area), building.id, "building");
}

function poolItems(pool: PoolElement): Item[] {
  const area = areaFrom(pool.outline, pool.islands);
  return [shape("water", areaSteps(area), pool.id), shape("inside-wall", areaSteps(area), pool.id)];
}

function wallItem(wall: WallElement): Item {
  const path = pathFrom(wall.path);
  if (wall.thickness === undefined || wall.thickness <= 0) return shape("wall-line", pathSteps(path), wall.id);
  return shape("wall", areaSteps(wallFootprint(path, wall.thickness)), wall.id, "wall");
}

/** The mark that tells what a fence is made of. */
export function fenceSymbol(fence: FenceElement): SymbolName {
  if (fence.metal === undefined) return "fence-unknown";
  return fence.metal ? "fence-cross" : "fence-ring";
}

function drawFence(fence: FenceElement, drafting: Drafting): void {
  const path = pathFrom(fence.path);
  drafting.add("fences", shape("fence", pathSteps(path), fence.id));
  const symbol = fenceSymbol(fence);
  for (const { at, turn } of marksAlong(path, FENCE_STEP / drafting.pointsPerInch)) {
    drafting.add("fences", { kind: "symbol", symbol, at, turn, role: "fence", element: fence.id });
  }
}

/** The most marks along one line: a fence of miles at a large scale stays quick to draw. */
const MOST_MARKS = 400;

/** Places evenly along a path, about `step` inches apart and half a step from its ends, with the path's direction there, degrees. */
export function marksAlong(path: Path, step: number): { readonly at: Point; readonly turn: number }[] {
  const length = pathLength(path);
  const count = Math.min(MOST_MARKS, Math.max(1, Math.round(length / step)));
  const places: { at: Point; turn: number }[] = [];
  for (let i = 0; i < count; i++) {
    const s = ((i + 0.5) * length) / count;
    places.push({ at: pointAlong(path, s), turn: directionAt(path, s) });
  }
  return places;
}

/** Direction of the path `s` inches along it, degrees counter-clockwise from +x. */
export function directionAt(path: Path, s: number): number {
  const nudge = Math.min(pathLength(path) / 100, 0.5);
  const from = pointAlong(path, s - nudge);
  const to = pointAlong(path, s + nudge);
  const [edge] = path.edges;
  if (from[0] === to[0] && from[1] === to[1] && edge) {
    const tangent = tangentAt(edge, 0);
    return (Math.atan2(tangent[1], tangent[0]) * 180) / Math.PI;
  }
  return (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
}
