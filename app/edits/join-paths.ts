/** Joins two lines that end at one place into one; or closes one line whose two ends meet. */
import { distanceBetween } from "../../geometry/points.ts";
import { SAME_CORNER } from "../../geometry/tolerances.ts";
import type { PathData, Point } from "../../geometry/types.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import type { Kind } from "../../rules/site/elements.ts";
import { fieldOf } from "../../rules/site/field-list.ts";
import type { Site } from "../../rules/site/site.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { reattached } from "../dimensions/anchors.ts";
import { refuseLocked, withoutArranged } from "./arrangement.ts";
import { gone, refuseElement } from "./checked.ts";
import { reversed } from "./cut-path.ts";
import { type AnyElement, type Edit, type EditResult, refused, withElement } from "./edit.ts";
import { calledAs, elementWords } from "./element-words.ts";
import { hasHeights, type PathRef, pathOf, pathRefs, withPath } from "./path-ref.ts";

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
      const [a, b] = [openPath(first), openPath(second)];
      if (!a || !b) return refused("Only lines with two ends can be joined.", firstId);
      const flat = hasHeights(first);
      const joined = joinedPath(a.path, b.path, flat);
      if (typeof joined === "number") {
        const gap = lengthText(joined, site.display?.units ?? "ft-in", 0);
        return refused(`Their nearest ends lie ${gap} apart: put one end onto the other first.`, firstId);
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

/** Both as one line; or how far apart their nearest ends lie, inches. */
function joinedPath(a: PathData, b: PathData, flat: boolean): PathData | number {
  let least = Number.POSITIVE_INFINITY;
  let best: PathData | null = null;
  for (const one of [a, reversed(a, flat)]) {
    for (const other of [b, reversed(b, flat)]) {
      const [end, start] = [one.vertices.at(-1), other.vertices[0]];
      if (!end || !start) continue;
      const gap = distanceBetween([end[0], end[1]], [start[0], start[1]]);
      if (gap >= least) continue;
      least = gap;
      best = { vertices: [...one.vertices.slice(0, -1), ...other.vertices], closed: false };
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

/** The first element with the facts that both share; or why they cannot be one. */
function sharedFacts(first: AnyElement, second: AnyElement): AnyElement | string {
  const facts: Record<string, unknown> = { ...first };
  const others = second as unknown as Readonly<Record<string, unknown>>;
  const { kind } = first;
  const own = new Set(["id", "kind", "name", "path", "shape"]);
  for (const name of new Set([...Object.keys(facts), ...Object.keys(others)])) {
    if (own.has(name) || JSON.stringify(facts[name]) === JSON.stringify(others[name])) continue;
    const field = isKnownKind(kind) ? fieldOf(kind as Kind, name) : null;
    if (field?.required) {
      return `They differ in ${field.label.toLowerCase()}: make that the same first.`;
    }
    delete facts[name];
  }
  return facts as unknown as AnyElement;
}

/** The site without an element; what named it names another. */
function withoutElement(site: Site, id: string, heir: string): Site {
  const elements = site.elements
    .filter((element) => element.id !== id)
    .map((element) => {
      const { joins } = element as Readonly<Record<string, unknown>>;
      if (!Array.isArray(joins) || !joins.includes(id)) return element;
      const renamed = [...new Set(joins.map((one) => (one === id ? heir : one)))];
      return { ...element, joins: renamed } as typeof element;
    });
  const answers = site.answers?.filter((answer) => answer.element !== id);
  const next = { ...site, elements, ...(answers ? { answers } : {}) };
  return withoutArranged(next as Site, new Set([id]));
}
