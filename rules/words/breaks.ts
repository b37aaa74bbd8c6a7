/** Keeps a figure and what belongs to it on one line where text is wrapped. */

const TIED = "\u00a0";
/** A hyphen that no line is broken at. */
const DATE_HYPHEN = "\u2011";

/** The text with its lengths, fractions, units and limits tied together by no-break spaces: `12' 6 1/2"`, `8 AWG`, `limit 5' 0"`. */
export function tied(text: string): string {
  return text
    .replace(/(\d') (?=\d)/g, `$1${TIED}`)
    .replace(/(\d) (?=\d+\/\d)/g, `$1${TIED}`)
    .replace(/(\d) (?=(?:AWG|sq|ft|in\.?|m|m\u00b2|A|V|lb)(?![\w]))/g, `$1${TIED}`)
    .replace(/(sq) (?=ft|in)/g, `$1${TIED}`)
    .replace(/(limit) (?=\d)/g, `$1${TIED}`)
    .replace(/(?<=\b\d{4})-(\d\d)-(?=\d\d\b)/g, `${DATE_HYPHEN}$1${DATE_HYPHEN}`);
}

/** The text with plain spaces again. */
export function untied(text: string): string {
  return text.replaceAll(TIED, " ").replaceAll(DATE_HYPHEN, "-");
}

/** The words that a line may be broken between. */
export function wordsOf(text: string): string[] {
  return tied(text)
    .split(/[^\S\u00a0]+/)
    .filter((word) => word !== "");
}
