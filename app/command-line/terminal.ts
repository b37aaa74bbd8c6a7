/** What a command may touch of the machine: handed in, so that commands can be run without one. */

export interface Terminal {
  /** Writes to standard output. Resolves once the text is handed on, or the reader has gone. */
  readonly write: (text: string) => Promise<void>;
  readonly complain: (text: string) => Promise<void>;
  /** The whole of standard input as text. */
  readonly readInput: () => Promise<string>;
  readonly readFile: (name: string) => Promise<string>;
  readonly writeFile: (name: string, text: string) => Promise<void>;
  readonly columns: number | undefined;
  /** Whether standard output is a terminal that may be written to with colors. */
  readonly isTerminal: boolean;
}

/** Exit codes. */
export const CLEAR = 0;
export const FAULTS = 1;
export const UNREADABLE = 2;
export const QUESTIONS = 3;
/** A mistake of the program itself, told apart from anything it says about a site. */
export const CRASH = 70;

const WORST_FIRST: readonly number[] = [UNREADABLE, FAULTS, QUESTIONS, CLEAR];

/** The worst of several exit codes: cannot be read, then faults, then questions. */
export function worstCode(codes: readonly number[]): number {
  return WORST_FIRST.find((code) => codes.includes(code)) ?? CLEAR;
}

/** The process this program runs as. */
export function processTerminal(): Terminal {
  // A reader that stops early (`| head`) is no fault of ours: what is left is not written. Whatever else goes wrong is
  // told by the write that it happened to.
  let hasReader = true;
  process.stdout.on("error", () => {
    hasReader = false;
  });
  // The exit code says it too. Without a listener a complaint that nobody reads would end the process with another code.
  process.stderr.on("error", () => undefined);
  let input: Promise<string> | undefined;
  return {
    write: (text) => (hasReader ? writeTo(process.stdout, text) : Promise.resolve()),
    complain: (text) => writeTo(process.stderr, text),
    readInput: () => {
      input ??= readAll(process.stdin);
      return input;
    },
    readFile: async (name) => {
      const { readFile } = await import("node:fs/promises");
      return readFile(name, "utf8");
    },
    writeFile: async (name, text) => {
      const { writeFile } = await import("node:fs/promises");
      await writeFile(name, text, "utf8");
    },
    columns: process.stdout.columns,
    isTerminal: process.stdout.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== "dumb",
  };
}

/** Resolves when the stream has taken the text; a closed reader counts as taken (the stream's own event tells of it). */
function writeTo(stream: NodeJS.WriteStream, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    stream.write(text, (error) => {
      if (error && (error as NodeJS.ErrnoException).code !== "EPIPE") reject(error);
      else resolve();
    });
  });
}

async function readAll(stream: NodeJS.ReadableStream): Promise<string> {
  const pieces: Buffer[] = [];
  for await (const piece of stream) pieces.push(typeof piece === "string" ? Buffer.from(piece) : piece);
  return Buffer.concat(pieces).toString("utf8");
}
