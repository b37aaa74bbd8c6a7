/** What changes under another edition, as blocks for the wide columns of a further sheet. */
import {
  type EditionComparison,
  type FindingChange,
  type ParameterSide,
  saysOtherwise,
} from "../../rules/compare-editions.ts";
import { EDITIONS } from "../../rules/editions/in-force.ts";
import { findingNumbers } from "../../rules/findings-by-part.ts";
import { OUTCOMES_WORST_FIRST, type Outcome, type Report } from "../../rules/report.ts";
import { amendmentWords } from "../../rules/words/amendments.ts";
import { bandText, changeCount, sideTexts, TOTAL_WORDS, totalText } from "../../rules/words/comparison.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { parameterText } from "../../rules/words/parameters.ts";
import { type Block, headingBlock, lineHeight, paragraphBlock, spaceBlock, typeLine } from "./blocks.ts";
import type { ListOptions } from "./finding-list.ts";
import { markDrawing } from "./mark-shapes.ts";
import { type Item, TEXT_POINTS } from "./scene.ts";
import { paperLine } from "./sheet.ts";
import { wrapPoints } from "./text-width.ts";

/** A comparison without its two reports: a sheet shows one of them already. */
export type ComparedEditions = Omit<EditionComparison, "reports">;

/** Least width of a column that holds both editions beside each other, points. */
export const COMPARISON_COLUMN = 340;
const GAP = 12;
const SMALL = TEXT_POINTS.small;

/** The whole comparison, with the numbers that the findings bear on the plan of `report`, the site under the edition before. */
export function comparisonBlocks(comparison: ComparedEditions, report: Report, list: ListOptions): Block[] {
  const { amendments } = report;
  const numbers = findingNumbers(report);
  const { width, units } = list;
  const [before, after] = [EDITIONS[comparison.before].title, EDITIONS[comparison.after].title];
  const otherwise = comparison.changes.filter(saysOtherwise);
  const inForce =
    amendments.length === 0
      ? "No local amendments."
      : `Local amendments in force under both: ${amendments.map((one) => amendmentWords(one, units)).join("; ")}.`;
  return [
    headingBlock(`What changes under ${after}`, `the plan is judged by ${before}`),
    paragraphBlock(`The same site under ${before} and under ${after}. ${changeCount(comparison)} ${inForce}`, width),
    paragraphBlock(
      "Both editions are restated in our own words; each limit says how well it is founded. A drawing aid, not an approval.",
      width,
    ),
    spaceBlock(4),
    ...totalBlocks(comparison, list),
    ...bandBlocks(comparison, list),
    ...(otherwise.length === 0 ? [] : [spaceBlock(4), headingBlock("Findings that change")]),
    ...otherwise.map((change) => changeBlock(change, numbers.get(change.id), comparison, list)),
    ...parameterBlocks(comparison, list),
    ...surenessBlocks(comparison, list),
  ];
}

/** A heading over three columns: the name, and one for each edition. */
function pairHeading(text: string, { before, after }: ComparedEditions): Block {
  return {
    height: 17,
    keepWithNext: true,
    draw: ([x, y], width) => [
      typeLine(text, [x, y - 4], { size: "body", strong: true }),
      typeLine(EDITIONS[before].title, [x + width / 3, y - 5], { strong: true }),
      typeLine(EDITIONS[after].title, [x + (2 * width) / 3, y - 5], { strong: true }),
      paperLine("rule-line", [
        [x, y - 14],
        [x + width, y - 14],
      ]),
    ],
  };
}

/** A name and what either edition says of it, each wrapped in its third of the width. */
function pairRow(name: string, before: string, after: string, width: number): Block {
  const room = width / 3 - 6;
  const cells = [name, before, after].map((text) => wrapPoints(text, room, SMALL));
  const lines = Math.max(1, ...cells.map((cell) => cell.length));
  const height = lines * lineHeight("small") + 2;
  return {
    height,
    draw: ([x, y], all) => [
      ...cells.flatMap((cell, column) =>
        cell.map((line, i) => typeLine(line, [x + (column * all) / 3, y - 1 - i * lineHeight("small")])),
      ),
      paperLine("rule-line", [
        [x, y - height],
        [x + all, y - height],
      ]),
    ],
  };
}

function totalBlocks(comparison: ComparedEditions, { units, width }: ListOptions): Block[] {
  const total = new Map(comparison.totals.map((one) => [one.name, one]));
  const counts = OUTCOMES_WORST_FIRST.map((outcome) => {
    const one = total.get(`count ${outcome}`);
    return pairRow(capitalized(OUTCOME_WORDS[outcome]), String(one?.before ?? 0), String(one?.after ?? 0), width);
  });
  const figures = comparison.totals.flatMap(({ name, before, after }) => {
    const words = TOTAL_WORDS[name];
    return words ? [pairRow(words.text, totalText(name, before, units), totalText(name, after, units), width)] : [];
  });
  return [pairHeading("In all", comparison), ...counts, ...figures];
}

