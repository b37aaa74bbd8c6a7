/** What the answers to questions rest on, beside the element and the pool that they are about. */
import type { Question, Rest } from "../../report.ts";
import type { Kind } from "../../site/elements.ts";

const BARRIERS = ["wall", "fence", "building", "opening"] as const satisfies readonly Kind[];

/** What can stand between a thing and the water. */
export const ON_BARRIERS: Rest = { kinds: BARRIERS };

/** The recorded copper and its connections. */
export const ON_COPPER: Rest = { kinds: ["conductor", "tie"] satisfies readonly Kind[] };

/** What the perimeter bonding runs through and joins. */
export const ON_PERIMETER: Rest = {
  kinds: ["conductor", "tie", "surface", "keep-out", ...BARRIERS] satisfies readonly Kind[],
};

/** What lies round the pool and how high. */
export const ON_SURFACES: Rest = { kinds: ["surface"] satisfies readonly Kind[] };

/** What people stand on over the water. */
export const ON_STRUCTURES: Rest = { kinds: ["structure"] satisfies readonly Kind[] };

export const ON_DEVICES: Rest = { kinds: ["device"] satisfies readonly Kind[] };

/** Both together. */
export function restsOnBoth(one: Rest | undefined, other: Rest | undefined): Rest | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  const kinds = [...new Set([...(one.kinds ?? []), ...(other.kinds ?? [])])];
  const elements = [...new Set([...(one.elements ?? []), ...(other.elements ?? [])])];
  return { ...(kinds.length > 0 ? { kinds } : {}), ...(elements.length > 0 ? { elements } : {}) };
}

/** A question about a thing, asked of the pool's water: several things may raise it there, so that it bears the thing's name. */
export function ofTheWater(question: Question, thing: string): Question {
  const restsOn = restsOnBoth(question.restsOn, { elements: [thing] });
  return { ...question, id: `${question.id}-${thing}`, ...(restsOn === undefined ? {} : { restsOn }) };
}
