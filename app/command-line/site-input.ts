/** Reads the site that a command names: a file, or `-` for standard input. */
import { type ReadResult, readSite } from "../../rules/site/reader.ts";
import { type Refusal, sentenceOf } from "../../rules/site/refusal.ts";
import { sizeNote } from "./size-note.ts";
import type { Terminal } from "./terminal.ts";
import { printable } from "./text-lines.ts";

export const STANDARD_INPUT = "-";

export type Input =
  | { readonly ok: true; readonly site: Extract<ReadResult, { ok: true }>["site"] }
  | { readonly ok: false; readonly lines: readonly string[]; readonly refusal: FileRefusal };

/** What stands in the place of a report, with `--json`, for a file that gives none. */
export interface FileRefusal {
  readonly format: "copperband-refusal";
  readonly version: 1;
  /** The name as it was given; `-` is standard input. */
  readonly file: string;
  /** `unreadable`: the file itself could not be read. */
  readonly code: Refusal["code"] | "unreadable";
  readonly message: string;
  readonly problems: Refusal["problems"];
}

/** What the input is called in headings and complaints. */
export function inputName(name: string): string {
  return name === STANDARD_INPUT ? "standard input" : printable(name);
}

/** The site, or the lines that say why there is none. */
export async function readInput(name: string, terminal: Terminal): Promise<Input> {
  const text = await readText(name, terminal);
  if (!text.ok) {
    const message = `${inputName(name)} cannot be read: ${text.reason}.`;
    return { ok: false, lines: [message], refusal: refusalOf(name, { code: "unreadable", message, problems: [] }) };
  }
  const result = readSite(text.text);
  if (result.ok) {
    const note = sizeNote(inputName(name), result.site);
    if (note !== null) await terminal.complain(`${note}\n`);
    return { ok: true, site: result.site };
  }
  const { code, message, problems } = result.refusal;
  const lines = problems.length > 0 ? problems.map((problem) => `  ${printable(sentenceOf(problem))}`) : [];
  return {
    ok: false,
    lines: [`${inputName(name)} cannot be read as a site (${code}): ${printable(message)}`, ...lines.slice(1)],
    refusal: refusalOf(name, result.refusal),
  };
}

function refusalOf(file: string, { code, message, problems }: Omit<FileRefusal, "format" | "version" | "file">) {
  return { format: "copperband-refusal", version: 1, file, code, message, problems } as const;
}

/** Writes one line of JSON, named after the file that it is about: a report, a comparison, or a refusal. */
export async function writeLine(
  file: string,
  value: { readonly format: string; readonly version: number },
  terminal: Terminal,
): Promise<void> {
  const { format, version, ...rest } = value;
  await terminal.write(`${JSON.stringify({ format, version, file, ...rest })}\n`);
}

type TextResult = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly reason: string };

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "this is a folder, not a file",
  EACCES: "this file may not be read",
  EPERM: "this file may not be read",
  ENOTDIR: "there is no such file",
};

/** What a file that is written may run into. */
export const WRITE_REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such folder",
  ENOTDIR: "there is no such folder",
  EISDIR: "this is a folder, not a file",
  EACCES: "nothing may be written there",
  EPERM: "nothing may be written there",
  EROFS: "nothing may be written there",
  ENOSPC: "there is no room left",
};

async function readText(name: string, terminal: Terminal): Promise<TextResult> {
  try {
    return { ok: true, text: name === STANDARD_INPUT ? await terminal.readInput() : await terminal.readFile(name) };
  } catch (error) {
    return { ok: false, reason: systemReason(error) };
  }
}

/** Why the machine would not read or write, in plain words. Errors that do not come from the machine are thrown on. */
export function systemReason(error: unknown, reasons = REASONS): string {
  const { code } = error as NodeJS.ErrnoException;
  if (!(error instanceof Error) || code === undefined) throw error;
  return reasons[code] ?? `the system says ${code}`;
}
