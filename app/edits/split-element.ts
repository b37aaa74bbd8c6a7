/** Cuts an element in two: an open line at one place, an outline between two; a closed line is opened where it is cut. */
import { pathToPath } from "../../geometry/distance.ts";
import { areaFrom, contains, pathFrom, signedArea } from "../../geometry/outline.ts";
import { SAME_POINT } from "../../geometry/tolerances.ts";
import type { PathData } from "../../geometry/types.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import type { Kind } from "../../rules/site/elements.ts";
import { innerOutlineFields } from "../../rules/site/geometry-fields.ts";
import { reattached } from "../dimensions/anchors.ts";
import { refuseLocked } from "./arrangement.ts";
import { gone, refuseElement } from "./checked.ts";
import { namedApart, namesOn } from "./copy-names.ts";
import { type PathPlace, stretch, withCornerAt } from "./cut-path.ts";
import { type AnyElement, type Edit, type EditResult, refused, withElement } from "./edit.ts";
import { elementWords } from "./element-words.ts";
import { inItsPool } from "./inset-place.ts";
import { newId } from "./new-id.ts";
import { hasHeights, type PathRef, pathOf, pathRefs, pointOf, withPath } from "./path-ref.ts";
import { poolAt } from "./templates.ts";
import { withoutWhole } from "./whole-facts.ts";

/** True where an element's own path encloses an area, which takes two places to cut. */
export function isOutline(element: AnyElement): boolean {
  const [ref] = pathRefs(element);
  const path = ref && pathOf(element, ref);
  if (!path?.closed) return false;
  return ref?.field === "outline" || (ref?.field === "shape" && (path as { line?: boolean }).line !== true);
}

/** Cuts a line at a place. The second part is a new element with the same facts, laid right after the first. */
export function splitLine(id: string, place: PathPlace): Edit {
  return splitting(id, (site, element, ref, path) => {
    const flat = hasHeights(element);
    const cut = withCornerAt(path, place, flat);
    const last = cut.path.vertices.length - 1;
    if (path.closed) {
      const opened = stretch(cut.path, cut.index, cut.index, flat);
      return finished(site, element, withPath(element, ref, opened), null, "Open");
    }
    if (cut.index === 0 || cut.index === last) return refused("A line cannot be cut at its end.", id, ref.field);
    const second = secondOf(site, element);
    const parts = [stretch(cut.path, 0, cut.index, flat), stretch(cut.path, cut.index, last, flat)] as const;
    return finished(site, element, withPath(element, ref, parts[0]), withPath(second, ref, parts[1]), "Cut");
  });
}

/** Cuts an outline straight from one place of it to another. */
export function splitOutline(id: string, from: PathPlace, to: PathPlace): Edit {
  return splitting(id, (site, element, ref, path) => {
    // The later place first, so that its corner does not shift the earlier one.
    const [early, late] = isBefore(from, to) ? [from, to] : [to, from];
    const second = withCornerAt(path, late);
    const first = withCornerAt(second.path, early);
    const shift = first.path.vertices.length - second.path.vertices.length;
    const count = first.path.vertices.length;
    const end = (second.index === 0 ? 0 : second.index + shift) % count;
    if (first.index === end) return refused("Cut from one place of the outline to another.", id, ref.field);
    const parts = [stretch(first.path, first.index, end), stretch(first.path, end, first.index)].map((part) => ({
      ...part,
      closed: true,
    }));
    if (parts.some(({ vertices }) => vertices.length < 2)) {
      return refused("Cut from one place of the outline to another.", id, ref.field);
    }
    const [a, b] = parts as [PathData, PathData];
    const copy = secondOf(site, element);
    const turns = [path, a, b].map((one) => Math.sign(signedArea(pathFrom(one))));
    if (turns.some((way) => way !== turns[0])) {
      return refused(`A cut has to run inside ${elementWords(element)}.`, id, ref.field);
    }
    const through = innerAcross(element, a);
    if (through !== null) return refused(`The cut would go through ${through}.`, id, ref.field);
    const [one, other] = shareInner(withPath(element, ref, a), withPath(copy, ref, b), a);
    const cut = finished(site, element, one, other, "Cut");
    return cut.ok && element.kind === "pool" ? { ...cut, site: inTheirPart(cut.site, one, other) } : cut;
  });
}

