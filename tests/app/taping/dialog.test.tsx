// @vitest-environment happy-dom
/** The window that points are taped in through. What is typed is not lost by a slip of the hand. Our own design, no source. */
import { act } from "react";
import { afterEach, describe, expect, it, vi } from "vitest";
import { emptyRow, emptyTaping, type Taping } from "../../../app/taping/taping.ts";
import TapingDialog from "../../../app/taping/taping-dialog.tsx";
import type { Site } from "../../../rules/site/site.ts";
import { type Bench, bench } from "../panels/panel-bench.tsx";

const kept: { table: Taping } = { table: emptyTaping("stakes") };
vi.mock("../../../app/taping/keep-taping.ts", () => ({
  keptTaping: () => Promise.resolve(kept.table),
  keepTaping: (table: Taping) => {
    kept.table = table;
    return Promise.resolve();
  },
}));

const site = { format: "copperband-site", version: 1, elements: [] } as unknown as Site;
const post = (first: string) => ({ ...emptyRow(), first, second: "12'" });
const table: Taping = {
  ...emptyTaping("stakes"),
  apart: "20'",
  things: [
    { tool: "metal-point", name: "Posts", rows: [post("11'"), post("13'")] },
    { tool: "metal-point", name: "Poles", rows: [post("15'")] },
  ],
};

let page: Bench | null = null;
afterEach(() => {
  page?.close();
  page = null;
});

async function opened(): Promise<Bench> {
  kept.table = table;
  page = bench(site);
  page.show(<TapingDialog onClose={() => undefined} />);
  await act(async () => undefined);
  return page;
}

describe("what is taken out of the table", () => {
  it.each(["Take point 1 away", "Take this one away", "Clear the table"])(
    "%s: it can be brought back",
    async (name) => {
      const { button, press } = await opened();
      press(button(name));
      expect(kept.table).not.toEqual(table);
      press(button("Bring the table back"));
      expect(kept.table).toEqual(table);
    },
  );

  it("a table that is drawn says so when it comes up again, and draws nothing twice", async () => {
    const { editor, button, press, query } = await opened();
    press(button("Draw it"));
    expect(editor.document.getState().shown.elements).toHaveLength(3);
    expect(query('[role="status"]').textContent).toContain("On the sheet already, and not drawn again: Posts, Poles.");
    press(button("Draw it"));
    expect(query('[role="alert"]').textContent).toBe("All that was taped is on the sheet already.");
    expect(editor.document.getState().shown.elements).toHaveLength(3);
  });
});
