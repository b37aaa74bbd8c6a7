/** Joins two lines that end at one place into one, or two outlines that lie edge to edge; or closes a line whose ends meet. */
import { distanceBetween } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { PathData, Point, Vertex } from "../../geometry/types.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import { innerOutlineFields } from "../../rules/site/geometry-fields.ts";
import type { Site } from "../../rules/site/site.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { reattached } from "../dimensions/anchors.ts";
import { refuseLocked, withoutArranged } from "./arrangement.ts";
import { gone, refuseElement } from "./checked.ts";
import { reversed } from "./cut-path.ts";
import { type AnyElement, type Edit, type EditResult, refused, withElement } from "./edit.ts";
import { calledAs, elementWords } from "./element-words.ts";
import { joinedOutline } from "./join-outlines.ts";
import { hasHeights, type PathRef, pathOf, pathRefs, withPath } from "./path-ref.ts";
import { isOutline } from "./split-element.ts";
import { sharedFacts } from "./whole-facts.ts";

/** Kinds of lines that may be closed. */
const MAY_CLOSE: ReadonlySet<string> = new Set(["fence", "wall", "conductor"]);

/**
 * Joins the second line to the first, which keeps its name and place in the file. Facts on which they differ are let go
 * of, so that they are asked for; a fact that has to be given has to be the same. What named the second names the first.
 */
export function joinPaths(firstId: string, secondId: string): Edit {
  return {
    label: "Join",
    apply(site) {
      const [first, second] = [firstId, secondId].map((id) => site.elements.find((element) => element.id === id));
      if (!first) return gone(firstId);
      if (!second) return gone(secondId);
      const locked = refuseLocked(site, [firstId, secondId]);
      if (locked) return locked;
      if (first === second) return closeLine(site, first);
      if (first.kind !== second.kind) {
        return refused(`${calledAs(first)} and ${calledAs(second)} are of different kinds.`, firstId);
      }
      if (isOutline(first) && isOutline(second)) return joinOutlines(site, first, second);
      const [a, b] = [openPath(first), openPath(second)];
      if (!a || !b) return refused("Only lines with two ends, or two outlines, can be joined.", firstId);
      const flat = hasHeights(first);
      const units = site.display?.units ?? "ft-in";
      const joined = joinedPath(a.path, b.path, flat);
      if (typeof joined === "number") {
        const gap = lengthText(joined, units, 0);
        return refused(`Their nearest ends lie ${gap} apart: put one end onto the other first.`, firstId);
      }
      if ("heights" in joined) {
        const [high, low] = joined.heights.map((height) => lengthText(height, units));
        return refused(
          `Where they meet one lies at a height of ${high}, the other at ${low}: make that the same first.`,
        );
      }
      const facts = sharedFacts(first, second);
      if (typeof facts === "string") return refused(facts, firstId);
      const element = withPath(facts, a.ref, ended(joined, first.kind));
      const refusal = refuseElement(element);
      if (refusal) return refusal;
      const without = withoutElement(withElement(site, element), secondId, firstId);
      const whole = reattached(site, without, [firstId, secondId], [firstId]);
      return { ok: true, site: whole, label: `Join ${elementWords(first)} and ${elementWords(second)}` };
    },
  };
}

function joinOutlines(site: Site, first: AnyElement, second: AnyElement): EditResult {
  const [ref] = pathRefs(first);
  const [a, b] = [first, second].map((element) => {
    const [own] = pathRefs(element);
    return own && pathOf(element, own);
  });
  if (!ref || !a || !b) return refused("Only lines with two ends, or two outlines, can be joined.", first.id);
  const joined = joinedOutline(a, b);
  if (typeof joined === "string") return refused(joined, first.id);
  const facts = sharedFacts(withoutInner(first), withoutInner(second));
  if (typeof facts === "string") return refused(facts, first.id);
  const element = { ...withPath(facts, ref, joined), ...innerOf(first, second) } as AnyElement;
  const refusal = refuseElement(element);
  if (refusal) return refusal;
  const without = withoutElement(withElement(site, element), second.id, first.id);
  const whole = reattached(site, without, [first.id, second.id], [first.id]);
  return { ok: true, site: whole, label: `Join ${elementWords(first)} and ${elementWords(second)}` };
}

function innerFields({ kind }: AnyElement): readonly string[] {
  return isKnownKind(kind) ? innerOutlineFields(kind) : [];
}

