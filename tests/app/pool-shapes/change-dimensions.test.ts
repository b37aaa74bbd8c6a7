/** A pool that stands is given other dimensions. Figures are arithmetic. */
import { beforeEach, describe, expect, it } from "vitest";
import { runCommand } from "../../../app/commands/command.ts";
import { COMMANDS } from "../../../app/commands/commands.ts";
import { anchorAt } from "../../../app/dimensions/anchors.ts";
import { addDimension } from "../../../app/edits/dimension-edits.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { recognized } from "../../../app/pool-shapes/recognize.ts";
import type { PoolElement } from "../../../rules/site/elements.ts";
import { headlessEditor } from "../commands/headless-editor.ts";
import { corners, type Hand, handAt, siteWith } from "../tools/hand.ts";
import { drawn } from "./measured.ts";

const box = (x0: number, y0: number, x1: number, y1: number) => ({
  vertices: [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ],
  closed: true,
});

let hand: Hand;

/** Takes the pool up as the command does, and waits for the tool's code. */
async function takeUp(): Promise<void> {
  const found = recognized((hand.element("pool-1") as PoolElement).outline);
  if (!found) throw new Error("it is of no shape");
  const { shape, sizes, first, isClockwise } = found;
  const { at, turn, isMirrored } = found.placing;
  hand.view.getState().reshapePool({ id: "pool-1", shape, sizes, at, turn, isMirrored, first, isClockwise });
  await expect.poll(() => hand.host.state.getState().entry).not.toBeNull();
}

const entry = () => hand.host.state.getState().entry;
const labels = () => hand.document.getState().history.past.map(({ label }) => label);

beforeEach(() => {
  hand = handAt(
    siteWith([
      { id: "pool-1", kind: "pool", body: "pool", shell: "unknown", name: "Main pool", outline: box(384, 192, 0, 0) },
      { id: "inset-1", kind: "inset", pool: "pool-1", outline: box(324, 40, 384, 150) },
    ]),
  );
});

describe("other dimensions for a pool", () => {
  it("begin with what it has, and change it about its middle in one step; everything else of it stays", async () => {
    await takeUp();
    expect(entry()?.action).toBe("Change the pool");
    expect(
      entry()
        ?.fields.slice(0, 3)
        .map(({ shown }) => shown),
    ).toEqual(["32' 0\"", "16' 0\"", '0"']);
    expect(hand.type({ width: "20'" })).toBe(true);
    expect(labels()).toEqual(["Change the dimensions of Main pool"]);
    expect(hand.element("pool-1")).toMatchObject({ name: "Main pool", body: "pool" });
    // The corners keep their numbers.
    expect(corners(hand.element("pool-1"))).toEqual([
      [384, 216],
      [0, 216],
      [0, -24],
      [384, -24],
    ]);
    expect(hand.view.getState()).toMatchObject({ tool: "select", selection: ["pool-1"], reshaping: null });
    expect(hand.said()).toBeNull();
  });

  it("hold the corner that is chosen, are not placed by a click, and are given up without a trace", async () => {
    const before = hand.document.getState().shown;
    await takeUp();
    hand.click(900, 900);
    expect(hand.document.getState().shown).toBe(before);
    hand.host.press("n");
    const [held] = hand.host
      .overlay()
      .flatMap((shape) => (shape.kind === "handle" && shape.look === "active" ? [shape.at] : []));
    hand.host.type("length", "40'");
    const [still] = hand.host
      .overlay()
      .flatMap((shape) => (shape.kind === "handle" && shape.look === "active" ? [shape.at] : []));
    expect(still).toEqual(held);
    expect(hand.host.cancel()).toBe(true);
    hand.take("select");
    expect(hand.document.getState().shown).toBe(before);
    expect(hand.view.getState().reshaping).toBeNull();
  });

  it("are not given to a pool that has changed or gone since: it would jump to where it lay", async () => {
    hand.document.getState().edit(moveElements(["pool-1"], 120, 0));
    await takeUp();
    hand.document.getState().undo();
    const before = hand.document.getState().shown;
    expect(hand.type({ width: "20'" })).toBe(false);
    expect(hand.host.state.getState().refusal).toBe("Main pool has changed meanwhile: give it its dimensions anew.");
    expect(hand.document.getState().shown).toBe(before);
  });

  it("are held at a corner that is there, by name too, when another shape has fewer", async () => {
    await takeUp();
    for (let i = 0; i < 3; i++) hand.host.press("n");
    hand.view.getState().setShape("oval");
    hand.host.type("length", "16'");
    hand.host.type("width", "16'");
    const label = entry()?.buttons?.find(({ key }) => key === "n")?.label;
    expect(label).toBe("Held at: corner 1");
  });

  it("say which ledge they leave outside", async () => {
    await takeUp();
    hand.type({ length: "28'" });
    expect(hand.said()).toBe("Outside the pool now: Step or ledge 1. Move or change what lies outside.");
  });

  it("may be those of another shape, about the same middle", async () => {
    await takeUp();
    hand.view.getState().setShape("oval");
    hand.key("Enter");
    expect(recognized((hand.element("pool-1") as PoolElement).outline)).toMatchObject({
      shape: "oval",
      sizes: { length: 384, width: 192 },
      placing: { at: [192, 96] },
    });
  });

  it("that cannot be are refused by name", async () => {
    await takeUp();
    expect(hand.type({ radius: "9'" })).toBe(false);
    expect(hand.host.state.getState().refusal).toMatch(/^Corner radius /);
  });

  it("leave dimensions that are drawn on its corners there", async () => {
    const { document } = hand;
    const { elements } = document.getState().shown;
    document
      .getState()
      .edit(addDimension({ from: anchorAt([0, 0], elements), to: anchorAt([0, 192], elements), offset: 30 }));
    await takeUp();
    hand.type({ width: "20'" });
    const corner = (at: unknown) => corners(hand.element("pool-1"))[(at as { corner: number }).corner];
    const [dimension] = document.getState().shown.dimensions ?? [];
    expect([corner(dimension?.from), corner(dimension?.to)]).toEqual([
      [0, -24],
      [0, 216],
    ]);
  });
});

