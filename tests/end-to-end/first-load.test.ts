/** How much script the editor's page needs before it stands: counted from the built files, no timing. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { describe, expect, inject, it } from "vitest";

/** The most that the first load may take, bytes of gzip. */
const LARGEST_FIRST_LOAD = 300_000;

/** Scripts that a page's file names, with all that they import before they run, by name and text. */
function firstScripts(folder: string): Map<string, string> {
  const page = readFileSync(join(folder, "index.html"), "utf8");
  const waiting = [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map((match) => match[1] ?? "");
  const found = new Map<string, string>();
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (found.has(name)) continue;
    const text = readFileSync(join(folder, name), "utf8");
    found.set(name, text);
    // `import"./a.js"`, `import{x}from"./a.js"`, `export*from"./a.js"`; not `import("./a.js")`.
    for (const [, other] of text.matchAll(/(?:\bfrom|\bimport)\s*["']\.\/([^"']+\.js)["']/g)) {
      waiting.push(`assets/${other}`);
    }
  }
  return found;
}

describe("the first load", () => {
  it("takes less than 300 KB of compressed script", () => {
    const scripts = [...firstScripts(inject("builtApp"))];
    const sizes = scripts.map(([name, text]) => ({ name, size: gzipSync(text, { level: 9 }).length }));
    const sum = sizes.reduce((total, { size }) => total + size, 0);
    console.log(`first load: ${sum} bytes of gzip in ${sizes.length} scripts`);
    // The page cannot stand on less than its own components and React.
    expect(sum).toBeGreaterThan(50_000);
    expect(sum).toBeLessThan(LARGEST_FIRST_LOAD);
  });

  it("leaves rules, windows, sheets for print and the canvas library for later", () => {
    const folder = inject("builtApp");
    const first = [...firstScripts(folder).values()].join("\n");
    const all = readdirSync(join(folder, "assets"))
      .filter((name) => name.endsWith(".js"))
      .map((name) => readFileSync(join(folder, "assets", name), "utf8"))
      .join("\n");
    // A word of each that survives the build: of the canvas library, the print view, a rule.
    for (const word of ["konvajs-content", "Black and white", "stands between two voltages"]) {
      expect(all.includes(word), `somewhere: ${word}`).toBe(true);
      expect(first.includes(word), `at first: ${word}`).toBe(false);
    }
  });
});
