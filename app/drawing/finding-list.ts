/** The findings as blocks for a column of the sheet: number, what it is about, section, outcome, numbers, what settles it. */
import { findingsByPart, type NumberedFinding } from "../../rules/findings-by-part.ts";
import type { Finding, Report } from "../../rules/report.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { measuredTexts } from "../../rules/words/measured.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { type Block, headingBlock, lineHeight, typeLine } from "./blocks.ts";
import { isOpen } from "./lettering.ts";
import { markDrawing } from "./mark-shapes.ts";
import { TEXT_POINTS } from "./scene.ts";
import { textPoints, wrapPoints } from "./text-width.ts";

/** Room for the number mark left of the text, points. */
const INDENT = 21;

export interface ListOptions {
  readonly units: Units;
  readonly names: ReadonlyMap<string, string>;
  readonly width: number;
}

/** Every finding of the report, in the code's order, under the headings of its parts. */
export function findingBlocks(report: Report, options: ListOptions): Block[] {
  return findingsByPart(report).flatMap(({ part, findings }) => [
    headingBlock(part.title, part.section),
    ...findings.map((one) => findingBlock(one, options)),
  ]);
}

/** What a finding is about, in words. */
export function aboutWords(finding: Finding, names: ReadonlyMap<string, string>): string {
  const nameOf = (id: string) => names.get(id) ?? id;
  if (finding.element !== null) return capitalized(nameOf(finding.element));
  return finding.body === null ? "The site" : capitalized(nameOf(finding.body));
}

/** What is said on the sheet beside the numbers: of an open finding what settles it, of a settled one why. */
export function shortText(finding: Finding): string {
  if (finding.outcome === "review" && finding.question) {
    const { text, options } = finding.question;
    return options.length === 0 ? text : `${text} ${options.join(" / ")}?`.replace("??", "?");
  }
  return isOpen(finding) ? finding.remedy || finding.why : finding.why;
}

function findingBlock({ number, finding }: NumberedFinding, { units, names, width }: ListOptions): Block {
  const size = TEXT_POINTS.small;
  const step = lineHeight("small");
  const room = width - INDENT;
  const sections = [finding.section, ...finding.alsoSections].join(", ");
  const title = wrapPoints(aboutWords(finding, names), room - textPoints(sections, size) - 6, TEXT_POINTS.body, true);
  const numbers = measuredTexts(finding, units).join("; ");
  const outcome = wrapPoints(
    [OUTCOME_WORDS[finding.outcome], numbers].filter((text) => text !== "").join(" · "),
    room,
    size,
  );
  const text = wrapPoints(shortText(finding), room, size);
  const titleStep = lineHeight("body");
  const height = Math.max(17, title.length * titleStep + (outcome.length + text.length) * step + 5);
  return {
    height,
    draw: ([x, y], all) => {
      const left = x + INDENT;
      const outcomeTop = y - title.length * titleStep - 1;
      const mark = markDrawing(finding.outcome, String(number));
      return [
        {
          kind: "mark",
          at: [x + INDENT / 2 - 1.5, y - Math.max(8, mark.height / 2 + 0.5)],
          from: null,
          number,
          outcome: finding.outcome,
          findings: [finding.id],
          ...(finding.element === null ? {} : { element: finding.element }),
        },
        ...title.map((line, i) => typeLine(line, [left, y - 1 - i * titleStep], { size: "body", strong: true })),
        typeLine(sections, [x + all, y - 2], { role: "faint", anchor: "end" }),
        ...outcome.map((line, i) => typeLine(line, [left, outcomeTop - i * step])),
        ...text.map((line, i) => typeLine(line, [left, outcomeTop - (outcome.length + i) * step], { role: "faint" })),
      ];
    },
  };
}
