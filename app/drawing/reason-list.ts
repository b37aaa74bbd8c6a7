/**
 * The reasons in full, as blocks for the columns of further sheets: of every finding the why, the measurements with their
 * limits, how sure the limit is, what settles it, its question and its answer; of every rule what it protects people from.
 */
import { RULES } from "../../rules/catalogue/index.ts";
import { findingsByPart, type NumberedFinding } from "../../rules/findings-by-part.ts";
import type { Report } from "../../rules/report.ts";
import { answerText, LAPSED_TEXT, questionText } from "../../rules/words/answers.ts";
import { measuredTexts } from "../../rules/words/measured.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import {
  type Block,
  headingBlock,
  lineHeight,
  paragraphBlock,
  spaceBlock,
  subheadingBlock,
  typeLine,
} from "./blocks.ts";
import { aboutWords, type ListOptions, NUMBER_INDENT, numberMark } from "./finding-list.ts";
import { TEXT_POINTS } from "./scene.ts";
import { textPoints, wrapPoints } from "./text-width.ts";

/** Least width of a column of reasons, points. */
export const REASON_COLUMN = 240;

export function reasonBlocks(report: Report, list: ListOptions): Block[] {
  return [
    headingBlock("Reasons", "each with how sure its limit is"),
    ...findingsByPart(report).flatMap(({ part, findings }) => [
      subheadingBlock(part.title, part.section),
      ...protectionBlocks(findings, list.width),
      ...findings.map((one) => reasonBlock(one, list)),
    ]),
  ];
}

/** What each rule that found something protects people from. */
function protectionBlocks(findings: readonly NumberedFinding[], width: number): Block[] {
  const ids = new Set(findings.map(({ finding }) => finding.rule));
  const blocks = RULES.filter(({ id }) => ids.has(id)).map(({ title, protects }) => ({
    ...paragraphBlock(`${title}, what it protects people from: ${protects}`, width, { role: "faint" }),
    keepWithNext: true,
  }));
  return [...blocks, spaceBlock(2)];
}

function reasonBlock(
  { number, finding }: NumberedFinding,
  { units, names, width, hasSeveralBodies }: ListOptions,
): Block {
  const size = TEXT_POINTS.small;
  const room = width - NUMBER_INDENT;
  const sections = [finding.section, ...finding.alsoSections].join(", ");
  const title = wrapPoints(
    `${aboutWords(finding, names, hasSeveralBodies)}: ${OUTCOME_WORDS[finding.outcome]}`,
    room - textPoints(sections, size) - 6,
    TEXT_POINTS.body,
    true,
  );
  const numbers = measuredTexts(finding, units).join("; ");
  const { question } = finding;
  const texts = [
    finding.why,
    numbers === "" ? "" : `Measured: ${numbers}.`,
    `How sure the limit is: ${finding.basis}.`,
    finding.remedy === "" ? "" : `What settles it: ${finding.remedy}`,
    question ? `Question: ${questionText(question)}` : "",
    finding.answered ? `${answerText(finding.answered)}.` : "",
    finding.lapsed ? LAPSED_TEXT : "",
  ];
  const lines = texts.filter((text) => text !== "").flatMap((text) => wrapPoints(text, room, size));
  const step = lineHeight("small");
  const titleHeight = title.length * lineHeight("body");
  return {
    height: Math.max(17, titleHeight + lines.length * step + 5),
    draw: ([x, y]) => {
      const left = x + NUMBER_INDENT;
      return [
        numberMark({ number, finding }, [x, y]),
        ...title.map((line, i) =>
          typeLine(line, [left, y - 1 - i * lineHeight("body")], { size: "body", strong: true }),
        ),
        typeLine(sections, [x + width, y - 2], { role: "faint", anchor: "end" }),
        ...lines.map((line, i) => typeLine(line, [left, y - titleHeight - 1 - i * step])),
      ];
    },
  };
}
