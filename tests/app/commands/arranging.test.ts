/** Commands and typed figures for arranging, on a headless editor. Expectations are arithmetic, words are our own choice. */
import { describe, expect, it } from "vitest";
import { mirrorMade, moveMade, repeatMade, sidesOf, turnMade, withLines } from "../../../app/arranging/arranging.ts";
import { createClipboard } from "../../../app/clipboard/clipboard.ts";
import { runCommand } from "../../../app/commands/command.ts";
import { COMMANDS } from "../../../app/commands/commands.ts";
import { setLocked } from "../../../app/edits/arrangement.ts";
import { takeElements } from "../../../app/edits/paste-elements.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import { recompute } from "../../../rules/recompute.ts";
import type { Site } from "../../../rules/site/site.ts";
import { applied, sampleYard } from "../edits/yard.ts";
import { finding, headlessEditor } from "./headless-editor.ts";

const post = (id: string, x: number, y: number, kind = "metal") =>
  kind === "metal" ? { id, kind, shape: { point: [x, y] } } : { id, kind, at: [x, y], device: "switch" };
const fence = {
  id: "fence-1",
  kind: "fence",
  path: {
    closed: false,
    vertices: [
      [0, 0],
      [100, 0],
      [100, 50, 1],
      [100, 90],
    ],
  },
};
const siteOf = (...elements: readonly unknown[]) => ({ ...emptySite(), elements }) as unknown as Site;

function editorOn(site: Site) {
  const editor = headlessEditor(site);
  return {
    editor,
    run: (id: string) => runCommand(editor, COMMANDS.get(id)),
    select: (...ids: string[]) => editor.view.getState().select(ids),
    selected: () => editor.view.getState().selection,
    site: () => editor.document.getState().history.present,
    steps: () => editor.document.getState().history.past.map(({ label }) => label),
  };
}

describe("selecting", () => {
  it("all, all of a kind and everything else leave out what is locked or hidden, and say so", () => {
    const { editor, run, select, selected } = editorOn(
      siteOf(post("metal-1", 0, 0), post("metal-2", 9, 0), post("device-1", 0, 9, "device"), post("metal-3", 9, 9)),
    );
    select("metal-2");
    run("lock");
    run("select-all");
    expect(selected()).toEqual(["metal-1", "device-1", "metal-3"]);
    expect(editor.said()).toBe("3 elements selected; 1 locked or hidden left out.");
    select("metal-1");
    run("select-kind");
    expect(selected()).toEqual(["metal-1", "metal-3"]);
    run("select-others");
    expect(selected()).toEqual(["device-1"]);
    select("metal-3");
    run("hide");
    expect(selected()).toEqual([]);
    expect(editor.said()).toMatch(/still judged/);
    run("select-all");
    expect(selected()).toEqual(["metal-1", "device-1"]);
  });

  it("leaves out what is not drawn because its part of the article is hidden", () => {
    const { editor, run, select, selected } = editorOn(siteOf(post("metal-1", 0, 0), post("device-1", 0, 9, "device")));
    editor.report = {
      ...recompute(editor.document.getState().shown),
      findings: [{ ...finding("fixed-metal", "680.26(B)(7)"), element: "metal-1" }],
    };
    editor.view.getState().setHiddenParts(["fixed-metal"]);
    run("select-all");
    expect(selected()).toEqual(["device-1"]);
    run("select-others");
    expect(selected()).toEqual([]);
    // Named in the outline it can be chosen all the same.
    select("metal-1");
    run("select-kind");
    expect(selected()).toEqual([]);
    expect(editor.said()).toBe("0 elements selected; 1 locked or hidden left out.");
  });

  it("to find something opens the outline with its search", () => {
    const { editor, run } = editorOn(sampleYard());
    run("find");
    expect(editor.view.getState()).toMatchObject({ panel: "outline", column: "details", findRequests: 1 });
    expect(editorOn(emptySite()).run("find")).toBe(false);
  });
});

