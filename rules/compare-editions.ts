/**
 * The same site under two editions of the code: what changes, and which numbers of the editions make it change.
 *
 * Stages. 1. Both reports, the site's local amendments laid over either edition. 2. Findings paired by rule, element
 * and body; where the deciding body differs, by rule and element. 3. The pairs that differ, with whatever is
 * asked for in one edition only. 4. The perimeter's methods by surface, the totals, and the numbers that differ.
 */
import { RULES } from "./catalogue/index.ts";
import type { Rule } from "./catalogue/rule.ts";
import type { EditionId, Parameter, ParameterValue } from "./editions/edition.ts";
import { BASIS_WORDS } from "./editions/edition.ts";
import { editionInForce } from "./editions/in-force.ts";
import type { ParameterId } from "./editions/parameter-types.ts";
import { findingsByPart } from "./findings-by-part.ts";
import { recompute } from "./recompute.ts";
import type { BasisWord, Finding, Outcome, Report, SurfaceBonding } from "./report.ts";
import type { Site } from "./site/site.ts";

export const COMPARISON_FORMAT = "copperband-comparison";
export const COMPARISON_VERSION = 1;

/** What one edition says of a thing, as far as two editions are held against each other. */
export interface Side {
  readonly outcome: Outcome;
  readonly section: string;
  readonly alsoSections: readonly string[];
  readonly body: string | null;
  readonly basis: BasisWord;
  readonly why: string;
  readonly remedy: string;
  readonly required: Finding["required"];
  readonly question?: Finding["question"];
  readonly answered?: Finding["answered"];
  readonly lapsed?: boolean;
}

/** In what two findings differ; `only` = one edition does not ask at all, `basis` = how sure the limit is. */
export type Difference = "only" | "outcome" | "section" | "limit" | "question" | "answer" | "reason" | "basis";

export interface FindingChange {
  /** Of the finding before, else after. */
  readonly id: string;
  readonly rule: string;
  readonly title: string;
  readonly element: string | null;
  readonly body: string | null;
  readonly differs: readonly Difference[];
  /** Null: nothing is asked of it in that edition. */
  readonly before: Side | null;
  readonly after: Side | null;
  /** The numbers that this rule reads and that differ between the two editions. */
  readonly because: readonly ParameterId[];
}

/** Part of a body's band on one surface (null: the ground that nothing covers), by what bonds it. */
export interface BandChange {
  readonly pool: string;
  readonly surface: string | null;
  /** Square inches by method; a surface can hold several where portions differ. */
  readonly before: readonly { readonly bonding: SurfaceBonding; readonly area: number }[];
  readonly after: readonly { readonly bonding: SurfaceBonding; readonly area: number }[];
}

export interface ParameterSide {
  readonly value: ParameterValue;
  readonly unit: string;
  readonly section: string;
  readonly basis: BasisWord;
  readonly says: string;
}

export interface ParameterChange {
  readonly id: ParameterId;
  /** Titles of the rules that read it. */
  readonly rules: readonly string[];
  readonly before: ParameterSide;
  readonly after: ParameterSide;
}

/** A figure of the whole site under either edition: inches unless its name says otherwise. */
export interface TotalChange {
  readonly name: TotalName;
  readonly before: number;
  readonly after: number;
}

export type TotalName =
  | "ringLength"
  | "bandGridLength"
  | "shellGridLength"
  | "tiesNeeded"
  | "copper"
  | "weightPounds"
  | "missing"
  | `count ${Outcome}`;

export interface EditionComparison {
  readonly format: typeof COMPARISON_FORMAT;
  readonly version: typeof COMPARISON_VERSION;
  readonly site: string;
  readonly before: EditionId;
  readonly after: EditionId;
  /** In the code's order. */
  readonly changes: readonly FindingChange[];
  /** How many findings say the same under both. */
  readonly same: number;
  readonly bands: readonly BandChange[];
  /** Every total, those that stay as well. */
  readonly totals: readonly TotalChange[];
  /** Numbers that differ and that a rule with a change reads. */
  readonly parameters: readonly ParameterChange[];
  readonly reports: { readonly before: Report; readonly after: Report };
}

