/** The way a cord would lie from the inside wall to a receptacle, and which side of a wall the receptacle is on. */
import { pointToPath } from "../../../geometry/distance.ts";
import { contains } from "../../../geometry/outline.ts";
import { shortestPathToArea } from "../../../geometry/paths-around-barriers.ts";
import type { Point } from "../../../geometry/types.ts";
import type { BarrierChoice, Body, PathMeasure, Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";

/** How near to a building's face a receptacle drawn inside it may be mounted on that face, inches. Judgement: the depth of a drawn wall. */
export const MOUNTING_DEPTH = 6;

export interface Place {
  /** `outside`: not in a building. `face`: drawn just inside one, so perhaps on its outer face. */
  readonly kind: "outside" | "inside" | "face";
  /** On the outer face, where it would hang if it is outside. */
  readonly face: Point | null;
  readonly building: string | null;
}

/** Where a receptacle is in relation to the buildings. */
export function placeOf(yard: Yard, body: Body, element: DeviceElement): Place {
  for (const { area, element: building } of yard.buildings) {
    if (!contains(area, element.at) || contains(area, body.water.outer.edges[0]?.from ?? element.at)) continue;
    const nearest = pointToPath(element.at, area.outer);
    if (nearest.length === 0) continue;
    const face = nearest.from;
    if (element.indoor === true) return { kind: "inside", face, building: building.id };
    const near = nearest.length <= MOUNTING_DEPTH || element.indoor === false;
    return { kind: near ? "face" : "inside", face, building: building.id };
  }
  return { kind: "outside", face: null, building: null };
}

/** The cord's way: from the outer face where the receptacle may hang there, from where it stands otherwise. */
export function cordPath(yard: Yard, body: Body, element: DeviceElement, place: Place): PathMeasure {
  if (place.kind !== "face" || place.face === null) return yard.pathTo(element, body, "cord");
  const face = place.face;
  return yard.kept(`cord path ${element.id} ${body.id}`, () => {
    const set = yard.barriers("cord", body);
    const round = (which: BarrierChoice) => shortestPathToArea(face, body.water, yard.barrierList("cord", body, which));
    const counted = round("counted");
    const surely = set.assumed.size === 0 ? counted : round("surely");
    const atMost = set.possible.length === 0 ? counted : round("at most");
    const openFacts = [...set.counted.filter((model) => set.assumed.has(model.id)), ...set.possible].flatMap((model) =>
      model.openFacts.map((field) => ({ element: model.id, field })),
    );
    return { counted, surely, atMost, openFacts: surely?.length === atMost?.length ? [] : openFacts };
  }, [element]);
}
