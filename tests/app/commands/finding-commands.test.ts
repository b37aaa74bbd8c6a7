/** Stepping through the findings. Our own design, no source. */
import { describe, expect, it } from "vitest";
import { runCommand } from "../../../app/commands/command.ts";
import { COMMANDS } from "../../../app/commands/commands.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import type { Report } from "../../../rules/report.ts";
import { finding, headlessEditor } from "./headless-editor.ts";

const run = (editor: ReturnType<typeof headlessEditor>, id: string) => runCommand(editor, COMMANDS.get(id));

describe("stepping through findings", () => {
  const findings = [finding("b", "680.26(B)(7)"), finding("a", "680.26(B)(1)"), finding("c", "680.26(B)(7)")];

  it("goes round in the code's order, both ways, with the number that the lists show", () => {
    const editor = headlessEditor(emptySite());
    expect(run(editor, "next-finding")).toBe(false);
    expect(editor.said()).toMatch(/no findings/);
    editor.report = { findings } as unknown as Report;
    const visited = ["next-finding", "next-finding", "next-finding", "next-finding", "previous-finding"].map((id) => {
      run(editor, id);
      return editor.view.getState().finding;
    });
    expect(visited).toEqual(["a", "b", "c", "a", "c"]);
    expect(editor.said()).toBe("Finding 3: Why of c.");
  });

  it("goes over those that are listed: the open ones, and one that was just settled as long as it is chosen", () => {
    const editor = headlessEditor(emptySite());
    const settled = (...ids: string[]) => {
      editor.report = {
        findings: findings.map((one) => (ids.includes(one.id) ? { ...one, outcome: "meets" } : one)),
      } as unknown as Report;
    };
    const visit = (id: string) => {
      run(editor, id);
      return editor.view.getState().finding;
    };
    settled("b");
    expect(["next-finding", "next-finding", "next-finding"].map(visit)).toEqual(["a", "c", "a"]);
    settled("a", "b");
    expect(["next-finding", "previous-finding"].map(visit)).toEqual(["c", "c"]);
    editor.view.getState().setSift("all");
    expect(["next-finding", "next-finding"].map(visit)).toEqual(["a", "b"]);
    editor.view.getState().setSift("open");
    settled("a", "b", "c");
    expect(visit("next-finding")).toBe("c");
  });

  it("stays within the chosen part", () => {
    const editor = headlessEditor(emptySite());
    editor.report = { findings } as unknown as Report;
    editor.view.getState().choosePart("fixed-metal");
    run(editor, "previous-finding");
    run(editor, "previous-finding");
    run(editor, "previous-finding");
    expect(editor.view.getState().finding).toBe("c");
  });
});
