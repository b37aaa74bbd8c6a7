/** What an edit is: a pure function from a site to a site, or a refusal with its reason. */
import type { KnownElement, UnknownElement } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";

export interface Refused {
  readonly ok: false;
  /** A plain sentence for the person who tried: what is wrong. */
  readonly reason: string;
  readonly element: string | null;
  readonly field?: string;
}

export interface Edited {
  readonly ok: true;
  readonly site: Site;
  /** What undo shows, where it can only be said with the site at hand: "Move fence, south run". */
  readonly label?: string;
}

export type EditResult = Edited | Refused;

/** `label` is what undo shows when `apply` has no better words: "Move". */
export interface Edit {
  readonly label: string;
  apply(site: Site): EditResult;
}

export type AnyElement = KnownElement | UnknownElement;

/** The site with one element put in place of the one with its id; the same site when there is none. */
export function withElement(site: Site, element: AnyElement): Site {
  const at = site.elements.findIndex((e) => e.id === element.id);
  if (at < 0) return site;
  const elements = [...site.elements];
  elements[at] = element;
  return { ...site, elements };
}

export function refused(reason: string, element: string | null = null, field?: string): Refused {
  return field === undefined ? { ok: false, reason, element } : { ok: false, reason, element, field };
}
