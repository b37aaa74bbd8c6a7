/**
 * Ring copper that lies behind a wall or building that ends the perimeter surface, or may: the strip in front of it, where people
 * stand, is left without. Source: NEC 680.26(B)(2), restated: the surfaces on the pool side of such a wall are bonded; that
 * a ring behind it does not surely serve them is a judgement, no source.
 *
 * Term. Behind: the straight way from the water to the copper comes through the wall, and the copper is not in it.
 */
import { pointToArea } from "../../geometry/distance.ts";
import { edgeLength, lineEdge, pointAt } from "../../geometry/edge.ts";
import { crossings } from "../../geometry/edge-crossings.ts";
import { contains } from "../../geometry/outline.ts";
import { boundsDistance } from "../../geometry/points.ts";
import type { Area, Point } from "../../geometry/types.ts";
import { ON_BARRIERS } from "../catalogue/common/rests-on.ts";
import { speakerOf } from "../catalogue/common/verdicts.ts";
import type { Body, Yard } from "../measures/yard.ts";
import type { ConductorElement, KnownElement } from "../site/elements.ts";
import { elementName } from "../words/element-names.ts";
import { perimeterBodies } from "./bearers.ts";
import { type Fact, good, open } from "./fact.ts";
import { askAbout } from "./laying.ts";

interface Standing {
  readonly element: KnownElement;
  readonly area: Area;
}

/** Positions looked at along a ring, inches apart. */
const STEP = 3;

/** What stands between a position of ring copper and the nearest water; null where nothing does. */
export function behindWall(yard: Yard, p: Point): KnownElement | null {
  const before = wallsBefore(yard);
  if (before.every(({ walls }) => walls.length === 0)) return null;
  let nearest: { body: Body; walls: readonly Standing[] } | undefined;
  let from: Point = p;
  let least = Number.POSITIVE_INFINITY;
  for (const entry of before) {
    const witness = pointToArea(p, entry.body.water);
    if (witness.length >= least) continue;
    [nearest, from, least] = [entry, witness.from, witness.length];
  }
  if (least === 0) return null;
  const way = lineEdge(from, p);
  const wall = nearest?.walls.find(
    ({ area }) =>
      !contains(area, p) &&
      [area.outer, ...area.holes].some(({ edges }) => edges.some((edge) => crossings(edge, way).length > 0)),
  );
  return wall?.element ?? null;
}

/** Of each body that needs perimeter bonding, what ends its perimeter, or may, near enough to have a ring behind it. */
function wallsBefore(yard: Yard): readonly { readonly body: Body; readonly walls: readonly Standing[] }[] {
  return yard.kept("walls before rings", () =>
    perimeterBodies(yard).map((body) => {
      const { counted, possible } = yard.barriers("band", body);
      const ends = new Set([...counted, ...possible].map(({ id }) => id));
      const reach = yard.edition.value("ring.max");
      const standing: Standing[] = [
        ...yard.walls.map(({ element, footprint }) => ({ element, area: footprint })),
        ...yard.buildings.map(({ element, area }) => ({ element, area })),
      ];
      const walls = standing.filter(
        ({ element, area }) =>
          ends.has(element.id) && boundsDistance(area.outer.bounds, body.water.outer.bounds) <= reach,
      );
      return { body, walls };
    }),
  );
}

/** Whether all of a ring lies on the pool side of what ends the perimeter; a question where some of it does not. */
export function behindFact(yard: Yard, ring: ConductorElement): Fact {
  return yard.kept(`behind walls ${ring.id}`, () => {
    const shape = yard.shape(ring);
    if (shape.kind !== "path") return good("path");
    const found = new Map<KnownElement, number>();
    for (const edge of shape.path.edges) {
      const length = edgeLength(edge);
      const count = Math.max(1, Math.ceil(length / STEP));
      for (let i = 0; i < count; i++) {
        const wall = behindWall(yard, pointAt(edge, (i + 1 / 2) / count));
        if (wall) found.set(wall, (found.get(wall) ?? 0) + length / count);
      }
    }
    if (found.size === 0) return good("path");
    const say = speakerOf(yard);
    const which = [...found].map(([wall, extent]) => `${say.length(extent)} of it behind ${elementName(wall)}`);
    const text =
      "Does the authority having jurisdiction accept the ring behind what stands between it and the water here?";
    return open(
      "path",
      `It lies ${which.join(", ")}, and the strip in front of that is left without a conductor.`,
      "Lay the ring on the pool side, bond that strip by steel or a grid, or ask the authority having jurisdiction.",
      { ...askAbout(yard, ring, "conductor-behind-wall", text), restsOn: ON_BARRIERS },
      ["ring.min", "ring.max"],
    );
  }, [ring]);
}
