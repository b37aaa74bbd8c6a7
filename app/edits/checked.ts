/**
 * The gate that every changed element passes: the same checks as the reader's, so that nothing that could not be read
 * again gets into the document. Refusals are plain sentences with the numbers of corners as people count them, from 1.
 */
import { samePoint } from "../../geometry/points.ts";
import { findSelfCrossing } from "../../geometry/self-crossing.ts";
import type { PathData } from "../../geometry/types.ts";
import { elementProblems, isKnownKind } from "../../rules/site/element-check.ts";
import { fieldOf } from "../../rules/site/field-list.ts";
import { ISLAND_APART, ISLAND_IN_WATER } from "../../rules/site/island-check.ts";
import { LARGEST_NUMBER, MOST_ELEMENTS, MOST_VERTICES } from "../../rules/site/limits.ts";
import type { Problem } from "../../rules/site/refusal.ts";
import type { Site } from "../../rules/site/site.ts";
import { type AnyElement, type EditResult, type Refused, refused, withElement } from "./edit.ts";
import { calledAs, elementWords } from "./element-words.ts";
import { type PathRef, pathOf, pointOf } from "./path-ref.ts";

/** The site with the element in its place, or why it may not be taken. */
export function withChecked(site: Site, element: AnyElement, label: string): EditResult {
  const refusal = refuseElement(element);
  return refusal ?? { ok: true, site: withElement(site, element), label };
}

/** The site with new elements at its end, or why they may not be taken. */
export function withAdded(site: Site, added: readonly AnyElement[], label: string): EditResult {
  const ids = new Set(site.elements.map((element) => element.id));
  for (const element of added) {
    const refusal = refuseElement(element);
    if (refusal) return refusal;
    if (ids.has(element.id)) return refused(`There already is an element "${element.id}".`, element.id, "id");
    ids.add(element.id);
  }
  const elements = [...site.elements, ...added];
  if (elements.length > MOST_ELEMENTS) {
    return refused(`A site holds at most ${MOST_ELEMENTS.toLocaleString("en-US")} elements.`);
  }
  return { ok: true, site: { ...site, elements }, label };
}

/** Why an element may not be taken; null: it may. */
export function refuseElement(element: AnyElement): Refused | null {
  const [problem] = elementProblems(element, 0);
  return problem === undefined ? null : refused(sentence(element, problem), element.id, problem.field);
}

/** What a refusal says when the element of an edit is gone. */
export function gone(id: string): Refused {
  return refused(`There is no element "${id}" any more.`, id);
}

function sentence(element: AnyElement, problem: Problem): string {
  const place = /^(outline|path|shape|islands|holes)(?:\[(\d+)\])?(?:\.vertices(?:\[(\d+)\])?)?$/.exec(problem.field);
  if (place) {
    const field = place[1] as PathRef["field"];
    const ref: PathRef = place[2] === undefined ? { field } : { field, index: Number(place[2]) };
    const path = pathOf(element, ref);
    const vertex = place[3] === undefined ? null : Number(place[3]);
    const said = path && pathSentence(path, thing(element, ref), vertex);
    if (said) return said;
    if (field === "islands" && problem.expected === ISLAND_IN_WATER)
      return `${thing(element, ref)} has to lie inside the pool, clear of its wall.`;
    if (field === "islands" && problem.expected === ISLAND_APART)
      return `${thing(element, ref)} has to lie apart from the other islands.`;
  }
  const point = /^(at|shape)\b/.test(problem.field) ? pointOf(element) : null;
  if (Array.isArray(point) && point.some((n) => Math.abs(n) > LARGEST_NUMBER)) return tooFar(calledAs(element));
  return fieldSentence(element, problem);
}

/** The sentence for what is wrong with a path; null when it is nothing that a drawing hand could do. */
function pathSentence(path: PathData, words: string, vertex: number | null): string | null {
  const { vertices, closed } = path;
  if (vertices.length > MOST_VERTICES)
    return `${words} has more than ${MOST_VERTICES.toLocaleString("en-US")} corners.`;
  if (vertices.some((numbers) => numbers.some((n) => !Number.isFinite(n))))
    return `${words} has a corner without a place.`;
  if (vertices.some((numbers) => numbers.some((n) => Math.abs(n) > LARGEST_NUMBER))) return tooFar(words);
  const [last, first] = [vertices.at(-1), vertices[0]];
  if (closed && vertices.length > 2 && last && first && samePoint([last[0], last[1]], [first[0], first[1]])) {
    return `${words} would have its last corner on its first.`;
  }
  for (let i = 1; i < vertices.length; i++) {
    const [a, b] = [vertices[i - 1], vertices[i]];
    if (a && b && samePoint([a[0], a[1]], [b[0], b[1]])) return `${words} would have corner ${i + 1} on corner ${i}.`;
  }
  if (vertices.length < 2) return `${words} needs at least two points.`;
  if (vertex !== null) return tooFar(`The arc after corner ${vertex + 1}`);
  if (!closed) return null;
  if (vertices.length === 2 && (vertices[0]?.[2] ?? 0) === -(vertices[1]?.[2] ?? 0)) {
    return `${words} needs at least three corners, or an arc, to enclose an area.`;
  }
  const crossing = findSelfCrossing(path);
  return crossing && crossingSentence(words, crossing.edgeA, crossing.edgeB, vertices.length);
}

function crossingSentence(words: string, edgeA: number, edgeB: number, count: number): string {
  if (edgeB === edgeA + 1 || (edgeA === 0 && edgeB === count - 1 && count > 2)) {
    const corner = edgeB === edgeA + 1 ? edgeB : 0;
    return `${words} would fold back over itself or cross itself at corner ${corner + 1}.`;
  }
  return `${words} would cross itself between corner ${edgeA + 1} and corner ${edgeB + 1}.`;
}

function tooFar(words: string): string {
  return `${words} would lie farther from the origin than a site may reach (${LARGEST_NUMBER.toLocaleString("en-US")} in.).`;
}

function thing(element: AnyElement, ref: PathRef): string {
  if (ref.field === "islands") return `Island ${(ref.index ?? 0) + 1}`;
  if (ref.field === "holes") return `Opening ${(ref.index ?? 0) + 1} of the surface`;
  if (ref.field === "outline") return "The outline";
  const path = pathOf(element, ref);
  return path?.closed ? "The outline" : "The line";
}

function fieldSentence(element: AnyElement, problem: Problem): string {
  const name = /^[^.[]*/.exec(problem.field)?.[0] ?? problem.field;
  const field = isKnownKind(element.kind) ? fieldOf(element.kind, name) : null;
  const label = field?.label ?? name;
  const options = field?.type === "choice" ? field.options.map((option) => option.label) : null;
  const { expected } = problem;
  const wanted = options === null ? expected : `one of: ${options.join(", ")}`;
  if (problem.got === "nothing") return `${label} of ${elementWords(element)} has to be given: ${wanted}.`;
  return `${label} of ${elementWords(element)} has to be ${wanted}; it cannot be ${problem.got}.`;
}
