/**
 * A search that finds nothing as it was typed is made again with what was probably meant.
 *
 * Stages. 1. As typed (`search.ts`). 2. What people call things otherwise, by `words/other-names.ts`. 3. A section that no
 * rule restates becomes the one above it, step by step. 4. A word that no rule holds becomes the word of the rules that is
 * fewest keystrokes away: one for a word of four or five letters, two up to eight letters, three for a longer one. What was
 * sought in place of the text is said where it finds a rule.
 */
import { RULES } from "./catalogue/index.ts";
import type { EditionInForce } from "./editions/in-force.ts";
import { findRules, type RuleFound, SECTION } from "./search.ts";
import type { Units } from "./words/lengths.ts";
import { OTHER_NAMES } from "./words/other-names.ts";

export interface Search {
  readonly found: readonly RuleFound[];
  /** What was sought in place of what was typed; null where that was found, or nothing was. */
  readonly instead: string | null;
}

/** Rules that hold everything typed, or else what is nearest to it. */
export function searchRules(text: string, edition: EditionInForce, units: Units = "ft-in"): Search {
  const exact = findRules(text, edition, units);
  if (exact.length > 0) return { found: exact, instead: null };
  for (const change of [otherNames, nearest]) {
    const instead = change(text.toLowerCase().trim(), edition);
    if (instead === null) continue;
    const found = findRules(instead, edition, units);
    if (found.length > 0) return { found, instead };
  }
  return { found: [], instead: null };
}

/** The text with every other name in it replaced, longer ones first; null where it holds none. */
function otherNames(text: string): string | null {
  let changed = ` ${text.replaceAll(/[\s-]+/g, " ")} `;
  const before = changed;
  for (const said of Object.keys(OTHER_NAMES).sort((a, b) => b.length - a.length)) {
    changed = changed.replace(new RegExp(` ${said}(?:s|es)? `, "g"), ` ${OTHER_NAMES[said]} `);
  }
  return changed === before ? null : changed.trim();
}

/** The text with each section and word that no rule holds replaced by the nearest that one holds. */
function nearest(text: string, edition: EditionInForce): string | null {
  const isHeld = (part: string) => findRules(part, edition).length > 0;
  const sections: string[] = [];
  const rest = text.replace(SECTION, (section) => {
    const held = isHeld(section) ? section.trim() : sectionAbove(section, isHeld);
    if (held !== null) sections.push(held);
    return held === null ? section : " ";
  });
  const words: string[] = [];
  for (const word of rest.split(/[^\p{L}\p{N}.]+/u).filter((one) => one !== "")) {
    const held = isHeld(word) ? word : (otherNames(word) ?? nearestWord(word));
    if (held === null) return null;
    words.push(held);
  }
  const instead = [...words, ...sections].join(" ");
  return instead === "" ? null : instead;
}

/** `680.26(B)(7)` for `680.26(B)(7)(1)`: the nearest section above that a rule restates. */
function sectionAbove(section: string, isHeld: (section: string) => boolean): string | null {
  let above = section.trim();
  for (;;) {
    const shorter = above.replace(/\s*(?:\(\s*[a-z0-9]+\s*\)|(?<=[\d)])\s*[a-z]|(?<=[a-z])\s*\d+)$/i, "").trim();
    if (shorter === above || !/\d/.test(shorter)) return null;
    above = shorter;
    if (isHeld(above)) return above.toUpperCase();
  }
}

let vocabulary: readonly string[] | undefined;

/** Every word of four letters and more that the rules' own texts and other names hold. */
function wordsOfRules(): readonly string[] {
  vocabulary ??= [
    ...new Set(
      [
        ...RULES.flatMap(({ title, subjects, measure, protects }) => [title, subjects, measure, protects]),
        ...Object.keys(OTHER_NAMES),
      ]
        .flatMap((text) => text.toLowerCase().split(/[^\p{L}]+/u))
        .filter((word) => word.length >= 4),
    ),
  ];
  return vocabulary;
}

function nearestWord(word: string): string | null {
  const most = word.length < 4 ? 0 : word.length < 6 ? 1 : word.length < 9 ? 2 : 3;
  let best: { readonly word: string; readonly away: number } | null = null;
  for (const candidate of most === 0 ? [] : wordsOfRules()) {
    if (Math.abs(candidate.length - word.length) > most) continue;
    const away = keystrokesApart(word, candidate);
    if (away <= most && (best === null || away < best.away)) best = { word: candidate, away };
  }
  return best === null ? null : (OTHER_NAMES[best.word] ?? best.word);
}

/**
 * Letters put in, left out, changed or exchanged with their neighbor between two words: the restricted distance of
 * Damerau and Levenshtein, by its usual table.
 */
function keystrokesApart(a: string, b: string): number {
  let [before, row]: [number[], number[]] = [[], Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const isSame = a[i - 1] === b[j - 1];
      let least = Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + (isSame ? 0 : 1));
      const isExchanged = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (isExchanged) least = Math.min(least, (before[j - 2] ?? 0) + 1);
      next.push(least);
    }
    [before, row] = [row, next];
  }
  return row[b.length] ?? 0;
}
