/** Two editions side by side as text: what `check --compare` prints. */
import { CAUTIONS } from "../../rules/cautions.ts";
import {
  type EditionComparison,
  type FindingChange,
  type ParameterSide,
  saysOtherwise,
} from "../../rules/compare-editions.ts";
import type { EditionId } from "../../rules/editions/edition.ts";
import { EDITIONS } from "../../rules/editions/in-force.ts";
import { OUTCOMES_WORST_FIRST } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import { amendmentWords } from "../../rules/words/amendments.ts";
import { bandText, changeCount, sideTexts, TOTAL_WORDS, totalText } from "../../rules/words/comparison.ts";
import { capitalized, elementName, givenName } from "../../rules/words/element-names.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { parameterText } from "../../rules/words/parameters.ts";
import type { TextOptions } from "./report-text.ts";
import { heading, type Pen, penFor, printable, wrapped } from "./text-lines.ts";

/** The cautions that hold for two editions at once. */
const COMPARED = CAUTIONS.filter((caution) => !caution.includes("the one edition"));

interface Page {
  readonly width: number;
  readonly pen: Pen;
  readonly units: Units;
  readonly nameOf: (id: string) => string;
  readonly titles: readonly [string, string];
}

/** The whole comparison as text, ending with a line break. */
export function comparisonText(comparison: EditionComparison, site: Site, options: TextOptions): string {
  const elements = new Map(site.elements.map((element) => [element.id, element]));
  const page: Page = {
    width: options.width,
    pen: penFor(options.isTerminal === true),
    units: site.display?.units ?? "ft-in",
    nameOf: (id) => {
      const element = elements.get(id);
      if (!element) return printable(id);
      return printable(givenName(element) === null ? elementName(element) : `${elementName(element)} (${id})`);
    },
    titles: [titleOf(comparison.before), titleOf(comparison.after)],
  };
  const blocks = [
    headLines(comparison, page),
    totalLines(comparison, page),
    changeLines(comparison, page),
    bandLines(comparison, page),
    parameterLines(comparison, page),
    surenessLines(comparison, page),
    [...heading("Caution", page), ...COMPARED.flatMap((caution) => wrapped(caution, page.width))],
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join("\n"))
    .join("\n\n")}\n`;
}

function titleOf(id: EditionId): string {
  return EDITIONS[id].title;
}

function headLines(comparison: EditionComparison, page: Page): string[] {
  const { site, reports } = comparison;
  const title = printable(site) || "Site without a name";
  const [before, after] = page.titles;
  const amendments = reports.before.amendments.map((amendment) => printable(amendmentWords(amendment, page.units)));
  return [
    page.pen(title, "strong"),
    "=".repeat(Math.min(page.width, title.length)),
    ...wrapped(`The same site under ${before} and under ${after}. ${changeCount(comparison)}`, page.width),
    ...(amendments.length === 0
      ? []
      : wrapped(`Local amendments in force under both: ${amendments.join("; ")}.`, page.width)),
    ...wrapped(CAUTIONS[0] ?? "", page.width),
  ];
}

/** Two texts beside each other, each wrapped to its half. */
export function sideBySide(left: string, right: string, width: number, indent = 0): string[] {
  const gap = 3;
  const half = Math.floor((width - indent - gap) / 2);
  const [a, b] = [wrapped(left, half), wrapped(right, half)];
  return Array.from({ length: Math.max(a.length, b.length) }, (_, i) =>
    `${" ".repeat(indent)}${(a[i] ?? "").padEnd(half)}${" ".repeat(gap)}${b[i] ?? ""}`.trimEnd(),
  );
}

/** Name, then the two values in columns of their own. */
function row(name: string, before: string, after: string, width: number): string[] {
  const column = Math.floor(width / 4);
  const room = width - 2 * column - 2;
  const lines = wrapped(name, room);
  const fits = before.length < column && after.length <= column;
  if (!fits) return [...lines, ...sideBySide(before, after, width, 2)];
  const last = lines.pop() ?? "";
  return [...lines, `${last.padEnd(room)}  ${before.padEnd(column)}${after}`.trimEnd()];
}

function totalLines({ totals, reports }: EditionComparison, page: Page): string[] {
  const { width, titles, units } = page;
  const counts = OUTCOMES_WORST_FIRST.filter(
    (outcome) => reports.before.counts[outcome] + reports.after.counts[outcome] > 0,
  ).flatMap((outcome) =>
    row(
      capitalized(OUTCOME_WORDS[outcome]),
      String(reports.before.counts[outcome]),
      String(reports.after.counts[outcome]),
      width,
    ),
  );
  const figures = totals.flatMap(({ name, before, after }) => {
    const words = TOTAL_WORDS[name];
    if (words === undefined) return [];
    return row(words.text, totalText(name, before, units), totalText(name, after, units), width);
  });
  return [...heading("In all", page), ...row("", titles[0], titles[1], width), ...counts, ...figures];
}

function changeLines({ changes }: EditionComparison, page: Page): string[] {
  const otherwise = changes.filter(saysOtherwise);
  if (otherwise.length === 0) return [];
  return [...heading("What changes", page), ...otherwise.flatMap((change) => ["", ...oneChange(change, page)])];
}

function oneChange(change: FindingChange, page: Page): string[] {
  const { width, titles, pen } = page;
  const about = change.element ?? change.body;
  const by = change.body !== null && change.body !== about ? `, by ${page.nameOf(change.body)}` : "";
  const name = about === null ? "The site" : `${capitalized(page.nameOf(about))}${by}`;
  const texts = [change.before, change.after].map((side, i) => {
    const said = sideTexts(side);
    return [`${titles[i] ?? ""}: ${said.outcome}`, ...said.texts.map(printable)];
  });
  const [left = [], right = []] = texts;
  const lines = wrapped(`${name}. ${change.title}.`, width).map((line) => pen(line, "strong"));
  for (let i = 0; i < Math.max(left.length, right.length); i++) {
    lines.push(...sideBySide(left[i] ?? "", right[i] ?? "", width, 2));
  }
  return lines;
}

function bandLines({ bands }: EditionComparison, page: Page): string[] {
  if (bands.length === 0) return [];
  const { width, titles, units } = page;
  return [
    ...heading("Perimeter, by surface", page),
    ...row("", titles[0], titles[1], width),
    ...bands.flatMap(({ pool, surface, before, after }) =>
      row(
        `${capitalized(surface === null ? "the ground" : page.nameOf(surface))}, by ${page.nameOf(pool)}`,
        bandText(before, units),
        bandText(after, units),
        width,
      ),
    ),
  ];
}

function parameterLines({ parameters }: EditionComparison, page: Page): string[] {
  if (parameters.length === 0) return [];
  const { width, titles, units } = page;
  const side = ({ value, unit, section, basis, says }: ParameterSide, title: string) =>
    `${title}: ${parameterText(value, unit, units)}. ${says} ${section}, ${basis}.`;
  return [
    ...heading("Numbers of the editions that differ", page),
    ...parameters.flatMap(({ id, rules, before, after }) => [
      "",
      ...wrapped(`${id}, read by: ${rules.join(", ")}`, width),
      ...sideBySide(side(before, titles[0]), side(after, titles[1]), width, 2),
    ]),
  ];
}

function surenessLines({ changes }: EditionComparison, page: Page): string[] {
  const less = changes.filter((change) => !saysOtherwise(change));
  if (less.length === 0) return [];
  return [
    ...heading("The same, on a limit that is more or less sure", page),
    ...less.flatMap(({ element, body, title, before, after }) => {
      const about = element ?? body;
      const name = about === null ? "The site" : capitalized(page.nameOf(about));
      return wrapped(`${name}, ${title.toLowerCase()}: ${before?.basis ?? ""}, then ${after?.basis ?? ""}`, page.width);
    }),
  ];
}
