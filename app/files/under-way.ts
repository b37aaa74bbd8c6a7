/** A move that is under way, kept as its difference from the site before it: little even where the site is large. */
import { checkSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";

export interface UnderWay {
  /** The time of the copy that it goes on from. */
  readonly base: number;
  readonly label: string;
  /** Elements that differ from those before, in their order. */
  readonly elements: readonly unknown[];
  readonly removed: readonly string[];
  /** What else of the site differs. */
  readonly head: Readonly<Record<string, unknown>>;
}

/** What a move has changed so far; null when nothing. */
export function underWay(base: number, label: string, start: Site, shown: Site): UnderWay | null {
  if (start === shown) return null;
  const before = new Set<unknown>(start.elements);
  const elements = shown.elements.filter((element) => !before.has(element));
  const ids = new Set(shown.elements.map(({ id }) => id));
  const removed = start.elements.filter(({ id }) => !ids.has(id)).map(({ id }) => id);
  const was: Readonly<Record<string, unknown>> = start;
  const changed = Object.entries(shown).filter(([key, value]) => key !== "elements" && was[key] !== value);
  return { base, label, elements, removed, head: Object.fromEntries(changed) };
}

/** The site with the move in it; null when it does not belong to this copy or gives no site that can be read. */
export function withUnderWay(site: Site, at: number, kept: unknown): { label: string; site: Site } | null {
  if (!isUnderWay(kept) || kept.base !== at) return null;
  const removed = new Set(kept.removed);
  const changed = new Map(kept.elements.map((element) => [(element as { id?: unknown } | null)?.id, element]));
  const elements = site.elements.flatMap((element) => {
    if (removed.has(element.id)) return [];
    const other = changed.get(element.id);
    changed.delete(element.id);
    return [other ?? element];
  });
  const read = checkSite({ ...site, ...kept.head, elements: [...elements, ...changed.values()] });
  return read.ok ? { label: kept.label, site: read.site } : null;
}

function isUnderWay(value: unknown): value is UnderWay {
  if (typeof value !== "object" || value === null) return false;
  const { base, label, elements, removed, head } = value as Readonly<Record<string, unknown>>;
  return (
    typeof base === "number" &&
    typeof label === "string" &&
    Array.isArray(elements) &&
    Array.isArray(removed) &&
    typeof head === "object" &&
    head !== null
  );
}
