/** The way a cord would lie from the inside wall to a receptacle, and which side of a wall the receptacle is on. */
import { pointToArea, pointToPath } from "../../../geometry/distance.ts";
import { nearestOnEdge, pointAt, tangentAt } from "../../../geometry/edge.ts";
import { contains } from "../../../geometry/outline.ts";
import { shortestPathToArea } from "../../../geometry/paths-around-barriers.ts";
import { LIMIT_TOLERANCE } from "../../../geometry/tolerances.ts";
import type { Edge, Path, Point } from "../../../geometry/types.ts";
import { type WallModel, waterInside } from "../../measures/barriers.ts";
import { pathMeasure } from "../../measures/ways-round.ts";
import type { BarrierChoice, Body, PathMeasure, Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";

/** How near to a building's face a receptacle drawn inside it may be mounted on that face, inches. Judgement: the depth of a drawn wall. */
export const MOUNTING_DEPTH = 6;

export interface Place {
  /** `outside`: not in a building. `face`: drawn just inside one, so perhaps on its outer face; or inside a wall. */
  readonly kind: "outside" | "inside" | "face";
  /** On the outer face, where it would hang if it is outside; of a wall, on the face that is nearer to the water. */
  readonly face: Point | null;
  /** On the other face of the wall; null: it is in no wall. */
  readonly back: Point | null;
  /** The building or the wall. */
  readonly inside: string | null;
}

const OUTSIDE: Place = { kind: "outside", face: null, back: null, inside: null };

/** Where a receptacle is in relation to the buildings, and to walls that a cord goes round. */
export function placeOf(yard: Yard, body: Body, element: DeviceElement): Place {
  for (const { area, element: building } of yard.buildings) {
    if (!contains(area, element.at) || waterInside(body.water, area)) continue;
    const nearest = pointToPath(element.at, area.outer);
    if (nearest.length === 0) continue;
    const face = nearest.from;
    if (element.indoor === true) return { kind: "inside", face, back: null, inside: building.id };
    const near = nearest.length <= MOUNTING_DEPTH || element.indoor === false;
    return { kind: near ? "face" : "inside", face, back: null, inside: building.id };
  }
  for (const wall of yard.walls) {
    const { minX, minY, maxX, maxY } = wall.footprint.outer.bounds;
    const [x, y] = element.at;
    const slack = wall.element.thickness === undefined ? MOUNTING_DEPTH : 0;
    if (x <= minX - slack || x >= maxX + slack || y <= minY - slack || y >= maxY + slack) continue;
    if (stands(yard, body, wall) && mayBeIn(body, element.at, wall, slack)) return placeInWall(body, element.at, wall);
  }
  return OUTSIDE;
}

/** In the thickness of a wall, not on a face of it; of a wall that gives no thickness, as deep behind it as one may be. */
function mayBeIn(body: Body, at: Point, { path, footprint }: WallModel, slack: number): boolean {
  if (contains(footprint, at))
    return [footprint.outer, ...footprint.holes].every((face) => pointToPath(at, face).length > LIMIT_TOLERANCE);
  if (slack === 0) return false;
  const { length, from } = pointToPath(at, path);
  return length <= slack && pointToArea(at, body.water).length > pointToArea(from, body.water).length;
}

/** Whether a cord has to go round it, or perhaps has to. */
function stands(yard: Yard, body: Body, { element }: WallModel): boolean {
  const { counted, possible } = yard.barriers("cord", body);
  return counted.some(({ id }) => id === element.id) || possible.some(({ id }) => id === element.id);
}

/** Square to the wall on its two faces. */
function placeInWall(body: Body, at: Point, { element, path, thickness }: WallModel): Place {
  const { edge, t } = nearestEdge(path, at);
  const [cx, cy] = pointAt(edge, t);
  const [tx, ty] = tangentAt(edge, t);
  const half = thickness / 2;
  const sides: [Point, Point] = [
    [cx - ty * half, cy + tx * half],
    [cx + ty * half, cy - tx * half],
  ];
  const [one, other] = sides.map((side) => pointToArea(side, body.water).length);
  const [face, back] = (one ?? 0) <= (other ?? 0) ? sides : [sides[1], sides[0]];
  return { kind: "face", face, back, inside: element.id };
}

function nearestEdge(path: Path, at: Point): { readonly edge: Edge; readonly t: number } {
  const near = path.edges.map((edge) => ({ edge, ...nearestOnEdge(edge, at) }));
  return near.reduce((best, next) => (next.distance < best.distance ? next : best));
}

/** The cord's way: from the outer face where the receptacle may hang there, from where it stands otherwise. */
export function cordPath(yard: Yard, body: Body, element: DeviceElement, place: Place): PathMeasure {
  if (place.kind !== "face" || place.face === null) return yard.pathTo(element, body, "cord");
  return cordPathFrom(yard, body, element, place.face);
}

/** The same from another place at the receptacle. */
export function cordPathFrom(yard: Yard, body: Body, element: DeviceElement, from: Point): PathMeasure {
  return yard.kept(`cord path ${element.id} ${body.id} ${from[0]} ${from[1]}`, () => {
    const round = (which: BarrierChoice) => shortestPathToArea(from, body.water, yard.barrierList("cord", body, which));
    return pathMeasure(yard.barriers("cord", body), round);
  }, [element]);
}