describe("locking, hiding and grouping", () => {
  it("each one step with its name; what cannot be is said", () => {
    const { editor, run, select, selected, steps, site } = editorOn(
      siteOf(post("metal-1", 0, 0), post("metal-2", 9, 0)),
    );
    select("metal-1", "metal-2");
    expect([run("group"), run("group")]).toEqual([true, false]);
    expect(editor.said()).toBe("This is one group already.");
    select("metal-1");
    run("select-group");
    expect(selected()).toEqual(["metal-1", "metal-2"]);
    run("lock");
    expect(COMMANDS.get("lock").labelNow?.(editor)).toBe("Unlock 2 metal parts");
    run("delete");
    expect(editor.said()).toMatch(/is locked\. Unlock it first/);
    run("unlock-all");
    run("hide");
    expect(run("show")).toBe(false);
    run("show-all");
    select("metal-1");
    run("ungroup");
    expect(site()).toEqual(siteOf(post("metal-1", 0, 0), post("metal-2", 9, 0)));
    expect(steps()).toEqual([
      "Group 2 metal parts",
      "Lock 2 metal parts",
      "Unlock 2 metal parts",
      "Hide 2 metal parts",
      "Show 2 metal parts",
      "Take the group apart",
    ]);
    for (const id of ["unlock-all", "show-all", "ungroup"]) expect(run(id)).toBe(false);
  });
});

describe("lining up, spacing out and order", () => {
  it("done twice are one step, and the second time that is said", () => {
    const { editor, run, select, steps } = editorOn(
      siteOf(post("metal-1", 0, 0), post("metal-2", 9, 4), post("metal-3", 30, 0)),
    );
    select("metal-1", "metal-2", "metal-3");
    for (const [id, said] of [
      ["align-bottom", "They are lined up so already."],
      ["space-across", "They are spaced evenly already."],
    ] as const) {
      run(id);
      const taken = steps().length;
      run(id);
      expect(editor.said()).toBe(said);
      expect(steps()).toHaveLength(taken);
    }
    select("metal-3");
    run("lay-on-top");
    expect(editor.said()).toBe("That is how it lies already.");
    expect(steps()).toHaveLength(2);
  });
});

describe("the clipboard", () => {
  it("copies beside the originals, a step farther each time; a cut comes back where the view is", () => {
    const { editor, run, select, selected, site } = editorOn(siteOf(post("metal-1", 0, 0)));
    expect(run("paste")).toBe(false);
    select("metal-1");
    run("copy");
    run("paste");
    run("paste");
    expect(site().elements.map((one) => (one as unknown as { shape: unknown }).shape)).toEqual([
      { point: [0, 0] },
      { point: [24, -24] },
      { point: [48, -48] },
    ]);
    expect(selected()).toEqual(["metal-3"]);
    editor.view.getState().setCamera({ x: 300, y: 400, scale: 1 });
    run("cut");
    expect(editor.document.getState().history.past.at(-1)?.label).toBe("Cut metal part 3");
    run("paste");
    expect(site().elements.at(-1)).toMatchObject({ shape: { point: [300, 400] } });
  });

  it("goes from tab to tab through the browser's store, and without it stays on the page", () => {
    const kept = new Map<string, string>();
    const store = {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => void kept.set(key, text),
    };
    const taken = takeElements(siteOf(post("metal-1", 0, 0)), ["metal-1"]);
    createClipboard(store).put(taken);
    expect(createClipboard(store).get()).toEqual(taken);
    const full = {
      getItem: store.getItem,
      setItem: () => {
        throw new DOMException("full", "QuotaExceededError");
      },
    };
    const other = takeElements(siteOf(post("metal-9", 0, 0)), ["metal-9"]);
    const page = createClipboard(full);
    expect(page.get()).toEqual(taken);
    page.put(other);
    expect(page.get()).toEqual(other);
    kept.set("copperband-copied", "broken");
    expect(createClipboard(store).get()).toBeNull();
  });
});

