/** The findings as blocks for a column of the sheet: number, what it is about, section, outcome, numbers, what settles it. */
import type { Point } from "../../geometry/types.ts";
import { findingsByPart, type NumberedFinding } from "../../rules/findings-by-part.ts";
import type { Finding, Report } from "../../rules/report.ts";
import { amendedFor } from "../../rules/words/amendments.ts";
import { answerText, LAPSED_TEXT } from "../../rules/words/answers.ts";
import { aboutName, capitalized } from "../../rules/words/element-names.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { briefTexts } from "../../rules/words/measured.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { type Block, lineHeight, subheadingBlock, typeLine } from "./blocks.ts";
import { isOpen } from "./lettering.ts";
import { markDrawing } from "./mark-shapes.ts";
import { type Item, TEXT_POINTS } from "./scene.ts";
import { textPoints, wrapPoints } from "./text-width.ts";

/** Room for the number mark left of the text, points. */
export const NUMBER_INDENT = 21;

export interface ListOptions {
  readonly units: Units;
  readonly names: ReadonlyMap<string, string>;
  readonly width: number;
  readonly hasSeveralBodies: boolean;
}

/** Every finding of the report, in the code's order, under the headings of its parts. */
export function findingBlocks(report: Report, options: ListOptions): Block[] {
  return findingsByPart(report).flatMap(({ part, findings }) => [
    subheadingBlock(part.title, part.section),
    ...findings.map((one) => findingBlock(one, amendedFor(one.finding, report, options.units), part.section, options)),
  ]);
}

/** What a finding is about, in words; the body of water with it where the site has several. */
export function aboutWords(finding: Finding, names: ReadonlyMap<string, string>, hasSeveralBodies = false): string {
  const nameOf = (id: string) => names.get(id) ?? id;
  const about = capitalized(aboutName(finding, nameOf));
  if (!hasSeveralBodies || finding.element === null || finding.body === null || finding.body === finding.element)
    return about;
  return `${about}, by ${nameOf(finding.body)}`;
}

/** What is said on the sheet beside the numbers: of an open finding what settles it, of a settled one why. */
export function shortText(finding: Finding): string {
  if (finding.outcome === "review" && finding.question) {
    const { text, options } = finding.question;
    return options.length === 0 ? text : `${text} ${options.join(" / ")}?`.replace("??", "?");
  }
  return isOpen(finding) ? finding.remedy || finding.why : firstSentence(finding.why);
}

/** Up to the first full stop that ends a sentence (not the one in `5.03 m` or `21 in.` before a small letter). */
function firstSentence(text: string): string {
  return /^.*?[.!?](?=\s+[A-Z0-9"]|$)/s.exec(text)?.[0] ?? text;
}

/** The number of a finding in the shape of its outcome, at the upper left corner of its block. */
export function numberMark({ number, finding }: NumberedFinding, [x, y]: Point): Item {
  const { height } = markDrawing(finding.outcome, String(number));
  return {
    kind: "mark",
    at: [x + NUMBER_INDENT / 2 - 1.5, y - Math.max(8, height / 2 + 0.5)],
    from: null,
    number,
    outcome: finding.outcome,
    findings: [finding.id],
    ...(finding.element === null ? {} : { element: finding.element }),
  };
}

/** The section is told again only where it is not that of the heading above. */
function findingBlock(
  { number, finding }: NumberedFinding,
  amended: readonly string[],
  partSection: string,
  { units, names, width, hasSeveralBodies }: ListOptions,
): Block {
  const size = TEXT_POINTS.small;
  const step = lineHeight("small");
  const room = width - NUMBER_INDENT;
  const all = [finding.section, ...finding.alsoSections].join(", ");
  const sections = all === partSection ? "" : all;
  const title = wrapPoints(
    aboutWords(finding, names, hasSeveralBodies),
    room - textPoints(sections, size) - 6,
    TEXT_POINTS.body,
    true,
  );
  const numbers = briefTexts(finding, units).join("; ");
  const outcome = wrapPoints(
    [OUTCOME_WORDS[finding.outcome], numbers, finding.basis].filter((text) => text !== "").join(" · "),
    room,
    size,
  );
  const said = [
    shortText(finding),
    finding.answered ? `${answerText(finding.answered)}.` : "",
    finding.lapsed ? LAPSED_TEXT : "",
    amended.length === 0 ? "" : `Local amendment: ${amended.join("; ")}.`,
  ];
  const text = said.flatMap((one) => wrapPoints(one, room, size));
  const titleStep = lineHeight("body");
  const height = Math.max(17, title.length * titleStep + (outcome.length + text.length) * step + 3.5);
  return {
    height,
    draw: ([x, y]) => {
      const left = x + NUMBER_INDENT;
      const outcomeTop = y - title.length * titleStep - 1;
      return [
        numberMark({ number, finding }, [x, y]),
        ...title.map((line, i) => typeLine(line, [left, y - 1 - i * titleStep], { size: "body", strong: true })),
        ...(sections === "" ? [] : [typeLine(sections, [x + width, y - 2], { role: "faint", anchor: "end" })]),
        ...outcome.map((line, i) => typeLine(line, [left, outcomeTop - i * step])),
        ...text.map((line, i) => typeLine(line, [left, outcomeTop - (outcome.length + i) * step], { role: "faint" })),
      ];
    },
  };
}
