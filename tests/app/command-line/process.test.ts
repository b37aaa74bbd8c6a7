// The program as a process: everything written arrives, a reader that leaves early is no failure. Common practice, no source.
import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const repository = fileURLToPath(new URL("../../../", import.meta.url));
const program = ["--import", "tsx", "app/command-line/main.ts"];

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the program; `readOnly` closes its output after that many characters, `isDeaf` its complaints from the start. */
function start(words: readonly string[], readOnly = Number.POSITIVE_INFINITY, isDeaf = false): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...program, ...words], { cwd: repository });
    if (isDeaf) child.stderr.destroy();
    let out = "";
    let err = "";
    child.stdout.setEncoding("utf8").on("data", (text: string) => {
      out += text;
      if (out.length >= readOnly) child.stdout.destroy();
    });
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      err += text;
    });
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, out, err }));
  });
}

const sites = ["busy-yard", "pool-and-spa", "true-l"].map((name) => `demo-sites/${name}.site.json`);

describe("the program", () => {
  it("writes long output to its end", async () => {
    const many = Array.from({ length: 4 }, () => sites).flat();
    const { code, out, err } = await start(["check", "--json", ...many]);
    expect([code, err]).toEqual([1, ""]);
    const lines = out.split("\n");
    expect(lines.pop()).toBe("");
    expect(lines.map((line) => JSON.parse(line).format)).toEqual(many.map(() => "copperband-report"));
  });

  it("takes it calmly when its reader leaves", async () => {
    const { code, err } = await start(["check", "--json", ...sites, ...sites], 100);
    expect([code, err]).toEqual([1, ""]);
  });

  it("exits as ever when nobody reads what it complains of", async () => {
    const { code } = await start(["check", "gone.site.json", "gone-too.site.json"], Number.POSITIVE_INFINITY, true);
    expect(code).toBe(2);
  });

  it("exits 2 at a word it does not know", async () => {
    const { code, err } = await start(["judge"]);
    expect(code).toBe(2);
    expect(err).toContain("judge");
  });
});
