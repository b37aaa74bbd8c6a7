/** Typed figures of the arranging forms, read into edits. Each gives the edit, or in plain words why there is none. */
import { edgeFromVertices, edgeLength } from "../../geometry/edge.ts";
import type { Bounds, LineEdge, PathData, Point } from "../../geometry/types.ts";
import type { Site } from "../../rules/site/site.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { mirrorCopies } from "../edits/duplicate-elements.ts";
import type { AnyElement, Edit } from "../edits/edit.ts";
import { boxRound, middleOf } from "../edits/element-box.ts";
import { elementsOf } from "../edits/element-words.ts";
import { moveElements } from "../edits/move-elements.ts";
import { hasHeights, pathOf, pathRefs } from "../edits/path-ref.ts";
import { repeatElements } from "../edits/repeat-elements.ts";
import { mirrorElements, turnElements } from "../edits/turn-elements.ts";
import { parseAngle } from "../entry/parse-angle.ts";
import { parseBearing } from "../entry/parse-bearing.ts";
import { parseLength } from "../entry/parse-length.ts";
import { parseQuantity } from "../entry/parse-quantity.ts";

/** The site and what is selected of it. */
export interface Chosen {
  readonly site: Site;
  readonly ids: readonly string[];
}

export type Made = { readonly ok: true; readonly edit: Edit } | { readonly ok: false; readonly reason: string };

/** Inches, of either sign; an empty text is nothing. */
function signedLength(text: string, units: Units): number | string {
  if (text.trim() === "") return 0;
  const read = parseLength(text, units, { mayBeNegative: true });
  return read.ok ? read.inches : read.reason;
}

function unitsOf({ site }: Chosen): Units {
  return site.display?.units ?? "ft-in";
}

function no(reason: string): Made {
  return { ok: false, reason };
}

export type MoveFigures = { readonly kind: "sides" | "bearing"; readonly first: string; readonly second: string };

/** To the right and up, or a length in a direction. */
export function moveMade(chosen: Chosen, { kind, first, second }: MoveFigures): Made {
  if (first.trim() === "" && (kind === "bearing" || second.trim() === "")) return no("Type how far.");
  const a = signedLength(first, unitsOf(chosen));
  if (typeof a === "string") return no(a);
  if (kind === "sides") {
    const b = signedLength(second, unitsOf(chosen));
    return typeof b === "string" ? no(b) : { ok: true, edit: moveElements(chosen.ids, a, b) };
  }
  const bearing = parseBearing(second, chosen.site.north);
  if (!bearing.ok) return no(bearing.reason);
  const [x, y] = stepIn(bearing.degrees, a);
  return { ok: true, edit: moveElements(chosen.ids, x, y) };
}

/** Places on the box round what is selected. */
export const ABOUT = ["middle", "lower-left", "lower-right", "upper-left", "upper-right", "place"] as const;
export type About = (typeof ABOUT)[number];

export interface TurnFigures {
  readonly degrees: string;
  readonly about: About;
  readonly x: string;
  readonly y: string;
}

export function turnMade(chosen: Chosen, { degrees, about, x, y }: TurnFigures): Made {
  const angle = parseAngle(degrees);
  if (!angle.ok) return no(angle.reason);
  const place = placeAbout(chosen, about, x, y);
  return typeof place === "string" ? no(place) : { ok: true, edit: turnElements(chosen.ids, angle.degrees, place) };
}

export const MIRRORS = ["upright", "level", "direction", "side"] as const;
export type MirrorKind = (typeof MIRRORS)[number];

export interface MirrorFigures {
  readonly kind: MirrorKind;
  readonly about: About;
  readonly x: string;
  readonly y: string;
  readonly direction: string;
  /** `element/number` of a side, as `sidesOf` names them. */
  readonly side: string;
  readonly keepsOriginal: boolean;
}

export function mirrorMade(chosen: Chosen, figures: MirrorFigures): Made {
  const axis = axisOf(chosen, figures);
  if (typeof axis === "string") return no(axis);
  const make = figures.keepsOriginal ? mirrorCopies : mirrorElements;
  return { ok: true, edit: make(chosen.ids, axis.through, axis.degrees) };
}