describe("typed figures", () => {
  const site = siteOf(post("metal-1", 10, 20), fence);
  const chosen = { site, ids: ["metal-1"] };
  const placeAfter = (made: ReturnType<typeof moveMade>) => {
    if (!made.ok) return made.reason;
    return (applied(site, made.edit).elements[0] as unknown as { shape: { point: number[] } }).shape.point;
  };

  it("move right and up, or by length and direction", () => {
    expect(placeAfter(moveMade(chosen, { kind: "sides", first: `1' 6"`, second: "-6in" }))).toEqual([28, 14]);
    expect(placeAfter(moveMade(chosen, { kind: "bearing", first: "10in", second: "N" }))).toEqual([10, 30]);
    expect(placeAfter(moveMade(chosen, { kind: "bearing", first: "10in", second: "180" }))).toEqual([0, 20]);
    expect(placeAfter(moveMade(chosen, { kind: "sides", first: "", second: " " }))).toBe("Type how far.");
    expect(placeAfter(moveMade(chosen, { kind: "bearing", first: "1", second: "up" }))).toMatch(/direction/);
  });

  it("turn about a corner of its box or a typed place", () => {
    const figures = { degrees: "90", about: "place", x: "0", y: "0in" } as const;
    expect(placeAfter(turnMade(chosen, figures))).toEqual([-20, 10]);
    expect(placeAfter(turnMade(chosen, { ...figures, about: "middle" }))).toEqual([10, 20]);
    // As everywhere that angles are typed.
    expect(placeAfter(turnMade(chosen, { ...figures, degrees: "89\u00b0 60'" }))).toMatch(/Minutes/);
    expect(placeAfter(turnMade(chosen, { ...figures, degrees: "-270 deg" }))).toEqual([-20, 10]);
    expect(placeAfter(turnMade(chosen, { ...figures, x: "" }))).toMatch(/Type the place/);
    expect(placeAfter(turnMade(chosen, { ...figures, degrees: "400" }))).toMatch(/at most 360/);
  });

  it("mirror about upright, level and slanting lines, and the straight side of an element", () => {
    const figures = {
      kind: "upright",
      about: "place",
      x: "0",
      y: "0",
      direction: "",
      side: "",
      keepsOriginal: false,
    } as const;
    expect(placeAfter(mirrorMade(chosen, figures))).toEqual([-10, 20]);
    expect(placeAfter(mirrorMade(chosen, { ...figures, kind: "level" }))).toEqual([10, -20]);
    expect(placeAfter(mirrorMade(chosen, { ...figures, kind: "direction", direction: "45" }))).toEqual([20, 10]);
    expect(placeAfter(mirrorMade(chosen, { ...figures, kind: "side", side: "fence-1/1" }))).toEqual([190, 20]);
    for (const side of ["", "fence-1/", "gone-1/0"]) {
      expect(placeAfter(mirrorMade(chosen, { ...figures, kind: "side", side }))).toMatch(/Choose the straight side/);
    }
    // Its third side is an arc: no mirror, nor is the way from its end to its start a side.
    for (const side of ["fence-1/2", "fence-1/3", "fence-1/x"]) {
      expect(placeAfter(mirrorMade(chosen, { ...figures, kind: "side", side }))).toMatch(/Choose the straight side/);
    }
    expect(sidesOf(site.elements[1] as never, "in").map(({ value }) => value)).toEqual(["fence-1/0", "fence-1/1"]);
    const made = mirrorMade(chosen, { ...figures, keepsOriginal: true });
    expect(made.ok && applied(site, made.edit).elements).toHaveLength(3);
  });

  it("repeat along an element or a straight line, by spacing or number", () => {
    const figures = {
      along: "",
      length: "40in",
      direction: "90",
      by: "spacing",
      count: "x",
      spacing: "10in",
      aside: "",
      turning: false,
    } as const;
    const countAfter = (made: ReturnType<typeof repeatMade>) =>
      made.ok ? applied(site, made.edit).elements.length : made.reason;
    // Five places 10 in. apart along 40 in., the first of them where it stands.
    expect(countAfter(repeatMade(chosen, figures))).toBe(2 + 4);
    expect(countAfter(repeatMade(chosen, { ...figures, by: "count" }))).toMatch(/number/);
    expect(countAfter(repeatMade(chosen, { ...figures, along: "fence-1", by: "count", count: "7" }))).toBe(2 + 7);
    expect(countAfter(repeatMade(chosen, { ...figures, along: "metal-1" }))).toMatch(/Choose the line/);
    expect(countAfter(repeatMade(chosen, { ...figures, length: "" }))).toMatch(/Type a length/);
    expect(withLines(site, ["metal-1"]).map(({ id }) => id)).toEqual(["fence-1"]);
  });

  it("a refusal of the document stands as it is said", () => {
    const made = turnMade({ site, ids: ["metal-1"] }, { degrees: "5", about: "middle", x: "", y: "" });
    const locked = applied(site, setLocked(["metal-1"], true));
    expect(made.ok && made.edit.apply(locked)).toMatchObject({
      ok: false,
      reason: "Metal part 1 is locked. Unlock it first.",
    });
  });
});
