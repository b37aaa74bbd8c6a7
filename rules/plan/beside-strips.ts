/** Ground of the band over which the ring is wanted, whatever lies at the place where it runs. */
import { unionRegions } from "../../geometry/clipping.ts";
import { pointToArea } from "../../geometry/distance.ts";
import { pointAlong } from "../../geometry/outline.ts";
import type { Point, Region } from "../../geometry/types.ts";
import type { Yard } from "../measures/yard.ts";
import { methodBy } from "../perimeter/methods.ts";
import { perimeterLoops } from "../recorded/loop-course.ts";
import type { PerimeterChoice } from "../site/site.ts";

/** Length of one strip along the loop, inches. */
const STEP = 2;

/**
 * The strips straight out from the inside wall over the stretches that a ring is to serve: as far as a ring may lie where
 * its middle course lies on a piece planned as ring (the piece may end between the ring's limits, and a ring nearer or
 * farther serves it all the same); to the edge of the band where such a piece lies beside that course.
 */
export function ringStrips(yard: Yard, choice: PerimeterChoice): Region {
  const width = yard.edition.value("perimeter.width");
  const farthest = yard.edition.value("ring.max");
  const strips: Region[] = [];
  for (const { path, course } of perimeterLoops(yard)) {
    for (const { from, to, entry, body: id, tight, beside } of course) {
      const body = yard.body(id);
      if (tight || methodBy(choice, entry.allowed) !== "ring" || !body) continue;
      const across = (s: number): [Point, Point] => {
        const p = pointAlong(path, s);
        const { from: wall, length } = pointToArea(p, body.water);
        const share = (beside ? width : farthest) / length;
        return [wall, [wall[0] + (p[0] - wall[0]) * share, wall[1] + (p[1] - wall[1]) * share]];
      };
      const count = Math.max(1, Math.ceil((to - from) / STEP));
      for (let i = 0; i < count; i++) {
        const [a, b] = across(from + ((to - from) * i) / count);
        const [c, d] = across(from + ((to - from) * (i + 1)) / count);
        strips.push([[[a, b, d, c, a]]]);
      }
    }
  }
  return strips.length === 0 ? [] : unionRegions(strips);
}
