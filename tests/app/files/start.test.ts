/** What comes onto the sheet when the page loads. Our own design, no source. */
import { afterEach, describe, expect, it, vi } from "vitest";
import { addElement } from "../../../app/edits/add-element.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { STORE_PATIENCE } from "../../../app/files/start.ts";
import { writeSite } from "../../../rules/site/writer.ts";
import { field, sampleYard } from "../edits/yard.ts";
import { machine, type Page, page } from "./bench-files.ts";

const DROPPED = { ...sampleYard(), name: "Dropped" };

afterEach(() => {
  vi.useRealTimers();
});

describe("a file that is dropped while the copies are looked for", () => {
  it("stays on the sheet and is kept; the copy of last time stays too", async () => {
    const on = machine();
    const before = page(on);
    await before.files.start();
    before.document.getState().edit(moveElements(["pump-1"], 7, 0));
    await before.files.settled();
    const again = page(on);
    const starting = again.files.start();
    expect(again.files.openText(writeSite(DROPPED), "dropped.site.json")).toBe(true);
    expect(await starting).toBe("kept");
    await again.files.settled();
    expect(again.document.getState().shown.name).toBe("Dropped");
    const kept = JSON.stringify([...on.store.values.values()]);
    expect(kept).toContain("Dropped");
    expect(kept).toContain("[527, 220]");
    expect((await again.files.copies()).map(({ name }) => name)).toEqual([sampleYard().name]);
  });
});

describe("a file that is opened at any moment of the start", () => {
  /** Opens it after so many turns of what waits; what stands on the sheet at the end. */
  async function openedAfter(turns: number, hasCopy: boolean): Promise<string | undefined> {
    const on = machine();
    if (hasCopy) {
      const before = page(on);
      await before.files.start();
      before.document.getState().edit(moveElements(["pump-1"], 7, 0));
      await before.files.settled();
    }
    const again = page(on);
    const starting = again.files.start();
    for (let turn = 0; turn < turns; turn++) await Promise.resolve();
    again.files.openText(writeSite(DROPPED), "dropped.site.json");
    const started = await starting;
    await again.files.settled();
    if (started === "empty") throw new Error("the sheet is not empty");
    return again.document.getState().shown.name;
  }

  it.each([false, true])("stays on the sheet (a copy of last time: %s)", async (hasCopy) => {
    for (let turns = 0; turns < 120; turns++) {
      expect([turns, await openedAfter(turns, hasCopy)]).toEqual([turns, "Dropped"]);
    }
  });
});

describe("what is drawn on the empty sheet at any moment of the start", () => {
  const FIGURE = {
    id: "fence-77",
    kind: "fence",
    path: {
      vertices: [
        [0, 0],
        [120, 0],
      ],
      closed: false,
    },
  } as const;
  const begin = {
    "as a step": ({ document }: Page) => void document.getState().edit(addElement(FIGURE as never)),
    "as a gesture": ({ document }: Page) => {
      document.getState().beginGesture("Draw");
      document.getState().preview(addElement(FIGURE as never));
    },
    "corner by corner": ({ files }: Page) => files.keepDrawing({ tool: "fence", begun: { corners: [[0, 0]] } }),
  };

  /** Begins it after so many turns of what waits. Null where a site is on the sheet before. */
  async function begunAfter(turns: number, how: keyof typeof begin, hasCopy: boolean) {
    const on = machine();
    if (hasCopy) {
      const before = page(on);
      await before.files.start();
      before.document.getState().edit(moveElements(["pump-1"], 7, 0));
      await before.files.settled();
    }
    const again = page(on);
    const starting = again.files.start();
    for (let turn = 0; turn < turns; turn++) await Promise.resolve();
    if (again.opened() > 0) {
      await starting;
      return null;
    }
    begin[how](again);
    const started = await starting;
    await again.files.settled();
    return { on, again, started };
  }

  it.each(
    (["as a step", "as a gesture", "corner by corner"] as const).flatMap((how) => [
      [how, false] as const,
      [how, true] as const,
    ]),
  )("stays on it, %s (a copy of last time: %s)", async (how, hasCopy) => {
    let tried = 0;
    for (let turns = 0; turns < 120; turns++) {
      const found = await begunAfter(turns, how, hasCopy);
      if (!found) break;
      tried += 1;
      const { on, again, started } = found;
      expect([turns, started, again.opened()]).toEqual([turns, "kept", 0]);
      if (how !== "corner by corner") expect(again.document.getState().shown.elements).toHaveLength(1);
      again.document.getState().commitGesture();
      await again.files.settled();
      const kept = JSON.stringify([...on.store.values.values()]);
      expect(kept.includes("fence-77")).toBe(how !== "corner by corner");
      expect(kept.includes("[527, 220]")).toBe(hasCopy);
      expect(again.said()?.text ?? "").toBe(hasCopy ? "The site of last time is among the kept copies." : "");
    }
    expect(tried).toBeGreaterThan(5);
  });

  it("leaves it said that a copy cannot be read", async () => {
    const on = machine();
    const before = page(on);
    await before.files.start();
    before.document.getState().edit(moveElements(["pump-1"], 7, 0));
    await before.files.settled();
    on.store.values.set("site/broken", { id: "broken", tab: "tab-1", text: "{", at: 1e9 });
    const again = page(on);
    const starting = again.files.start();
    begin["as a step"](again);
    expect([await starting, again.opened()]).toEqual(["kept", 0]);
    expect(again.said()).toMatchObject({ kind: "problem", text: expect.stringMatching(/set aside/) });
  });
});

describe("a store that does not answer", () => {
  it("is not waited for: the demo comes, nothing is said to be kept; once it answers all is kept and found", async () => {
    vi.useFakeTimers();
    const on = machine();
    const before = page(on);
    await before.files.start();
    before.document.getState().edit(moveElements(["pump-1"], 7, 0));
    await before.files.settled();
    let answer = (): void => undefined;
    on.store.silence = new Promise((resolve) => {
      answer = resolve;
    });
    const again = page(on);
    const starting = again.files.start();
    await vi.advanceTimersByTimeAsync(STORE_PATIENCE);
    expect(await starting).toBe("demo");
    expect(again.files.state.getState().keeping.state).toBe("failed");
    expect(again.said()).toMatchObject({ kind: "problem", text: expect.stringMatching(/does not answer/) });
    again.document.getState().edit(moveElements(["pump-1"], 1, 0));
    expect(again.files.atRisk()).toBe(true);

    answer();
    await vi.advanceTimersByTimeAsync(1);
    await again.files.settled();
    expect(again.said()?.text).toMatch(/among the kept copies/);
    expect(again.files.atRisk()).toBe(false);
    expect(field(again.document.getState().shown, "pump-1", "at")).toEqual([521, 220]);
    expect(JSON.stringify([...on.store.values.values()])).toContain("[527, 220]");
    expect(JSON.stringify([...on.store.values.values()])).toContain("[521, 220]");
  });
});