/** Whether an edition asks for something else, or for another reason; not only that its limit is more or less sure. */
export function saysOtherwise(change: FindingChange): boolean {
  return change.differs.some((difference) => difference !== "basis");
}

/** The site under edition `before` and under edition `after`. Pure. The same edition twice changes nothing. */
export function compareEditions(site: Site, before: EditionId, after: EditionId): EditionComparison {
  const reports = { before: recompute(site, { as: before }), after: recompute(site, { as: after }) };
  const parameters = differingParameters(site, before, after);
  const pairs = pairsOf(reports.before, reports.after);
  const changes = pairs.flatMap(([was, is]) => changeOf(was, is, parameters) ?? []);
  const concerned = RULES.filter((rule) => changes.some((change) => change.rule === rule.id));
  return {
    format: COMPARISON_FORMAT,
    version: COMPARISON_VERSION,
    site: site.name ?? "",
    before,
    after,
    changes,
    same: pairs.length - changes.length,
    bands: bandChanges(reports.before, reports.after),
    totals: totalsOf(reports.before, reports.after),
    parameters: [...parameters].flatMap(([id, sides]) => {
      const rules = concerned.filter((rule) => rule.parameters.includes(id)).map((rule) => rule.title);
      return rules.length === 0 ? [] : [{ id, rules, ...sides }];
    }),
    reports,
  };
}

type Sides<T> = { readonly before: T; readonly after: T };

/** Every number of the two editions in force whose value differs. */
function differingParameters(
  site: Site,
  before: EditionId,
  after: EditionId,
): ReadonlyMap<ParameterId, Sides<ParameterSide>> {
  const [a, b] = [editionInForce(site, before).parameters, editionInForce(site, after).parameters];
  const differing = new Map<ParameterId, Sides<ParameterSide>>();
  for (const id of Object.keys(a) as ParameterId[]) {
    if (!isSame(a[id].value, b[id].value))
      differing.set(id, { before: parameterSide(a[id]), after: parameterSide(b[id]) });
  }
  return differing;
}

function parameterSide({ value, unit, section, basis, says }: Parameter): ParameterSide {
  return { value, unit, section, basis: BASIS_WORDS[basis], says };
}

/** Findings of both reports, paired, in the code's order; what only the second has follows what the first has of its rule. */
function pairsOf(before: Report, after: Report): (readonly [Finding | null, Finding | null])[] {
  const waiting = new Map(after.findings.map((finding) => [finding.id, finding]));
  const partner = new Map<Finding, Finding>();
  const take = (was: Finding, is: Finding | undefined) => {
    if (!is) return;
    partner.set(was, is);
    waiting.delete(is.id);
  };
  for (const was of before.findings) take(was, waiting.get(was.id));
  for (const was of before.findings) {
    if (partner.has(was) || was.element === null) continue;
    const others = [...waiting.values()].filter((is) => is.rule === was.rule && is.element === was.element);
    if (others.length === 1) take(was, others[0]);
  }
  const pairs: (readonly [Finding | null, Finding | null])[] = [];
  const inOrder = (report: Report) =>
    findingsByPart(report).flatMap((group) => group.findings.map((one) => one.finding));
  for (const was of inOrder(before)) pairs.push([was, partner.get(was) ?? null]);
  for (const is of inOrder(after)) {
    if (!waiting.has(is.id)) continue;
    const last = pairs.findLastIndex(([was, now]) => partIndex((was ?? now) as Finding) <= partIndex(is));
    pairs.splice(last + 1, 0, [null, is]);
  }
  return pairs;
}