type Site = Parameters<Edit["apply"]>[0];

/** What the second part begins with: the same facts, an id and a name of its own. */
function secondOf(site: Site, element: AnyElement): AnyElement {
  return namedApart({ ...element, id: newId(site, element.kind as Kind) }, namesOn(site));
}

function splitting(
  id: string,
  cut: (site: Site, element: AnyElement, ref: PathRef, path: PathData) => EditResult,
): Edit {
  return {
    label: "Cut",
    apply(site) {
      const element = site.elements.find((candidate) => candidate.id === id);
      if (!element) return gone(id);
      const locked = refuseLocked(site, [id]);
      if (locked) return locked;
      const [ref] = pathRefs(element);
      const path = ref && pathOf(element, ref);
      if (!ref || !path) return refused(`${elementWords(element)} has no line to cut.`, id);
      return cut(site, element, ref, path);
    },
  };
}

function finished(
  site: Site,
  before: AnyElement,
  first: AnyElement,
  second: AnyElement | null,
  verb: string,
): EditResult {
  const label = `${verb} ${elementWords(before)}`;
  const one = second ? withoutWhole(first) : first;
  const refusal = refuseElement(one) ?? (second && refuseElement(second));
  if (refusal) return refusal;
  const changed = withElement(site, one);
  if (!second) return { ok: true, site: reattached(site, changed, [before.id], [before.id]), label };
  const at = changed.elements.findIndex((element) => element.id === before.id);
  const whole = { ...changed, elements: changed.elements.toSpliced(at + 1, 0, withoutWhole(second)) };
  return { ok: true, site: reattached(site, whole, [before.id], [before.id, second.id]), label };
}

/** What the side that closes a part, its last one, meets of what is cut out of an element, in words; null: nothing. */
function innerAcross(element: AnyElement, { vertices }: PathData): string | null {
  if (!isKnownKind(element.kind)) return null;
  const [from, to] = [vertices.at(-1), vertices[0]];
  if (!from || !to) return null;
  const cut = pathFrom({
    vertices: [
      [from[0], from[1]],
      [to[0], to[1]],
    ],
    closed: false,
  });
  for (const field of innerOutlineFields(element.kind)) {
    const list = (element as Readonly<Record<string, unknown>>)[field];
    const all = Array.isArray(list) ? (list as PathData[]).map(pathFrom) : [];
    if (all.some((inner) => pathToPath(cut, inner).length <= SAME_POINT)) {
      return field === "islands" ? "an island" : "an opening";
    }
  }
  return null;
}

/** Lights, contacts, steps and ledges of a pool that was cut name the part that they lie in, or are nearer to. */
function inTheirPart(site: Site, first: AnyElement, second: AnyElement): Site {
  const parts: Site = { ...site, elements: [first, second] };
  const elements = site.elements.map((element) => {
    if ((element as Readonly<Record<string, unknown>>).pool !== first.id) return element;
    const at = pointOf(element);
    return at ? ({ ...element, pool: poolAt(parts, at) ?? first.id } as typeof element) : inItsPool(parts, element);
  });
  return { ...site, elements };
}

/** Islands and openings go to the part that they lie in. */
function shareInner(first: AnyElement, second: AnyElement, outline: PathData): [AnyElement, AnyElement] {
  if (!isKnownKind(first.kind)) return [first, second];
  const area = areaFrom(outline);
  const parts: Record<string, unknown>[] = [{ ...first }, { ...second }];
  for (const field of innerOutlineFields(first.kind)) {
    const list = parts[0]?.[field];
    if (!Array.isArray(list)) continue;
    const isInFirst = ({ vertices }: PathData) => {
      const [corner] = vertices;
      return corner !== undefined && contains(area, [corner[0], corner[1]]);
    };
    const shares = [(list as PathData[]).filter(isInFirst), (list as PathData[]).filter((one) => !isInFirst(one))];
    parts.forEach((part, i) => {
      if (shares[i]?.length) part[field] = shares[i];
      else delete part[field];
    });
  }
  return parts as unknown as [AnyElement, AnyElement];
}

function isBefore(a: PathPlace, b: PathPlace): boolean {
  return a.index < b.index || (a.index === b.index && a.share < b.share);
}
