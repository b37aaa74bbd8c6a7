/** What is said before work that takes long, so that nobody takes it for a program that hangs. */
import type { Site } from "../../rules/site/site.ts";

/** Outlines of more vertices than this come from scans and take many seconds. */
export const MANY_VERTICES = 2000;

/** One line about the outlines that make a site slow to work out; null where there is none. */
export function sizeNote(name: string, site: Site): string | null {
  const long = site.elements.flatMap((element) => {
    const count = element.kind === "pool" ? verticesOf(element) : 0;
    return count > MANY_VERTICES ? [`${element.id} (${count.toLocaleString("en-US")} vertices)`] : [];
  });
  if (long.length === 0) return null;
  return `${name}: the outline of ${long.join(", ")} is as long as a scan gives it. Working it out may take a minute or longer; an outline of fewer corners is quicker.`;
}

function verticesOf(element: Site["elements"][number]): number {
  const outline = "outline" in element ? element.outline : undefined;
  const vertices = outline && typeof outline === "object" && "vertices" in outline ? outline.vertices : undefined;
  return Array.isArray(vertices) ? vertices.length : 0;
}