function axisOf(chosen: Chosen, figures: MirrorFigures): { through: Point; degrees: number } | string {
  if (figures.kind === "side") {
    const side = lineOfSide(chosen.site, figures.side);
    if (!side) return "Choose the straight side to mirror about.";
    const [from, to] = side;
    return { through: from, degrees: (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI };
  }
  const through = placeAbout(chosen, figures.about, figures.x, figures.y);
  if (typeof through === "string") return through;
  if (figures.kind !== "direction") return { through, degrees: figures.kind === "upright" ? 90 : 0 };
  const bearing = parseBearing(figures.direction, chosen.site.north);
  return bearing.ok ? { through, degrees: bearing.degrees } : bearing.reason;
}

export interface RepeatFigures {
  /** Id of the element whose line is followed; empty: a straight line from where it stands. */
  readonly along: string;
  readonly length: string;
  readonly direction: string;
  readonly by: "count" | "spacing";
  readonly count: string;
  readonly spacing: string;
  readonly aside: string;
  readonly turning: boolean;
}

export function repeatMade(chosen: Chosen, figures: RepeatFigures): Made {
  const units = unitsOf(chosen);
  const line = figures.along === "" ? straightLine(chosen, figures) : lineOf(chosen.site, figures.along);
  if (typeof line === "string") return no(line);
  const aside = signedLength(figures.aside, units);
  if (typeof aside === "string") return no(aside);
  const row = { line, aside, turning: figures.turning };
  if (figures.by === "count") {
    const count = parseQuantity(figures.count, "count");
    if (!count.ok) return no(count.reason);
    return { ok: true, edit: repeatElements(chosen.ids, { ...row, every: { count: count.value } }) };
  }
  const spacing = parseLength(figures.spacing, units);
  if (!spacing.ok) return no(spacing.reason);
  return { ok: true, edit: repeatElements(chosen.ids, { ...row, every: { spacing: spacing.inches } }) };
}

function straightLine(chosen: Chosen, { length, direction }: RepeatFigures): PathData | string {
  const read = parseLength(length, unitsOf(chosen));
  if (!read.ok) return read.reason;
  if (read.inches === 0) return "The line needs a length.";
  const bearing = parseBearing(direction, chosen.site.north);
  if (!bearing.ok) return bearing.reason;
  const box = boxRound(elementsOf(chosen.site, chosen.ids));
  if (!box) return "What is selected has no place.";
  const [x, y] = middleOf(box);
  const [dx, dy] = stepIn(bearing.degrees, read.inches);
  return {
    closed: false,
    vertices: [
      [x, y],
      [x + dx, y + dy],
    ],
  };
}

/** Elements that have a line to follow, in the order of the file. */
export function withLines(site: Site, without: readonly string[]): AnyElement[] {
  return site.elements.filter((element) => !without.includes(element.id) && lineOfElement(element) !== null);
}

function lineOf(site: Site, id: string): PathData | string {
  const element = site.elements.find((one) => one.id === id);
  return (element && lineOfElement(element)) ?? "Choose the line to follow.";
}

function lineOfElement(element: AnyElement): PathData | null {
  const [ref] = pathRefs(element);
  const path = ref ? pathOf(element, ref) : null;
  if (!path) return null;
  if (!hasHeights(element)) return path;
  return { ...path, vertices: path.vertices.map(([x, y]) => [x, y] as const) };
}

/** The straight sides of an element, to mirror about: `fence-1/0` and its words. */
export function sidesOf(element: AnyElement, units: Units): { readonly value: string; readonly label: string }[] {
  const count = lineOfElement(element)?.vertices.length ?? 0;
  return Array.from({ length: count }, (_, i) => straightSide(element, i)).flatMap((edge, i) =>
    edge ? [{ value: `${element.id}/${i}`, label: `Side ${i + 1}, ${lengthText(edgeLength(edge), units)}` }] : [],
  );
}

/** The side that leaves a corner; null where none does, or where it is an arc. */
function straightSide(element: AnyElement, index: number): LineEdge | null {
  const path = lineOfElement(element);
  const from = path?.vertices[index];
  const to = path?.vertices[path.closed ? (index + 1) % path.vertices.length : index + 1];
  const edge = from && to ? edgeFromVertices(from, to) : null;
  return edge?.kind === "line" ? edge : null;
}

function lineOfSide(site: Site, side: string): readonly [Point, Point] | null {
  const cut = side.lastIndexOf("/");
  if (cut < 0 || cut === side.length - 1) return null;
  const element = site.elements.find(({ id }) => id === side.slice(0, cut));
  const edge = element ? straightSide(element, Number(side.slice(cut + 1))) : null;
  return edge && [edge.from, edge.to];
}

function placeAbout({ site, ids }: Chosen, about: About, x: string, y: string): Point | string {
  if (about === "place") {
    const units = site.display?.units ?? "ft-in";
    if (x.trim() === "" || y.trim() === "") return "Type the place: how far right and up from the site's origin.";
    const [px, py] = [signedLength(x, units), signedLength(y, units)];
    if (typeof px === "string") return px;
    return typeof py === "string" ? py : [px, py];
  }
  const box = boxRound(elementsOf(site, ids));
  return box ? onBox(box, about) : "What is selected has no place.";
}

function onBox(box: Bounds, about: Exclude<About, "place">): Point {
  if (about === "middle") return middleOf(box);
  return [about.endsWith("left") ? box.minX : box.maxX, about.startsWith("lower") ? box.minY : box.maxY];
}

/** A step of so many inches in a direction, exact along the sheet. */
function stepIn(degrees: number, inches: number): Point {
  const quarter = degrees / 90;
  if (Number.isInteger(quarter)) {
    const ways: readonly Point[] = [
      [inches, 0],
      [0, inches],
      [-inches, 0],
      [0, -inches],
    ];
    return ways[((quarter % 4) + 4) % 4] as Point;
  }
  const angle = (degrees * Math.PI) / 180;
  return [inches * Math.cos(angle), inches * Math.sin(angle)];
}
