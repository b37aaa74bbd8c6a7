/**
 * The work in stages, one pure function for page, worker and command line:
 * measure -> need (every rule judges) -> plan (ring, grid, ties) -> compare with what is recorded -> routes -> report.
 * Needs never wait for routes: findings and the missing count are the same whether the tree of branches is ready or not.
 */
import { RULES } from "./catalogue/index.ts";
import { CAUTIONS } from "./cautions.ts";
import type { EditionId } from "./editions/edition.ts";
import { findingsOf } from "./findings.ts";
import { hasNeed, type Judged, oneForEachElement, type Verdicts } from "./judged.ts";
import { KeptWork } from "./measures/kept-work.ts";
import { Yard } from "./measures/yard.ts";
import { branchesFor } from "./plan/branches.ts";
import { methodChoices } from "./plan/method-choices.ts";
import { planPerimeter } from "./plan/perimeter.ts";
import { compare } from "./recorded/compare.ts";
import { readRecorded } from "./recorded/graph.ts";
import { OUTCOMES_WORST_FIRST, type Outcome, REPORT_FORMAT, REPORT_VERSION, type Report } from "./report.ts";
import type { Site } from "./site/site.ts";
import { takeoff } from "./takeoff/takeoff.ts";

export interface RecomputeOptions {
  /** Judge under this edition whatever the site names. */
  readonly as?: EditionId;
  /** Leave the routes (tree of branches) for later: the report says `ring.pending`. */
  readonly withoutRoutes?: boolean;
}

/** The report of a site. Pure: the same site gives the same report. */
export function recompute(site: Site, options: RecomputeOptions = {}): Report {
  return reportOf(new Yard(site, options.as), options);
}

/**
 * Reports of one site after the other. What an edit leaves as it was is not worked out again, and every report is the one
 * that `recompute` gives. Elements count as unchanged when they are the same objects as before: a site must never be
 * changed in place.
 */
export class Recomputer {
  readonly #work = new KeptWork();

  recompute(site: Site, options: RecomputeOptions = {}): Report {
    return reportOf(new Yard(site, options.as, this.#work), options);
  }
}

function reportOf(yard: Yard, options: RecomputeOptions): Report {
  const verdicts = judgeAll(yard);
  const plan = planPerimeter(yard, verdicts.needing);
  const recorded = readRecorded(yard);
  const compared = compare(yard, verdicts, recorded, plan);
  const routes = options.withoutRoutes
    ? { branches: [], joints: 0, furtherClamps: 0 }
    : branchesFor(yard, compared, plan);
  const findings = findingsOf(yard, oneForEachElement(compared.judged));
  return {
    format: REPORT_FORMAT,
    version: REPORT_VERSION,
    site: yard.site.name ?? "",
    edition: yard.edition.id,
    amendments: yard.edition.amendments.map(({ parameter, value, reason }) => ({
      parameter,
      value,
      reason: reason ?? "",
    })),
    cautions: CAUTIONS,
    counts: countsOf(findings.map((finding) => finding.outcome)),
    missing: compared.missing,
    band: plan.bands,
    reach: yard.bodies.map((body) => ({
      pool: body.id,
      distance: yard.edition.value("fixedMetal.distance"),
      region: yard.reachRegion(body),
    })),
    findings,
    ring: { ...plan.ring, pending: options.withoutRoutes === true },
    grid: plan.grid,
    methods: methodChoices(yard),
    ties: plan.ties,
    branches: routes.branches,
    takeoff: takeoff({
      ring: plan.ring,
      ringStyle: yard.settings.ringStyle,
      gridLength: plan.grid.band.length + plan.grid.shell.length,
      gridLoose: plan.grid.band.loose ?? 0,
      gridRolls: plan.grid.rolls ?? null,
      gridCrossings: plan.grid.band.crossings + plan.grid.shell.crossings,
      ties: plan.ties,
      branches: routes.branches,
      furtherClamps: routes.furtherClamps,
      branchJoints: routes.joints,
      tails: compared.tails,
      spareFraction: yard.settings.spareFraction,
      awg: yard.edition.value("conductor.size"),
    }),
  };
}

/** Every rule's verdicts that the edition in force holds, in the catalogue's order; and of these the ones with a need. */
export function judgeAll(yard: Yard): Verdicts {
  const judged: Judged[] = [];
  const needing: Judged[] = [];
  for (const rule of RULES) {
    if (rule.sections[yard.edition.id] === undefined) continue;
    const ofRule = yard.kept(`judged ${rule.id}`, () => {
      const all = rule.judge(yard).map((verdict): Judged => ({ rule, verdict }));
      return { all, needing: all.filter(hasNeed) };
    });
    for (const one of ofRule.all) judged.push(one);
    for (const one of ofRule.needing) needing.push(one);
  }
  return { judged, needing };
}

function countsOf(outcomes: readonly Outcome[]): Record<Outcome, number> {
  const counts = Object.fromEntries(OUTCOMES_WORST_FIRST.map((outcome) => [outcome, 0])) as Record<Outcome, number>;
  for (const outcome of outcomes) counts[outcome] += 1;
  return counts;
}
