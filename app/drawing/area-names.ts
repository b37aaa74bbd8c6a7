/** Names of areas, set where the area has room for them: water first, then buildings, surfaces and whatever else has an outline. */
import { regionContains } from "../../geometry/clipping.ts";
import { offsetCurves } from "../../geometry/offset.ts";
import { areaFrom, areaOf, centroidOf, contains, pathLength, pointAlong } from "../../geometry/outline.ts";
import type { Area, Point } from "../../geometry/types.ts";
import type { KnownElement } from "../../rules/site/elements.ts";
import { capitalized, givenName, sortOf } from "../../rules/words/element-names.ts";
import { lengthText } from "../../rules/words/lengths.ts";
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
    const words = [...new Set([givenName(pool) ?? pool.body, pool.body])];
    let center: Point | null = null;
    for (const size of ["heading", "body"] as const) {
      for (const word of words) {
        const item = { text: word.toUpperCase(), size, role: "on-water", strong: true, spaced: true } as const;
        center ??= nameInside(area, [], item, pool.id, lettering);
      }
    }
    if (center) places.set(pool.id, center);
  }
  return places;
}

/** Draws the names of areas on land. A name that finds no room is left off: the list of findings still has it. */
export function drawAreaNames(lettering: Lettering): void {
  for (const element of lettering.drafting.site.elements) {
    if (!isKnown(element)) continue;
    const style = styleOf(element);
    const area = areaOfElement(element);
    if (style === null || area === null) continue;
    const covering = coveringOf(element, area, lettering);
    for (const name of namesFor(element, lettering)) {
      const item = { ...style, text: style.spaced ? name.toUpperCase() : name };
      if (nameInside(area, covering, item, element.id, lettering)) break;
    }
  }
}

/** Its name, the longest way of writing it first; that of a step or ledge with the depth of the water over it. */
function namesFor(element: KnownElement, { drafting }: Lettering): readonly string[] {
  const name = givenName(element) ?? sortOf(element);
  if (element.kind !== "inset") return [name];
  const words = capitalized(name);
  if (element.depth === undefined) return [words];
  const deep = `${lengthText(element.depth, drafting.site.display?.units)} deep`;
  return [`${words}, ${deep}`, words, deep];
}

function areaOfElement(element: KnownElement): Area | null {
  const outline = outlineOf(element);
  if (outline === null) return null;
  return areaFrom(outline, element.kind === "surface" ? element.holes : undefined);
}

/** What lies over an element's area: later surfaces, and whatever is cut out of every surface. */
function coveringOf(element: KnownElement, area: Area, { drafting }: Lettering): Area[] {
  const { elements } = drafting.site;
  if (element.kind === "inset") {
    const over = elements.slice(elements.indexOf(element) + 1).filter((other) => other.kind === "inset");
    return over.flatMap((other) => areaOfElement(other as KnownElement) ?? []);
  }
  const later = elements.slice(elements.indexOf(element) + 1).filter((other) => other.kind === "surface");
  const others = [...later, ...elements.filter((other) => coversGround(other.kind) && other !== element)];
  const covering = others.flatMap((other) => {
    const outline = outlineOf(other);
    return outline ? [areaFrom(outline)] : [];
  });
  return element.kind === "building" ? covering.filter((other) => contains(area, centroidOf(other))) : covering;
}

/** A position, site inches, near the middle of what is seen of an area; its middle where nothing of it is seen. */
export function seenMiddle(element: KnownElement, lettering: Lettering): Point | null {
  const area = areaOfElement(element);
  if (area === null) return null;
  const covering = element.kind === "pool" ? [] : coveringOf(element, area, lettering);
  const candidates = candidatesIn(area);
  const seen = candidates.find((p) => contains(area, p) && !covering.some((other) => contains(other, p)));
  return seen ?? candidates[0] ?? null;
}

/** How far out in the band the number of a surface points, inches: clear of ring and inside wall. */
const IN_BAND = 29;

/** A position in the part of a surface that lies in the perimeter band of a body; null when there is none. */
export function placeInBand(element: KnownElement, body: string | null, lettering: Lettering): Point | null {
  const { pools, report } = lettering.drafting;
  const area = areaOfElement(element);
  const pool = pools.find(({ id }) => id === body);
  const band = report.band.find((one) => one.pool === body);
  if (area === null || !pool || !band) return null;
  const covering = coveringOf(element, area, lettering);
  const places = offsetCurves([areaFrom(pool.outline, pool.islands)], IN_BAND).loops.flatMap(({ path }) => {
    const count = Math.max(8, Math.round(pathLength(path) / 12));
    return Array.from({ length: count }, (_, i) => pointAlong(path, (i * pathLength(path)) / count));
  });
  const seen = places.filter(
    (p) => contains(area, p) && regionContains(band.region, p) && !covering.some((other) => contains(other, p)),
  );
  return seen[Math.floor(seen.length / 2)] ?? null;
}

/** Places across an area's box, the one nearest to its middle first. */
function candidatesIn(area: Area): Point[] {
  const { bounds } = area.outer;
  const middle: Point = areaOf(area) > 0 ? centroidOf(area) : [bounds.minX, bounds.minY];
  const candidates: Point[] = [middle];
  for (let i = 1; i < PLACES; i++) {
    for (let j = 1; j < PLACES; j++) {
      const x = bounds.minX + ((bounds.maxX - bounds.minX) * i) / PLACES;
      const y = bounds.minY + ((bounds.maxY - bounds.minY) * j) / PLACES;
      candidates.push([x, y]);
    }
  }
  const far = (p: Point) => Math.hypot(p[0] - middle[0], p[1] - middle[1]);
  return candidates.sort((a, b) => far(a) - far(b));
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
    case "inset":
      return { size: "small", role: "on-water" };
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
  const hasRoom = ([x, y]: Point) =>
    [-w, 0, w].every((dx) =>
      [-h, h].every((dy) => {
        const p: Point = [x + dx, y + dy];
        return contains(area, p) && !covering.some((other) => contains(other, p));
      }),
    );
  const roomy = candidatesIn(area).filter(hasRoom);
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