describe("a kidney turned over", () => {
  it("is changed in its place", async () => {
    hand = handAt(siteWith([{ id: "pool-1", kind: "pool", body: "pool", shell: "unknown", outline: drawn("kidney") }]));
    await takeUp();
    hand.host.press("v");
    hand.key("Enter");
    expect(recognized((hand.element("pool-1") as PoolElement).outline)).toMatchObject({
      shape: "kidney",
      placing: { isMirrored: true, turn: 0 },
    });
  });
});

describe("the command", () => {
  const pool = (outline: unknown, more: object = {}) =>
    siteWith([{ id: "pool-1", kind: "pool", body: "pool", shell: "unknown", outline }], more);
  const run = async (site: ReturnType<typeof siteWith>, selection: readonly string[]) => {
    const editor = headlessEditor(site);
    editor.view.getState().select(selection);
    runCommand(editor, COMMANDS.get("pool-dimensions"));
    const isAnswered = () => {
      const { notice, reshaping } = editor.view.getState();
      return notice !== null || reshaping !== null;
    };
    await expect.poll(isAnswered).toBe(true);
    return editor.view.getState();
  };

  it("takes up the selected pool", async () => {
    expect(await run(pool(box(0, 0, 384, 192)), ["pool-1"])).toMatchObject({
      tool: "pool-shape",
      shape: "rectangle",
      reshaping: { id: "pool-1", sizes: { length: 384, width: 192, radius: 0 } },
    });
  });

  it("says why it cannot: nothing selected, a free outline, a locked pool", async () => {
    const said = async (site: ReturnType<typeof siteWith>, ids: readonly string[]) =>
      (await run(site, ids)).notice?.text;
    expect(await said(pool(box(0, 0, 384, 192)), [])).toBe("Select one pool first.");
    const free = {
      vertices: [
        [0, 0],
        [300, 0],
        [340, 100],
        [0, 200],
      ],
      closed: true,
    };
    expect(await said(pool(free), ["pool-1"])).toMatch(/^Pool 1 has a free outline/);
    const locked = pool(box(0, 0, 384, 192), { arrangement: { locked: ["pool-1"] } });
    expect(await said(locked, ["pool-1"])).toBe("Pool 1 is locked. Unlock it first.");
  });
});
