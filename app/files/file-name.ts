/** Names of site files. */
import type { Site } from "../../rules/site/site.ts";

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