function bandBlocks(comparison: ComparedEditions, { units, width, names }: ListOptions): Block[] {
  if (comparison.bands.length === 0) return [];
  const nameOf = (id: string) => names.get(id) ?? id;
  return [
    spaceBlock(4),
    pairHeading("Perimeter, by surface", comparison),
    ...comparison.bands.map(({ pool, surface, before, after }) =>
      pairRow(
        `${capitalized(surface === null ? "the ground" : nameOf(surface))}, by ${nameOf(pool)}`,
        bandText(before, units),
        bandText(after, units),
        width,
      ),
    ),
  ];
}

/** Room for the number mark left of a side, points. */
const INDENT = 21;

/** Both sides of a finding; `number` is the one it bears on the plan, undefined where only the other edition asks for it. */
function changeBlock(
  change: FindingChange,
  number: number | undefined,
  comparison: ComparedEditions,
  { width, names }: ListOptions,
): Block {
  const nameOf = (id: string) => names.get(id) ?? id;
  const about = change.element ?? change.body;
  const by = change.body !== null && change.body !== about ? `, by ${nameOf(change.body)}` : "";
  const name = about === null ? "The site" : `${capitalized(nameOf(about))}${by}`;
  const head = wrapPoints(`${name}. ${change.title}.`, width, TEXT_POINTS.body, true);
  const half = (width - GAP) / 2;
  const sides = [change.before, change.after].map((side, i) => {
    const { outcome, texts } = sideTexts(side);
    const edition = EDITIONS[i === 0 ? comparison.before : comparison.after].title;
    return {
      outcome: side === null ? null : side.outcome,
      first: wrapPoints(`${edition}: ${outcome}`, half - INDENT, SMALL, true),
      rest: texts.flatMap((text) => wrapPoints(text, half - INDENT, SMALL)),
    };
  });
  const step = lineHeight("small");
  const lines = Math.max(...sides.map(({ first, rest }) => first.length + rest.length));
  const headHeight = head.length * lineHeight("body") + 1;
  const height = headHeight + Math.max(16, lines * step) + 6;
  return {
    height,
    draw: ([x, y]) => [
      ...head.map((line, i) => typeLine(line, [x, y - 1 - i * lineHeight("body")], { size: "body", strong: true })),
      ...sides.flatMap(({ outcome, first, rest }, i) => {
        const left = x + i * (half + GAP);
        const top = y - headHeight - 1;
        return [
          ...(outcome === null || number === undefined ? [] : [numberMark(outcome, number, left, top)]),
          ...first.map((line, k) => typeLine(line, [left + INDENT, top - k * step], { strong: true })),
          ...rest.map((line, k) => typeLine(line, [left + INDENT, top - (first.length + k) * step])),
        ];
      }),
      paperLine("rule-line", [
        [x, y - height + 2],
        [x + width, y - height + 2],
      ]),
    ],
  };
}

function numberMark(outcome: Outcome, number: number, left: number, top: number): Item {
  const { height } = markDrawing(outcome, String(number));
  return { kind: "mark", at: [left + INDENT / 2 - 1.5, top - height / 2], from: null, number, outcome };
}

function parameterBlocks(comparison: ComparedEditions, { units, width }: ListOptions): Block[] {
  if (comparison.parameters.length === 0) return [];
  const side = ({ value, unit, section, basis, says }: ParameterSide) =>
    `${parameterText(value, unit, units)}. ${says} ${section}, ${basis}.`;
  return [
    spaceBlock(4),
    pairHeading("Numbers that differ", comparison),
    ...comparison.parameters.map(({ id, rules, before, after }) =>
      pairRow(`${id}, read by: ${rules.join(", ")}`, side(before), side(after), width),
    ),
  ];
}

function surenessBlocks(comparison: ComparedEditions, { width, names }: ListOptions): Block[] {
  const alike = comparison.changes.filter((change) => !saysOtherwise(change));
  if (alike.length === 0) return [];
  return [
    spaceBlock(4),
    pairHeading("Only the basis differs", comparison),
    ...alike.map(({ element, body, title, before, after }) => {
      const about = element ?? body;
      const name = about === null ? "The site" : capitalized(names.get(about) ?? about);
      return pairRow(`${name}, ${title.toLowerCase()}`, before?.basis ?? "", after?.basis ?? "", width);
    }),
  ];
}
