/**
 * Facts of elements that are cut or joined. What was measured or counted of a whole says nothing of its parts, and what
 * was measured of two parts nothing of the whole that they become.
 */
import { ABSENT_MEANS } from "../../rules/site/defaults.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import { fieldOf } from "../../rules/site/field-list.ts";
import type { AnyElement } from "./edit.ts";
import { lowerFirst, sameValue } from "./set-field.ts";

type Facts = Readonly<Record<string, unknown>>;

const OF_THE_WHOLE: ReadonlySet<string> = new Set(["gates", "isolatedSections", "largestDimension", "wettedArea"]);
/**
 * Of two that become one, their sum, with the least that each stands for: a fence of no separate sections is one piece, and
 * that two lines are drawn as one joins no metal.
 */
const COUNTED: Readonly<Record<string, number>> = { gates: 0, anchors: 0, isolatedSections: 1 };
/** Of an element itself: the first one's stay. */
const OWN: ReadonlySet<string> = new Set(["id", "kind", "name", "outline", "path", "shape"]);

/** The element without what is only true of the whole that it was a part of, or was drawn along. */
export function withoutWhole(element: AnyElement): AnyElement {
  return Object.fromEntries(Object.entries(element).filter(([name]) => !OF_THE_WHOLE.has(name))) as AnyElement;
}

/**
 * The first element with the facts that both share; or why they cannot be one. A fact on which they differ is let go of,
 * so that it is asked for; where it has to be given, or its absence says something, it has to be the same. Fields that
 * this version does not know are kept.
 */
export function sharedFacts(first: AnyElement, second: AnyElement): AnyElement | string {
  const [one, other]: readonly Facts[] = [first, second] as unknown as Facts[];
  const facts: Record<string, unknown> = {};
  for (const name of new Set([...Object.keys(one ?? {}), ...Object.keys(other ?? {})])) {
    const [a, b] = [one?.[name], other?.[name]];
    const field = isKnownKind(first.kind) ? fieldOf(first.kind, name) : null;
    const least = Object.hasOwn(COUNTED, name) ? COUNTED[name] : undefined;
    if (OWN.has(name)) facts[name] = a;
    else if (least !== undefined && typeof a === "number" && typeof b === "number") {
      facts[name] = Math.max(least, a) + Math.max(least, b);
    } else if (OF_THE_WHOLE.has(name)) continue;
    else if (sameValue(a, b)) facts[name] = a;
    else if (!field) facts[name] = a ?? b;
    else {
      const absent = Object.hasOwn(ABSENT_MEANS, name) ? ABSENT_MEANS[name as keyof typeof ABSENT_MEANS] : undefined;
      const isSaid = absent !== undefined;
      if (field.required || (isSaid && (a ?? absent) !== (b ?? absent))) {
        return `They differ in ${lowerFirst(field.label)}: make that the same first.`;
      }
      if (isSaid) facts[name] = a ?? b;
    }
  }
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined)) as unknown as AnyElement;
}
