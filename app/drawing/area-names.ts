/** Names of areas, set where the area has room for them: water first, then buildings, surfaces and whatever else has an outline. */
import { areaFrom, areaOf, centroidOf, contains } from "../../geometry/outline.ts";
import type { Area, Point } from "../../geometry/types.ts";
import type { KnownElement, PoolElement } from "../../rules/site/elements.ts";
import { givenName, sortOf } from "../../rules/words/element-names.ts";
import { isKnown, outlineOf } from "./drafting.ts";
import type { Lettering } from "./lettering.ts";
import type { TextRole } from "./palette.ts";
import { TEXT_POINTS, type TextItem, type TextSize } from "./scene.ts";
import { itemPoints } from "./text-width.ts";

/** Places looked at across an area, each way. */
const PLACES = 13;

/** Draws the name of each body of water; returns where, points of paper. */
export function drawWaterNames(lettering: Lettering): Map<string, Point> {
  const places = new Map<string, Point>();
  for (const pool of lettering.drafting.pools) {
    const area = areaFrom(pool.outline, pool.islands);
    const text = (givenName(pool) ?? waterWord(pool)).toUpperCase();
    const item = { text, size: "heading", role: "on-water", strong: true, spaced: true } as const;
    const center = nameInside(area, [], item, pool.id, lettering);
    if (center) places.set(pool.id, center);
  }
  return places;
}

function waterWord(pool: PoolElement): string {
  return pool.body;
}

/** Draws the names of areas on land. A name that finds no room is left off: the list of findings still has it. */
export function drawAreaNames(lettering: Lettering): void {
  const { elements } = lettering.drafting.site;
  elements.forEach((element, index) => {
    if (!isKnown(element)) return;
    const style = styleOf(element);
    const outline = outlineOf(element);
    if (style === null || outline === null) return;
    const holes = element.kind === "surface" ? element.holes : undefined;
    const above = elements.slice(index + 1).filter((other) => other.kind === "surface");
    const others = [...above, ...elements.filter((other) => coversGround(other.kind) && other !== element)];
    const covering = others.flatMap((other) => {
      const covered = outlineOf(other);
      return covered ? [areaFrom(covered)] : [];
    });
    const isInside = (other: Area) => contains(areaFrom(outline), centroidOf(other));
    const name = givenName(element) ?? sortOf(element);
    const item = { ...style, text: style.spaced ? name.toUpperCase() : name };
    nameInside(
      areaFrom(outline, holes),
      covering.filter(element.kind === "building" ? isInside : () => true),
      item,
      element.id,
      lettering,
    );
  });
}

function coversGround(kind: string): boolean {
  return kind === "pool" || kind === "building" || kind === "structure" || kind === "keep-out";
}

interface NameStyle {
  readonly size: TextSize;
  readonly role: TextRole;
  readonly strong?: boolean;
  readonly spaced?: boolean;
}

function styleOf(element: KnownElement): NameStyle | null {
  switch (element.kind) {
    case "building":
      return { size: "heading", role: "on-building", strong: true, spaced: true };
    case "surface":
      return { size: "small", role: "faint" };
    case "structure":
    case "keep-out":
      return { size: "small", role: "ink" };
    default:
      return null;
  }
}

/** Sets a name inside an area and outside those that cover it, near the middle and clear of everything; null when there is no room. */
function nameInside(
  area: Area,
  covering: readonly Area[],
  item: NameStyle & Pick<TextItem, "text">,
  element: string,
  lettering: Lettering,
): Point | null {
  const { drafting, placer, toPaper, toSite } = lettering;
  const width = itemPoints(item) + 4;
  const height = TEXT_POINTS[item.size] + 2;
  const w = drafting.inches(width) / 2;
  const h = drafting.inches(height) / 2;
  const { bounds } = area.outer;
  const middle = areaOf(area) > 0 ? centroidOf(area) : ([bounds.minX, bounds.minY] as const);
  const candidates: Point[] = [middle];
  for (let i = 1; i < PLACES; i++) {
    for (let j = 1; j < PLACES; j++) {
      const x = bounds.minX + ((bounds.maxX - bounds.minX) * i) / PLACES;
      const y = bounds.minY + ((bounds.maxY - bounds.minY) * j) / PLACES;
      candidates.push([x, y]);
    }
  }
  const hasRoom = ([x, y]: Point) =>
    [-w, 0, w].every((dx) =>
      [-h, h].every((dy) => {
        const p: Point = [x + dx, y + dy];
        return contains(area, p) && !covering.some((other) => contains(other, p));
      }),
    );
  const far = (p: Point) => Math.hypot(p[0] - middle[0], p[1] - middle[1]);
  const roomy = candidates.filter(hasRoom).sort((a, b) => far(a) - far(b));
  const center = placer.placeAmong(roomy.map(toPaper), width, height);
  if (center === null) return null;
  drafting.add("names", {
    kind: "text",
    at: toSite([center[0], center[1] - TEXT_POINTS[item.size] * 0.35]),
    anchor: "middle",
    turn: 0,
    element,
    ...item,
  });
  return center;
}
