/** Ground of the band over which the ring is wanted for a piece that its course passes beside. */
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
 * The strips straight across the band, from the inside wall to its edge, beside which a piece planned as ring lies: a ring
 * there serves the piece as well, whatever lies over the ring itself.
 */
export function ringStrips(yard: Yard, choice: PerimeterChoice): Region {
  const width = yard.edition.value("perimeter.width");
  const strips: Region[] = [];
  for (const { path, course } of perimeterLoops(yard)) {
    for (const { from, to, entry, body: id, beside } of course) {
      const body = yard.body(id);
      if (!beside || methodBy(choice, entry.allowed) !== "ring" || !body) continue;
      const across = (s: number): [Point, Point] => {
        const p = pointAlong(path, s);
        const { from: wall, length } = pointToArea(p, body.water);
        const share = width / length;
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
