/**
 * Finds rules by a word or by a section.
 *
 * Stages. 1. What was typed is cut into words; what looks like a section (`680.26(B)(7)`, `26 b 7`, `22(A)`) is taken as
 * one. 2. Each word has to be found somewhere in a rule: the better the place (section, title, subjects, then the rest),
 * the higher it counts. 3. Best first; of those that a section finds alike, the rule that reads the most numbers; else in
 * the code's order.
 */
import { RULES } from "./catalogue/index.ts";
import { PARTS, type Rule } from "./catalogue/rule.ts";
import { BASIS_WORDS, type Parameter } from "./editions/edition.ts";
import type { EditionInForce } from "./editions/in-force.ts";
import type { ParameterId } from "./editions/parameter-types.ts";
import type { BasisWord } from "./report.ts";
import type { Units } from "./words/lengths.ts";
import { parameterText } from "./words/parameters.ts";

/** A number that a rule reads, in the edition in force. */
export interface RuleLimit {
  readonly id: ParameterId;
  readonly value: string;
  readonly section: string;
  readonly basis: BasisWord;
  readonly says: string;
  /** The reason of the local amendment that changed it. */
  readonly amended: string | null;
}

export interface RuleFound {
  readonly rule: Rule;
  /** Null: the edition holds no such rule. */
  readonly section: string | null;
  readonly limits: readonly RuleLimit[];
}

/** Rules that hold everything typed, best first; an empty text finds every rule in the code's order. */
export function findRules(text: string, edition: EditionInForce, units: Units = "ft-in"): RuleFound[] {
  const wanted = wordsIn(text);
  const numbersOf = (rule: Rule) => (wanted.some(({ isSection }) => isSection) ? rule.parameters.length : 0);
  return inCodeOrder()
    .map((rule, place) => ({ rule, place, score: scoreOf(rule, wanted, edition) }))
    .filter(({ score }) => score !== null)
    .sort((a, b) => (b.score ?? 0) - (a.score ?? 0) || numbersOf(b.rule) - numbersOf(a.rule) || a.place - b.place)
    .map(({ rule }) => ({
      rule,
      section: rule.sections[edition.id] ?? null,
      limits: rule.parameters.map((id) => limitOf(id, edition, units)),
    }));
}

function limitOf(id: ParameterId, edition: EditionInForce, units: Units): RuleLimit {
  const { value, unit, section, basis, says }: Parameter = edition.parameters[id];
  const amendment = edition.amended(id);
  return {
    id,
    value: parameterText(value, unit, units),
    section,
    basis: BASIS_WORDS[basis],
    says,
    amended: amendment ? (amendment.reason ?? "no reason given") : null,
  };
}

function inCodeOrder(): Rule[] {
  const order = new Map<string, number>(PARTS.map((part, i) => [part.id, i]));
  return [...RULES].sort((a, b) => (order.get(a.part) ?? 0) - (order.get(b.part) ?? 0));
}

interface Wanted {
  readonly text: string;
  readonly isSection: boolean;
}

/** A section as people type it: `680.26(B)(7)`, `26(b)(7)`, `26 B 7`, `680.9`, `250.8`. */
export const SECTION =
  /(?:\b\d{3}\s*\.\s*)?\b\d{1,3}(?:\s*\(\s*[a-z0-9]+\s*\)|\s*[a-z](?![a-z])(?:\s*\d+)?)+|\b\d{3}\s*\.\s*\d+/gi;

/** A unit behind a number: the limits write it as a sign. */
const UNIT = /(\d)\s*(?:feet|foot|ft|inches|inch|in)\b\.?/g;

function wordsIn(text: string): Wanted[] {
  const wanted: Wanted[] = [];
  const rest = text.replace(SECTION, (section) => {
    wanted.push({ text: plainSection(section), isSection: true });
    return " ";
  });
  for (const word of rest
    .toLowerCase()
    .replace(UNIT, "$1")
    .split(/[^\p{L}\p{N}.]+/u)) {
    if (word !== "") wanted.push({ text: word, isSection: false });
  }
  return wanted;
}

/** `680.26(B)(7)` and `26 b 7` as `26b7`. */
function plainSection(section: string): string {
  return section
    .toLowerCase()
    .replaceAll(/[\s()]/g, "")
    .replace(/^680\./, "");
}

/** Null: something that was typed is nowhere in the rule. */
function scoreOf(rule: Rule, wanted: readonly Wanted[], edition: EditionInForce): number | null {
  let score = 0;
  for (const one of wanted) {
    const found = one.isSection ? sectionScore(rule, one.text, edition) : wordScore(rule, one.text, edition);
    if (found === 0) return null;
    score += found;
  }
  return score;
}

function sectionScore(rule: Rule, text: string, edition: EditionInForce): number {
  const own = plainSection(rule.sections[edition.id] ?? "");
  if (own === text) return 40;
  const further = rule.alsoSections?.[edition.id] ?? [];
  const numbers = [...further, ...rule.parameters.map((id) => edition.parameters[id].section)].map(plainSection);
  if (numbers.includes(text)) return 20;
  const within = (section: string) =>
    section.startsWith(text) && !/^\d\d/.test(`${text.slice(-1)}${section.slice(text.length)}`);
  return within(own) ? 10 : numbers.some(within) ? 5 : 0;
}

function wordScore(rule: Rule, word: string, edition: EditionInForce): number {
  const part = PARTS.find(({ id }) => id === rule.part)?.title ?? "";
  const places: readonly (readonly [string, number])[] = [
    [rule.title, 12],
    [rule.subjects, 8],
    [part, 6],
    [rule.measure, 5],
    [rule.id.replaceAll("-", " "), 5],
    [rule.protects, 3],
    [rule.parameters.map((id) => `${edition.parameters[id].says} ${id}`).join(" "), 2],
    [
      rule.parameters.map((id) => parameterText(edition.parameters[id].value, edition.parameters[id].unit)).join("; "),
      2,
    ],
    [Object.values(rule.sections).join(" "), 2],
  ];
  let best = 0;
  // A number stands alone: 8 is not in 18, and not in 8 1/2.
  const number = /^\d+$/.test(word) ? new RegExp(`(?<![\\d/.]|\\d )${word}(?![\\d/.]| \\d+/)`) : null;
  for (const [text, worth] of places) {
    const at = number === null ? text.toLowerCase().indexOf(word) : text.search(number);
    if (at < 0) continue;
    const startsWord = at === 0 || !/[\p{L}\p{N}]/u.test(text[at - 1] ?? "");
    best = Math.max(best, startsWord ? worth * 2 : worth);
  }
  return best;
}