/** Without islands and openings, which each part has of its own. */
function withoutInner(element: AnyElement): AnyElement {
  const inner = new Set(innerFields(element));
  return Object.fromEntries(Object.entries(element).filter(([name]) => !inner.has(name))) as AnyElement;
}

/** Islands and openings of both. */
function innerOf(first: AnyElement, second: AnyElement): Readonly<Record<string, readonly unknown[]>> {
  const listOf = (element: AnyElement, field: string) => {
    const list = (element as Readonly<Record<string, unknown>>)[field];
    return Array.isArray(list) ? list : [];
  };
  return Object.fromEntries(
    innerFields(first).flatMap((field) => {
      const both = [...listOf(first, field), ...listOf(second, field)];
      return both.length > 0 ? [[field, both]] : [];
    }),
  );
}

function closeLine(site: Site, element: AnyElement): EditResult {
  const open = openPath(element);
  if (!open) return refused("Only a line with two ends can be closed.", element.id);
  const closed = ended(open.path, element.kind);
  if (!closed.closed) {
    return refused(
      `The two ends of ${elementWords(element)} do not meet, or it is of a kind that stays open.`,
      element.id,
    );
  }
  const changed = withPath(element, open.ref, closed);
  const refusal = refuseElement(changed);
  if (refusal) return refusal;
  const { id } = element;
  const whole = reattached(site, withElement(site, changed), [id], [id]);
  return { ok: true, site: whole, label: `Close ${elementWords(element)}` };
}

function openPath(element: AnyElement): { readonly ref: PathRef; readonly path: PathData } | null {
  const [ref] = pathRefs(element);
  const path = ref && pathOf(element, ref);
  return ref && path && !path.closed ? { ref, path } : null;
}

/** Both as one line; or how far apart their nearest ends lie, inches; or the two heights of the place where they meet. */
function joinedPath(a: PathData, b: PathData, flat: boolean): PathData | number | { heights: readonly number[] } {
  let least = Number.POSITIVE_INFINITY;
  let best: PathData | { heights: readonly number[] } | null = null;
  for (const one of [a, reversed(a, flat)]) {
    for (const other of [b, reversed(b, flat)]) {
      const [end, start] = [one.vertices.at(-1), other.vertices[0]];
      if (!end || !start) continue;
      const gap = distanceBetween([end[0], end[1]], [start[0], start[1]]);
      if (gap >= least) continue;
      least = gap;
      const heights = flat ? [end[2], start[2]].filter((height) => height !== undefined) : [];
      const [high] = heights;
      const isOne = heights.every((height) => height === high);
      const meeting: Vertex = flat && high !== undefined ? [start[0], start[1], high] : start;
      const vertices = [...one.vertices.slice(0, -1), meeting, ...other.vertices.slice(1)];
      best = isOne ? { vertices, closed: false } : { heights };
    }
  }
  return best && least <= SAME_CORNER ? best : least;
}

/** Closed where both ends lie on one place and the kind may be closed. */
function ended(path: PathData, kind: string): PathData {
  const { vertices } = path;
  const [first, last] = [vertices[0], vertices.at(-1)];
  if (!first || !last || vertices.length < 4 || !MAY_CLOSE.has(kind)) return path;
  const [p, q]: Point[] = [
    [first[0], first[1]],
    [last[0], last[1]],
  ] as [Point, Point];
  return p && q && distanceBetween(p, q) <= SAME_CORNER ? { vertices: vertices.slice(0, -1), closed: true } : path;
}

/** The site without an element; what named it names another. */
function withoutElement(site: Site, id: string, heir: string): Site {
  const elements = site.elements
    .filter((element) => element.id !== id)
    .map((element) => {
      const fields: Record<string, unknown> = { ...element };
      for (const field of ["joins", "serves", "pool"]) {
        const named = fields[field];
        if (named === id) fields[field] = heir;
        else if (Array.isArray(named) && named.includes(id)) {
          fields[field] = [...new Set(named.map((one) => (one === id ? heir : one)))];
        } else continue;
        return fields as typeof element;
      }
      return element;
    });
  const answers = site.answers?.filter((answer) => answer.element !== id);
  const next = { ...site, elements, ...(answers ? { answers } : {}) };
  return withoutArranged(next as Site, new Set([id]));
}
