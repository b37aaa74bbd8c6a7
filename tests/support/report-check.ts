/** What every report must be, whatever the site: whole, with finite numbers, and nothing that is asked left out in silence. */
import { regionContains } from "../../geometry/clipping.ts";
import { pathLength, pointAlong } from "../../geometry/outline.ts";
import { shortestPathToArea } from "../../geometry/paths-around-barriers.ts";
import type { Point } from "../../geometry/types.ts";
import { Yard } from "../../rules/measures/yard.ts";
import { OUTCOMES_WORST_FIRST, REPORT_FORMAT, type Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";

/** Everything wrong with a report of a site; empty: nothing. */
export function reportProblems(site: Site, report: Report): string[] {
  return [...notFinite(report, "report"), ...incomplete(report), ...emptyBands(site, report), ...noRing(site, report)];
}

/** Numbers that are not finite, values that JSON would drop. */
function notFinite(value: unknown, where: string): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${where} is ${value}`];
  if (value === undefined || typeof value === "function") return [`${where} is ${typeof value}`];
  if (Array.isArray(value)) return value.flatMap((one, i) => notFinite(one, `${where}[${i}]`));
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, one]) => (one === undefined ? [] : notFinite(one, `${where}.${name}`)));
}

function incomplete(report: Report): string[] {
  const problems: string[] = [];
  const say = (wrong: boolean, what: string) => {
    if (wrong) problems.push(what);
  };
  say(report.format !== REPORT_FORMAT, "format");
  const counted = OUTCOMES_WORST_FIRST.reduce((sum, outcome) => sum + report.counts[outcome], 0);
  say(counted !== report.findings.length, `${counted} counted, ${report.findings.length} findings`);
  say(!(report.missing >= 0), `missing ${report.missing}`);
  for (const finding of report.findings) {
    say(finding.why === "" || finding.section === "", `${finding.id} says nothing`);
    say(
      finding.outcome === "review" && finding.question === undefined && !finding.answered,
      `${finding.id} asks nothing`,
    );
    say(/NaN|undefined|Infinity/.test(finding.why + finding.remedy), `${finding.id}: ${finding.why}`);
  }
  for (const { pool, area } of report.band) say(area < 0, `band of ${pool} ${area}`);
  for (const { run, to } of report.branches) say(!(run >= 0), `branch to ${to} ${run}`);
  return problems;
}

/** Places looked at round each pool. */
const PLACES = 24;
const BESIDE = 6;

/** A band may be empty only where no place beside the water can be reached. */
function emptyBands(site: Site, report: Report): string[] {
  const yard = new Yard(site);
  return yard.bodies.flatMap((body) => {
    const band = report.band.find(({ pool }) => pool === body.id);
    if (!band) return [`no band for ${body.id}`];
    if (band.area > 0) return [];
    const barriers = yard.barrierList("band", body);
    const width = yard.edition.value("perimeter.width");
    const length = pathLength(body.water.outer);
    for (let i = 0; i < PLACES; i++) {
      const at = pointAlong(body.water.outer, ((i + 0.5) / PLACES) * length);
      const ahead = pointAlong(body.water.outer, ((i + 0.5) / PLACES) * length + 1e-3);
      const step = Math.hypot(ahead[0] - at[0], ahead[1] - at[1]);
      if (step === 0) continue;
      const out: Point = [at[0] + ((ahead[1] - at[1]) / step) * BESIDE, at[1] - ((ahead[0] - at[0]) / step) * BESIDE];
      if (yard.notGround().some((region) => regionContains(region, out))) continue;
      const path = shortestPathToArea(out, body.water, barriers);
      if (path && path.length > 1 && path.length < width - 1)
        return [`the band of ${body.id} is empty, but [${out}] is in it`];
    }
    return [];
  });
}

/** Where ring copper is planned all round and nothing stands in the way, there is a ring. */
function noRing(site: Site, report: Report): string[] {
  if (site.elements.some(({ kind }) => kind === "wall" || kind === "building" || kind === "keep-out")) return [];
  return report.band.flatMap(({ pool, area, bySurface }) => {
    const ringOnly = area > 0 && bySurface.length > 0 && bySurface.every(({ bonding }) => bonding === "ring");
    return ringOnly && !(report.ring.length > 0 && report.ring.shortestLegal > 0) ? [`no ring round ${pool}`] : [];
  });
}
