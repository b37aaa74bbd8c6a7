/** A report boiled down to what must not depend on how the yard is drawn: outcomes, measurements, lengths and areas. */
import type { Finding, Report } from "../../rules/report.ts";

/** What a finding says, without places and words. */
export interface Situation {
  readonly outcome: string;
  readonly question: string | null;
  /** Inches, square inches and other numbers by name. */
  readonly numbers: Readonly<Record<string, number>>;
  /** Measurements that are words, flags or "there is none". */
  readonly facts: Readonly<Record<string, string | boolean | null>>;
}

export const keyOf = ({ rule, element, body }: Finding): string => `${rule} | ${element ?? ""} | ${body ?? ""}`;

export function situationsOf(report: Report): Map<string, Situation> {
  return new Map(report.findings.map((finding) => [keyOf(finding), situationOf(finding)]));
}

function situationOf(finding: Finding): Situation {
  const numbers: Record<string, number> = {};
  const facts: Record<string, string | boolean | null> = {};
  for (const [group, values] of Object.entries({ measured: finding.measured, required: finding.required })) {
    for (const [name, value] of Object.entries(values)) {
      if (typeof value === "number") numbers[`${group} ${name}`] = value;
      else facts[`${group} ${name}`] = value;
    }
  }
  if (finding.margin !== null) numbers.margin = finding.margin;
  if (finding.extent !== undefined) numbers.extent = finding.extent;
  let witness = 0;
  finding.witness.forEach(([x, y], i) => {
    const before = finding.witness[i - 1];
    if (before) witness += Math.hypot(x - before[0], y - before[1]);
  });
  numbers.witness = witness;
  return { outcome: finding.outcome, question: finding.question?.id ?? null, numbers, facts };
}

/** Differences between two reports, each as one line; numbers may differ by `slack` in. and lengths by `share`. */
export function differences(from: Report, to: Report, slack: number, share: number): string[] {
  const lines: string[] = [];
  const before = situationsOf(from);
  const after = situationsOf(to);
  for (const key of after.keys()) if (!before.has(key)) lines.push(`${key}: new`);
  for (const [key, a] of before) {
    const b = after.get(key);
    if (b === undefined) lines.push(`${key}: gone`);
    else lines.push(...unlike(a, b, slack).map((line) => `${key}: ${line}`));
  }
  if (from.missing !== to.missing) lines.push(`missing: ${from.missing} -> ${to.missing}`);
  const figures = figuresOf(to);
  for (const [name, value] of Object.entries(figuresOf(from))) {
    const other = figures[name] ?? Number.NaN;
    if (!(Math.abs(value - other) <= slack + CLIPPED + share * Math.abs(value)))
      lines.push(`${name}: ${value} -> ${other}`);
  }
  return lines;
}

function unlike(a: Situation, b: Situation, slack: number): string[] {
  const lines: string[] = [];
  if (a.outcome !== b.outcome) lines.push(`${a.outcome} -> ${b.outcome}`);
  if (a.question !== b.question) lines.push(`asks ${a.question} -> ${b.question}`);
  if (JSON.stringify(a.facts) !== JSON.stringify(b.facts))
    lines.push(`${JSON.stringify(a.facts)} -> ${JSON.stringify(b.facts)}`);
  for (const name of new Set([...Object.keys(a.numbers), ...Object.keys(b.numbers)])) {
    const [x, y] = [a.numbers[name] ?? Number.NaN, b.numbers[name] ?? Number.NaN];
    const allowed = /area/i.test(name) ? slack + AREA_SHARE * Math.abs(x) : slack;
    if (!(Math.abs(x - y) <= allowed)) lines.push(`${name} ${x} -> ${y}`);
  }
  return lines;
}

/** Lengths of pieces that were cut on the clipping's grid, inches. */
const CLIPPED = 1 / 512;

/** Areas come from clipping on a grid of 1/4096 in. and chords within 1/64 in. of the arcs. */
const AREA_SHARE = 0.0005;

/** Lengths and areas of the plan that hang neither on how a grid of lines lies nor on where proposed ties begin. */
function figuresOf(report: Report): Record<string, number> {
  const figures: Record<string, number> = {
    ring: report.ring.length,
    "ring loops": report.ring.loops.length,
    "shortest ring": report.ring.shortestLegal,
    "ring copper": report.takeoff.conductor.ring,
    drops: report.takeoff.conductor.drops,
    tails: report.takeoff.conductor.tails,
    ties: report.ties.length,
    "ties present": report.ties.filter((tie) => tie.present).length,
    branches: report.branches.length,
  };
  for (const { pool, area, bySurface } of report.band) {
    figures[`band ${pool}`] = area;
    for (const piece of bySurface) figures[`band ${pool} ${piece.surface} ${piece.bonding}`] = piece.area;
  }
  return figures;
}
