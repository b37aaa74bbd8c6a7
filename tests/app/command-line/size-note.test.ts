/** Sites that take long are announced on the error stream; what is printed stays the same. */
import { describe, expect, it } from "vitest";
import { readInput } from "../../../app/command-line/site-input.ts";
import { MANY_VERTICES, sizeNote } from "../../../app/command-line/size-note.ts";
import type { Site } from "../../../rules/site/site.ts";
import { fakeTerminal } from "./fake-terminal.ts";

function siteOf(vertices: number): Site {
  const outline = {
    vertices: Array.from({ length: vertices }, (_, i) => {
      const angle = (2 * Math.PI * i) / vertices;
      return [300 * Math.cos(angle), 200 * Math.sin(angle)];
    }),
    closed: true,
  };
  const pool = { id: "pool-1", kind: "pool", body: "pool", shell: "unknown", outline };
  return { format: "copperband-site", version: 1, elements: [pool] } as unknown as Site;
}

describe("a note about size", () => {
  it("names the outline and its vertices, and is silent about usual ones", () => {
    expect(sizeNote("scan.json", siteOf(MANY_VERTICES))).toBe(null);
    expect(sizeNote("scan.json", siteOf(MANY_VERTICES + 1))).toMatch(
      /^scan\.json: the outline of pool-1 \(2,001 vertices\)/,
    );
  });

  it("goes to the error stream before the work begins", async () => {
    const files = { "scan.json": JSON.stringify(siteOf(2500)), "plain.json": JSON.stringify(siteOf(12)) };
    const terminal = fakeTerminal({ files });
    expect((await readInput("plain.json", terminal)).ok).toBe(true);
    expect(terminal.err()).toBe("");
    expect((await readInput("scan.json", terminal)).ok).toBe(true);
    expect(terminal.err()).toContain("2,500 vertices");
    expect(terminal.out()).toBe("");
  });
});
