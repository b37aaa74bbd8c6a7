/** The ground within a distance of a body of water, made again only when something near it has changed. */
import { boundsOverlap, grownBounds } from "../../geometry/points.ts";
import { reach } from "../../geometry/reach.ts";
import type { Barrier, Region } from "../../geometry/types.ts";
import { boxOfBarrier, boxOfRegion } from "./boxes.ts";
import type { SameInputs } from "./same-inputs.ts";
import type { Body } from "./yard-types.ts";

/**
 * Ground outside the water within `distance` inches of the inside wall along a way round the barriers. `notGround`: the
 * places that belong to no zone. `name` tells results with other barriers apart.
 */
export function groundWithin(
  same: SameInputs,
  name: string,
  body: Body,
  distance: number,
  barriers: readonly Barrier[],
  notGround: readonly Region[],
): Region {
  const key = `${name} ${body.id}`;
  const box = grownBounds(body.water.outer.bounds, distance);
  const near = barriers.filter((barrier) => boundsOverlap(boxOfBarrier(barrier), box));
  const out = notGround.filter((region) => {
    const own = boxOfRegion(region);
    return own !== null && boundsOverlap(own, box);
  });
  const steadyNear = same.steady(`barriers ${key}`, near);
  const steadyOut = same.steady(`not ground ${key}`, out);
  return same.of(key, [body.water, distance, steadyNear, steadyOut], () =>
    reach(body.water, distance, steadyNear, steadyOut),
  );
}
