/** A report as text, in the code's order: what `check` prints when it is not asked for JSON. */
import { RULES } from "../../rules/catalogue/index.ts";
import { EDITIONS, isEditionId } from "../../rules/editions/in-force.ts";
import { findingsByPart, type NumberedFinding } from "../../rules/findings-by-part.ts";
import type { Finding, Outcome, Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import { amendmentWords } from "../../rules/words/amendments.ts";
import { answerText, LAPSED_TEXT, questionText } from "../../rules/words/answers.ts";
import { capitalized, elementName, givenName } from "../../rules/words/element-names.ts";
import { measuredTexts } from "../../rules/words/measured.ts";
import { countsText, OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { copperLines } from "./copper-text.ts";
import { idleAnswerLines } from "./idle-answers.ts";
import { type Emphasis, heading, penFor, printable, spread, wrapped } from "./text-lines.ts";
import type { Writing } from "./writing.ts";

export interface TextOptions {
  /** Characters to a line. */
  readonly width: number;
  /** Sets words off with terminal codes. */
  readonly isTerminal?: boolean;
}

const EMPHASIS: Readonly<Record<Outcome, Emphasis>> = {
  conflict: "red",
  missing: "red",
  bond: "red",
  review: "yellow",
  meets: "green",
  exempt: "faint",
};

/** Where the text of a finding starts: number, two spaces. */
const INDENT = 6;

/** The whole report as text, ending with a line break. */
export function reportText(report: Report, site: Site, options: TextOptions): string {
  const names = new Map(
    site.elements.map((element) => {
      const name = elementName(element);
      return [element.id, givenName(element) === null ? name : `${name} (${element.id})`];
    }),
  );
  const writing: Writing = {
    report,
    width: options.width,
    pen: penFor(options.isTerminal === true),
    units: site.display?.units ?? "ft-in",
    nameOf: (id) => printable(names.get(id) ?? id),
  };
  const blocks = [
    headLines(writing),
    summaryLines(writing),
    ...partBlocks(writing),
    missingLines(writing),
    questionLines(writing),
    idleAnswerLines(site, writing),
    ...copperLines(writing),
    cautionLines(writing),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join("\n"))
    .join("\n\n")}\n`;
}

function headLines({ report, width, units, pen }: Writing): string[] {
  const title = printable(report.site) || "Site without a name";
  const edition = isEditionId(report.edition) ? EDITIONS[report.edition].title : report.edition;
  const amendments = report.amendments.map((amendment) => printable(amendmentWords(amendment, units)));
  const basis = amendments.length === 0 ? "no local amendments" : `local amendments: ${amendments.join("; ")}`;
  return [
    pen(title, "strong"),
    "=".repeat(Math.min(width, title.length)),
    ...wrapped(`Judged by ${edition}, ${basis}.`, width),
    ...wrapped(report.cautions[0] ?? "", width),
  ];
}

function summaryLines(writing: Writing): string[] {
  const { report, width } = writing;
  return [...wrapped(countsText(report, "  ·  "), width), ...wrapped(missingSentence(report), width)];
}

/** The missing count in words; a count never stands alone while questions are open. */
export function missingSentence(report: Pick<Report, "missing" | "counts">): string {
  const { missing, counts } = report;
  const questions = counts.review;
  const open =
    questions === 0
      ? "no question is open"
      : `${questions} ${questions === 1 ? "question is" : "questions are"} open, and an answer may add to it`;
  if (missing === 0 && questions === 0 && counts.conflict === 0) {
    return "Missing: 0. Nothing is missing, in conflict or in question by what is drawn and recorded here.";
  }
  return `Missing: ${missing} (ties, parts, perimeter loops and water contacts); ${open}.`;
}

function partBlocks(writing: Writing): string[][] {
  return findingsByPart(writing.report).map(({ part, findings }) => [
    ...heading(`${part.title}  ${part.section}`, writing),
    ...findings.flatMap((one, i) => (i === 0 ? findingLines(one, writing) : ["", ...findingLines(one, writing)])),
    "",
    ...protectionLines(findings, writing),
  ]);
}

/** Once for each rule that found something: what it protects people from. */
function protectionLines(findings: readonly NumberedFinding[], { width, pen }: Writing): string[] {
  const ids = new Set(findings.map(({ finding }) => finding.rule));
  return RULES.filter(({ id }) => ids.has(id)).flatMap(({ title, protects }) =>
    wrapped(`${title}, what it protects people from: ${protects}`, width, "   *  ").map((line) => pen(line, "faint")),
  );
}

/** What a finding is about: its element, else its body of water, else the site. */
export function subjectOf(finding: Finding, nameOf: (id: string) => string): string {
  const bodies = [finding.body, ...(finding.alsoBodies ?? [])].filter((id): id is string => id !== null);
  const about = finding.element === null ? null : capitalized(nameOf(finding.element));
  if (about === null) return bodies.length === 0 ? "The site" : capitalized(bodies.map(nameOf).join(" and "));
  const others = bodies.filter((id) => id !== finding.element);
  return others.length === 0 ? about : `${about}, by ${others.map(nameOf).join(" and ")}`;
}

function findingLines({ number, finding }: NumberedFinding, writing: Writing): string[] {
  const { width, pen, units, nameOf } = writing;
  const word = OUTCOME_WORDS[finding.outcome];
  const lead = `${String(number).padStart(INDENT - 2)}  `;
  const sections = [finding.section, ...finding.alsoSections].join(", ");
  const [title = "", ...more] = spread(`${lead}${word}: ${subjectOf(finding, nameOf)}`, sections, width);
  const lines = [title.replace(word, pen(word, EMPHASIS[finding.outcome])), ...more];
  const add = (text: string, first = "") =>
    lines.push(...wrapped(printable(text), width, " ".repeat(INDENT) + first, INDENT));
  add(finding.why);
  if (finding.remedy !== "") add(finding.remedy, "What settles it: ");
  const numbers = measuredTexts(finding, units);
  if (numbers.length > 0) add(`${numbers.join("; ")}.`, "Measured: ");
  if (finding.question) add(questionText(finding.question), "Question: ");
  if (finding.answered) add(`${answerText(finding.answered)}.`);
  if (finding.lapsed) add(LAPSED_TEXT);
  add(`${finding.basis}.`, "How sure the limit is: ");
  return lines;
}

function missingLines(writing: Writing): string[] {
  const { report, width, nameOf } = writing;
  const needed = findingsByPart(report)
    .flatMap(({ findings }) => findings)
    .filter(({ finding }) => finding.outcome === "bond" || finding.outcome === "missing");
  const ties = report.ties.filter((tie) => !tie.present);
  const lines = heading(`Missing: ${report.missing}`, writing);
  const questions = report.counts.review;
  if (questions > 0) {
    const are = questions === 1 ? "1 question is" : `${questions} questions are`;
    lines.push(...wrapped(`${are} still open; an answer may add to this list.`, width));
  }
  if (needed.length === 0 && ties.length === 0 && report.missing === 0) lines.push("Nothing needed lacks a record.");
  for (const { number, finding } of needed) {
    lines.push(
      ...wrapped(`${subjectOf(finding, nameOf)}, ${finding.section}`, width, `${String(number).padStart(4)}  `),
    );
  }
  if (ties.length > 0) {
    lines.push(
      ...wrapped(`${ties.length} of ${report.ties.length} ties without a record (places below)`, width, "   -  "),
    );
  }
  return lines;
}

function questionLines(writing: Writing): string[] {
  const { report, width, nameOf } = writing;
  const open = findingsByPart(report)
    .flatMap(({ findings }) => findings)
    .filter(({ finding }) => finding.outcome === "review");
  if (open.length === 0) return [];
  const lines = heading(`Open questions: ${open.length}`, writing);
  for (const { number, finding } of open) {
    const asked = finding.question ? questionText(finding.question) : finding.remedy;
    const text = printable(`${subjectOf(finding, nameOf)}: ${asked}`);
    lines.push(...wrapped(text, width, `${String(number).padStart(4)}  `));
  }
  return lines;
}

function cautionLines(writing: Writing): string[] {
  return [
    ...heading("Caution", writing),
    ...writing.report.cautions.flatMap((caution) => wrapped(caution, writing.width)),
  ];
}
