/** The sites of `demo-sites` with the findings that each must give. */
import { readdirSync, readFileSync } from "node:fs";
import type { Outcome, Report } from "../../rules/report.ts";
import { readSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";

export interface WantedFinding {
  readonly element: string | null;
  readonly body?: string;
  /** The finding's section, or the part of the article it begins with. */
  readonly section: string;
  readonly outcome: Outcome;
  /** Inches. */
  readonly measured?: Readonly<Record<string, number>>;
  readonly extent?: number;
  readonly source: string;
}

export interface WantedFigure {
  readonly figure: "band" | "ring" | "shortest ring" | "ties";
  readonly pool?: string;
  readonly surface?: string;
  readonly bonding?: string;
  readonly value: number;
  readonly source: string;
}

export interface DemoSite {
  readonly name: string;
  readonly site: Site;
  readonly wanted: {
    readonly site: string;
    readonly says: string;
    readonly exit: 0 | 1 | 3;
    readonly missing?: number;
    readonly findings: readonly WantedFinding[];
    readonly figures: readonly WantedFigure[];
  };
}

const folder = new URL("../../demo-sites/", import.meta.url);

function load(name: string): DemoSite {
  const read = readSite(readFileSync(new URL(`${name}.site.json`, folder), "utf8"));
  if (!read.ok) throw new Error(`${name}: ${read.refusal.message}`);
  const wanted = JSON.parse(readFileSync(new URL(`${name}.findings.json`, folder), "utf8")) as DemoSite["wanted"];
  return { name, site: read.site, wanted };
}

export const DEMO_FILES: readonly string[] = readdirSync(folder).sort();

export const DEMO_SITES: readonly DemoSite[] = DEMO_FILES.filter((file) => file.endsWith(".site.json")).map((file) =>
  load(file.slice(0, -".site.json".length)),
);

/** What `check` would exit with. Source: the report's contract. */
export function exitCodeOf({ missing, counts }: Pick<Report, "missing" | "counts">): 0 | 1 | 3 {
  if (missing + counts.missing + counts.bond + counts.conflict > 0) return 1;
  return counts.review > 0 ? 3 : 0;
}
