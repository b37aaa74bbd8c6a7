/** Widths of type, worked out without a screen. Advance widths of IBM Plex Sans, thousandths of an em, from the font files. */
import { untied, wordsOf } from "../../rules/words/breaks.ts";
import { LETTER_SPACING, TEXT_POINTS, type TextItem } from "./scene.ts";

const FIRST = 32;
const NO_BREAK_SPACE = 160;

/** Characters 32 to 126, regular. */
const REGULAR: readonly number[] = [
  236, 284, 419, 713, 598, 927, 694, 242, 335, 335, 450, 600, 272, 399, 272, 383, 600, 600, 600, 600, 600, 600, 600,
  600, 600, 600, 292, 292, 600, 600, 600, 477, 891, 641, 653, 621, 671, 583, 559, 695, 707, 400, 510, 634, 501, 812,
  707, 708, 606, 708, 640, 581, 572, 678, 609, 891, 613, 593, 580, 317, 383, 317, 600, 565, 600, 534, 580, 503, 580,
  549, 324, 528, 568, 250, 250, 527, 272, 873, 568, 560, 580, 580, 367, 487, 351, 568, 492, 768, 507, 499, 464, 343,
  314, 343, 600,
];

/** The same, semibold. */
const STRONG: readonly number[] = [
  236, 309, 471, 656, 600, 960, 713, 260, 337, 337, 556, 600, 299, 402, 299, 437, 600, 600, 600, 600, 600, 600, 600,
  600, 600, 600, 319, 319, 600, 600, 600, 493, 899, 672, 663, 642, 689, 600, 577, 712, 719, 423, 545, 678, 521, 817,
  719, 712, 641, 712, 664, 611, 580, 689, 638, 949, 655, 632, 599, 329, 437, 329, 600, 559, 600, 559, 600, 513, 600,
  558, 350, 545, 588, 275, 275, 562, 294, 888, 588, 563, 600, 600, 393, 499, 374, 588, 524, 819, 544, 524, 502, 363,
  376, 363, 600,
];

/** Latin letters with accents, arrows and the like are about this wide; other scripts fill the em. */
const LATIN_BEYOND = 640;
const LAST_LATIN = 0x24f;

/** Width of a text of `size` points, points. */
export function textPoints(text: string, size: number, strong = false): number {
  const table = strong ? STRONG : REGULAR;
  let thousandths = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    thousandths +=
      table[(code === NO_BREAK_SPACE ? FIRST : code) - FIRST] ??
      (code > LAST_LATIN && code > 0x2300 ? 1000 : LATIN_BEYOND);
  }
  return (thousandths / 1000) * size;
}

/** Width of a text item as it is drawn, points. */
export function itemPoints(item: Pick<TextItem, "text" | "size" | "strong" | "spaced">): number {
  const size = TEXT_POINTS[item.size];
  const spacing = item.spaced ? [...item.text].length * size * LETTER_SPACING : 0;
  return textPoints(item.text, size, item.strong) + spacing;
}

/** The text broken at spaces into lines no wider than `width` points. A word wider than that is cut. */
export function wrapPoints(text: string, width: number, size: number, strong = false): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of wordsOf(text)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (textPoints(longer, size, strong) <= width) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = "";
    for (const character of word) {
      if (line !== "" && textPoints(line + character, size, strong) > width) {
        lines.push(line);
        line = "";
      }
      line += character;
    }
  }
  if (line !== "") lines.push(line);
  return lines.map(untied);
}

/** The text cut to `width` points, with three dots where something was left off. */
export function cutPoints(text: string, width: number, size: number, strong = false): string {
  if (textPoints(text, size, strong) <= width) return text;
  const characters = [...text];
  while (characters.length > 0 && textPoints(`${characters.join("")}...`, size, strong) > width) characters.pop();
  return `${characters.join("").trimEnd()}...`;
}
