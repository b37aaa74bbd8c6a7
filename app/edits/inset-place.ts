/** Steps, benches and ledges lie inside a pool: where one may be drawn, and which ones go with a pool that is moved. */
import { lengthWithin } from "../../geometry/length-within.ts";
import { areaFrom, pathFrom, pathLength } from "../../geometry/outline.ts";
import { ALONG_WALL } from "../../geometry/tolerances.ts";
import type { PathData } from "../../geometry/types.ts";
import type { ElementOf, PoolElement } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";
import { type AnyElement, type Refused, refused } from "./edit.ts";
import { calledAs } from "./element-words.ts";

type InsetElement = ElementOf<"inset">;

/** The id of the pool that an outline lies in, along its wall or clear of it; null where it lies in none. */
export function poolAround(site: Site, outline: PathData): string | null {
  return poolsAround(site, outline)[0] ?? null;
}

function poolsAround(site: Site, outline: PathData): string[] {
  const path = pathFrom(outline);
  const length = pathLength(path);
  const around = site.elements.filter((element) => {
    if (element.kind !== "pool") return false;
    const wall = areaFrom((element as PoolElement).outline);
    const { minX, minY, maxX, maxY } = path.bounds;
    const box = wall.outer.bounds;
    const isNear =
      minX >= box.minX - ALONG_WALL &&
      maxX <= box.maxX + ALONG_WALL &&
      minY >= box.minY - ALONG_WALL &&
      maxY <= box.maxY + ALONG_WALL;
    return isNear && lengthWithin(path, wall, ALONG_WALL).length >= length - ALONG_WALL;
  });
  return around.map(({ id }) => id);
}

/** Why an element may not be drawn where it is; null for whatever is no step, bench or ledge, or lies in a pool. */
export function refuseOutsidePool(site: Site, element: AnyElement): Refused | null {
  if (!isInset(element) || poolAround(site, element.outline) !== null) return null;
  const what = calledAs(element);
  const reason = site.elements.some(({ kind }) => kind === "pool")
    ? `${what} has to lie inside a pool, at most along its wall.`
    : `${what} lies inside a pool: draw the pool first.`;
  return refused(reason, element.id, "outline");
}

/** The same for an element that is changed or moved: one that lay in no pool before may go where it likes. */
export function refuseLeavingPool(before: Site, was: AnyElement, after: Site, is: AnyElement): Refused | null {
  if (!isInset(is) || !isInset(was)) return null;
  const refusal = refuseOutsidePool(after, is);
  return refusal && poolAround(before, was.outline) !== null ? refusal : null;
}

/** The element, naming the pool that it lies in now: a step or ledge that was taken from one pool into another. */
export function inItsPool(site: Site, element: AnyElement): AnyElement {
  if (!isInset(element)) return element;
  const around = poolsAround(site, element.outline);
  if (around.length === 0 || around.includes(element.pool ?? "")) return element;
  return { ...element, pool: around[0] as string };
}

/** Steps, benches and ledges of the pools among some elements, by the pool that they name. */
export function insetsOf(site: Site, ids: { has(id: string): boolean }): readonly InsetElement[] {
  return site.elements.filter(
    (element): element is InsetElement => isInset(element) && typeof element.pool === "string" && ids.has(element.pool),
  );
}

function isInset(element: AnyElement): element is InsetElement {
  return element.kind === "inset";
}
