/** A terminal that keeps what is written to it, with files that exist only here. */
import type { Terminal } from "../../../app/command-line/terminal.ts";

export interface FakeTerminal extends Terminal {
  readonly out: () => string;
  readonly err: () => string;
  readonly written: Map<string, string>;
}

export interface FakeSettings {
  readonly files?: Readonly<Record<string, string>>;
  readonly input?: string;
  readonly columns?: number;
  readonly isTerminal?: boolean;
}

export function fakeTerminal({ files = {}, input = "", columns, isTerminal = false }: FakeSettings = {}): FakeTerminal {
  let out = "";
  let err = "";
  const written = new Map<string, string>();
  return {
    out: () => out,
    err: () => err,
    written,
    write: async (text) => {
      out += text;
    },
    complain: async (text) => {
      err += text;
    },
    readInput: async () => input,
    readFile: async (name) => {
      const text = Object.hasOwn(files, name) ? files[name] : undefined;
      if (text === undefined) throw Object.assign(new Error(`no ${name}`), { code: "ENOENT" });
      return text;
    },
    writeFile: async (name, text) => {
      if (name.includes("missing-folder")) throw Object.assign(new Error("no folder"), { code: "ENOENT" });
      written.set(name, text);
    },
    columns,
    isTerminal,
  };
}