const PART_ORDER: ReadonlyMap<string, number> = new Map(
  findingsByPart({ findings: RULES.map((rule) => ({ rule: rule.id, section: "" }) as Finding) }).flatMap((group, i) =>
    group.findings.map(({ finding }) => [finding.rule, i] as const),
  ),
);

function partIndex(finding: Finding): number {
  return PART_ORDER.get(finding.rule) ?? 0;
}

function changeOf(
  was: Finding | null,
  is: Finding | null,
  parameters: ReadonlyMap<ParameterId, unknown>,
): FindingChange | null {
  const differs = differencesOf(was, is);
  const finding = was ?? is;
  if (differs.length === 0 || finding === null) return null;
  const rule = RULES.find(({ id }) => id === finding.rule) as Rule;
  return {
    id: finding.id,
    rule: rule.id,
    title: rule.title,
    element: finding.element,
    body: finding.body,
    differs,
    before: was && sideOf(was),
    after: is && sideOf(is),
    because: rule.parameters.filter((id) => parameters.has(id)),
  };
}

function differencesOf(was: Finding | null, is: Finding | null): Difference[] {
  if (was === null || is === null) return ["only"];
  const differs: Difference[] = [];
  if (was.outcome !== is.outcome) differs.push("outcome");
  if (!isSame([was.section, was.alsoSections], [is.section, is.alsoSections])) differs.push("section");
  if (!isSame(was.required, is.required)) differs.push("limit");
  if (!isSame(was.question, is.question)) differs.push("question");
  if (!isSame([was.answered, was.lapsed], [is.answered, is.lapsed])) differs.push("answer");
  if (was.why !== is.why || was.remedy !== is.remedy) differs.push("reason");
  if (was.basis !== is.basis) differs.push("basis");
  return differs;
}

function sideOf(finding: Finding): Side {
  const { outcome, section, alsoSections, body, basis, why, remedy, required, question, answered, lapsed } = finding;
  return {
    outcome,
    section,
    alsoSections,
    body,
    basis,
    why,
    remedy,
    required,
    ...(question ? { question } : {}),
    ...(answered ? { answered } : {}),
    ...(lapsed ? { lapsed } : {}),
  };
}

function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** The surfaces of the bands whose methods differ. */
function bandChanges(before: Report, after: Report): BandChange[] {
  const keys = new Map<string, Pick<BandChange, "pool" | "surface">>();
  const methods = (report: Report) => {
    const found = new Map<string, { bonding: SurfaceBonding; area: number }[]>();
    for (const { pool, bySurface } of report.band) {
      for (const { surface, bonding, area } of bySurface) {
        const key = JSON.stringify([pool, surface]);
        keys.set(key, { pool, surface });
        found.set(key, [...(found.get(key) ?? []), { bonding, area }]);
      }
    }
    return found;
  };
  const [a, b] = [methods(before), methods(after)];
  const named = (list: readonly { readonly bonding: SurfaceBonding }[]) => list.map(({ bonding }) => bonding).sort();
  return [...keys].flatMap(([key, where]) => {
    const [was, is] = [a.get(key) ?? [], b.get(key) ?? []];
    return isSame(named(was), named(is)) ? [] : [{ ...where, before: was, after: is }];
  });
}

function totalsOf(before: Report, after: Report): TotalChange[] {
  const figures = (report: Report): [TotalName, number][] => [
    ["ringLength", report.ring.length],
    ["bandGridLength", report.grid.band.length],
    ["shellGridLength", report.grid.shell.length],
    ["tiesNeeded", report.ties.filter((tie) => !tie.present).length],
    ["copper", report.takeoff.conductor.total],
    ["weightPounds", report.takeoff.weightPounds],
    ["missing", report.missing],
    ...Object.entries(report.counts).map(([outcome, count]): [TotalName, number] => [
      `count ${outcome as Outcome}`,
      count,
    ]),
  ];
  const then = new Map(figures(after));
  return figures(before).map(([name, value]) => ({ name, before: value, after: then.get(name) ?? value }));
}
