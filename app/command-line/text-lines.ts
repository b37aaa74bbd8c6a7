/** Lines of plain text for a terminal or a pipe: wrapping, columns, headings, and emphasis where it can be shown. */

import { untied, wordsOf } from "../../rules/words/breaks.ts";

/** Narrowest and widest text, characters. */
export const NARROWEST = 80;
export const WIDEST = 100;

/** The width to write to: the terminal's own within what reads well, `WIDEST` for a pipe or a file. */
export function textWidth(columns: number | undefined): number {
  return columns === undefined ? WIDEST : Math.min(WIDEST, Math.max(NARROWEST, columns));
}

/**
 * The text broken at spaces into lines of at most `width` characters. `first` opens the first line, every further line
 * is indented by `indent`. A word that is longer than a line is cut.
 */
export function wrapped(text: string, width: number, first = "", indent = first.length): string[] {
  const lines: string[] = [];
  let line = first;
  let isEmpty = true;
  const pad = " ".repeat(indent);
  const breakLine = () => {
    lines.push(line.trimEnd());
    line = pad;
    isEmpty = true;
  };
  for (const word of wordsOf(text)) {
    let rest = word;
    if (!isEmpty && line.length + 1 + rest.length > width) breakLine();
    while (line.length + rest.length > width && width > line.length) {
      const room = width - line.length;
      line += rest.slice(0, room);
      rest = rest.slice(room);
      breakLine();
    }
    line += isEmpty ? rest : ` ${rest}`;
    isEmpty = false;
  }
  if (!isEmpty || lines.length === 0) lines.push(line.trimEnd());
  return lines.map(untied);
}

/** Name left, value right, dots between. */
export function leaderLine(name: string, value: string, width: number, indent = 2): string {
  const dots = Math.max(2, width - indent - name.length - value.length - 2);
  return `${" ".repeat(indent)}${name} ${".".repeat(dots)} ${value}`;
}

/** Left text and right text on one line, at least two spaces apart, or on two lines where they do not fit. */
export function spread(left: string, right: string, width: number): string[] {
  const gap = width - left.length - right.length;
  if (gap >= 2) return [left + " ".repeat(gap) + right];
  const lead = /^ */.exec(left)?.[0] ?? "";
  return [...wrapped(left.trimStart(), width, lead), right.padStart(width)];
}

export type Emphasis = "strong" | "red" | "yellow" | "green" | "faint";

const CODES: Readonly<Record<Emphasis, readonly [number, number]>> = {
  strong: [1, 22],
  red: [31, 39],
  yellow: [33, 39],
  green: [32, 39],
  faint: [2, 22],
};

/** Sets a text off: does nothing where the output is not a terminal. */
export type Pen = (text: string, emphasis: Emphasis) => string;

export function penFor(isTerminal: boolean): Pen {
  if (!isTerminal) return (text) => text;
  return (text, emphasis) => {
    const [on, off] = CODES[emphasis];
    return `\u001b[${on}m${text}\u001b[${off}m`;
  };
}

/** A heading with a line under it. */
export function heading(text: string, { pen, width }: { readonly pen: Pen; readonly width: number }): string[] {
  return [pen(text, "strong"), "-".repeat(Math.min(width, text.length))];
}

/** Text of the file or of a person, safe to print: control characters could otherwise rewrite the terminal. */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\u{202a}-\u{202e}\u{2066}-\u{2069}]+/gu, " ");
}
