import { describe, expect, it } from "vitest";
import { TOOLS } from "../../../app/commands/tool-commands.ts";
import { changeText } from "../../../app/panels/announcer.tsx";
import { searchCommands } from "../../../app/panels/command-search.ts";
import { copperLines, ON_ITS_WAY } from "../../../app/panels/copper-lines.ts";
import { openCount } from "../../../app/panels/counts-line.tsx";
import { keyWords } from "../../../app/panels/key-words.ts";
import { FURTHER_TOOLS, labelOf, TOOL_GROUPS, TOOL_HINTS, touchHint } from "../../../app/panels/tool-words.ts";
import type { Report } from "../../../rules/report.ts";
import { missingText, standingCountsText } from "../../../rules/words/outcomes.ts";

// No published source for any of these: they are this program's own words.
const NONE = { conflict: 0, missing: 0, bond: 0, review: 0, meets: 0, exempt: 0 };

describe("what to do with a tool", () => {
  it("is said without keys and clicks where a finger points", () => {
    for (const { tool } of TOOLS) {
      expect(touchHint(tool)).toMatch(/^[A-Z].*\.$/);
      expect(touchHint(tool)).not.toMatch(/click|Enter|Backspace|Shift|Alt|wheel/i);
      expect(touchHint(tool)).not.toMatch(/\b[B-HJ-Z]\b/);
    }
    expect(touchHint("building")).toBe(
      "Tap each corner, or drag a rectangle; pull as you press to bend a side. A tap on the first corner closes it.",
    );
  });
});

describe("what is said to assistive technology", () => {
  it("names the counts that have changed, and nothing where none has", () => {
    expect(changeText({ ...NONE, bond: 9 }, { ...NONE, bond: 8, meets: 1 })).toBe("Now 8 need bonding, 1 meets.");
    expect(changeText({ ...NONE, bond: 9 }, { ...NONE, bond: 9 })).toBeNull();
  });
});

describe("what is open, in words", () => {
  it("never says 0 missing without the questions that are open", () => {
    expect(missingText({ missing: 0, counts: { ...NONE, review: 2 } })).toBe("0 missing, 2 questions open");
    expect(missingText({ missing: 3, counts: { ...NONE, review: 1 } })).toBe("3 missing, 1 question open");
    expect(missingText({ missing: 0, counts: NONE })).toBe("0 missing, no question open");
    expect(openCount("review", { missing: 0, counts: { ...NONE, review: 2 } })).toBe("0 missing, 2 questions open");
    expect(openCount("review", { missing: 4, counts: { ...NONE, review: 2 } })).toBe("2 questions open");
    expect(openCount("bond", { missing: 4, counts: { ...NONE, bond: 1 } })).toBe("1 needs bonding");
  });

  it("counts what has to be bonded once, as the sheet's head says it", () => {
    const counted = (counts: Partial<typeof NONE>) => standingCountsText({ counts: { ...NONE, ...counts } });
    expect(counted({ bond: 2 })).toBe("0 conflicts, 2 need bonding, 0 questions, 0 meet, 0 exempt");
    expect(counted({ missing: 2, meets: 1 })).toBe("0 conflicts, 2 missing, 0 questions, 1 meets, 0 exempt");
    expect(counted({ review: 1 })).toBe("0 conflicts, 0 missing, 1 question, 0 meet, 0 exempt");
  });
});

describe("the lines of the takeoff", () => {
  const conductor = { ring: 1284, grid: 0, ties: 84, branches: 0, drops: 0, tails: 0, spare: 0, total: 1368 };
  const report = { takeoff: { conductor }, ring: {} } as unknown as Report;
  const texts = (pending: boolean) =>
    Object.fromEntries(copperLines(report, pending, "ft-in").map(({ line, text }) => [line, text]));

  it("are on their way, never zero, while routes are worked out", () => {
    expect(texts(true)).toEqual({
      ring: "107' 0\"",
      grid: "none",
      ties: "7' 0\"",
      branches: ON_ITS_WAY,
      drops: ON_ITS_WAY,
      tails: "none",
    });
  });

  it("say none once it is known that there is none", () => {
    expect(texts(false).branches).toBe("none");
    expect(copperLines(report, true, "ft-in").find(({ line }) => line === "branches")?.isNone).toBe(false);
  });
});

describe("the tools", () => {
  it("stand once each, in the bar or in its menu, each with a hint", () => {
    const shown = [...TOOL_GROUPS.flat(), ...FURTHER_TOOLS];
    expect([...shown].sort()).toEqual(TOOLS.map(({ tool }) => tool).sort());
    expect(new Set(shown).size).toBe(shown.length);
    for (const tool of shown)
      expect([tool, TOOL_HINTS[tool].endsWith("."), labelOf(tool) !== tool]).toEqual([tool, true, true]);
  });
});

describe("keys", () => {
  it("are read as the machine calls them", () => {
    expect(keyWords("Mod+Shift+Z", false)).toBe("Ctrl+Shift+Z");
    expect(keyWords("Mod+Shift+Z", true)).toBe("Cmd+Shift+Z");
    expect(keyWords("Shift+ArrowLeft", false)).toBe("Shift+←");
    expect(keyWords("+", false)).toBe("+");
    expect(keyWords("Mod++", false)).toBe("Ctrl++");
  });
});

describe("searching the commands", () => {
  const commands = [
    { label: "Show the whole site", group: "View" },
    { label: "Save", group: "Site", key: "Mod+S" },
    { label: "Save as another file", group: "Site" },
    { label: "Undo", group: "Change", key: "Mod+Z" },
  ] as const;
  const found = (typed: string) => searchCommands(commands, typed).map(({ label }) => label);

  it("finds every typed word anywhere, and puts first what begins with the text", () => {
    expect(found("")).toHaveLength(4);
    expect(found("site")).toEqual(["Show the whole site", "Save", "Save as another file"]);
    expect(found("save")).toEqual(["Save", "Save as another file"]);
    expect(found("file save")).toEqual(["Save as another file"]);
    expect(found("mod+z")).toEqual(["Undo"]);
    expect(found("rope")).toEqual([]);
  });
});
