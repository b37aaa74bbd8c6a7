/** Names of site files. */

import type { Site } from "../../rules/site/site.ts";
import { capitalized } from "../../rules/words/element-names.ts";

export const SITE_ENDING = ".site.json";
const LONGEST_STEM = 80;

/** The file name that a site is offered under: `quarry-lane-14.site.json`; `untitled.site.json` without a name. */
export function fileNameFor(site: Site): string {
  const stem = (site.name ?? "")
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .slice(0, LONGEST_STEM)
    .replace(/^-+|-+$/g, "");
  return `${stem === "" ? "untitled" : stem}${SITE_ENDING}`;
}

/** The name of a file without its ending, for titles. */
export function stemOf(fileName: string): string {
  return fileName.replace(/(\.site)?\.json$/i, "");
}

/** The name of a copy of a site: `Quarry Lane 14, copy`, and `copy 2` and so on where that is taken. */
export function copyName(name: string, taken: ReadonlySet<string>): string {
  const stem = name.trim().replace(/(?:^|, )copy(?: \d+)?$/i, "");
  for (let n = 1; ; n++) {
    const words = n === 1 ? "copy" : `copy ${n}`;
    const made = stem === "" ? capitalized(words) : `${stem}, ${words}`;
    if (made !== name && !taken.has(made)) return made;
  }
}
