/** The one door to the document: steps, gestures, refusals. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { deleteElements } from "../../../app/edits/delete-elements.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { moveVertex } from "../../../app/edits/move-vertex.ts";
import { setField } from "../../../app/edits/set-field.ts";
import { MOST_STEPS, MOST_WEIGHT, SURE_STEPS, startHistory, step } from "../../../app/site-document/history.ts";
import { createDocumentStore, type DocumentStore } from "../../../app/site-document/store.ts";
import { field, sampleYard } from "../edits/yard.ts";

const FILE = { name: "sample.site.json", saved: null };

function opened(): DocumentStore {
  return createDocumentStore(sampleYard(), FILE);
}

const now = (store: DocumentStore) => store.getState();

describe("steps", () => {
  it("carry the words of the edit back and forth", () => {
    const store = opened();
    const start = now(store).history.present;
    now(store).edit(moveElements(["fence-1"], 5, 0));
    now(store).edit(setField("fence-1", "top", 72));
    const end = now(store).history.present;
    expect(now(store).history.past.map(({ label }) => label)).toEqual(["Move fence 1", "Set top of fence 1"]);
    now(store).undo();
    expect(now(store).history.future.map(({ label }) => label)).toEqual(["Set top of fence 1"]);
    now(store).undo();
    expect(now(store).history.present).toBe(start);
    now(store).undo();
    expect(now(store).history.present).toBe(start);
    now(store).go(2);
    expect(now(store).history.present).toBe(end);
    now(store).go(-99);
    expect(now(store).shown).toBe(start);
  });

  it("that change nothing are none, and a new step ends the way forward", () => {
    const store = opened();
    now(store).edit(moveElements(["fence-1"], 0, 0));
    expect(now(store).history.past).toEqual([]);
    expect(now(store).revision).toBe(1);
    now(store).edit(moveElements(["fence-1"], 1, 0));
    now(store).undo();
    now(store).edit(setField("fence-1", "top", 72));
    expect(now(store).history.future).toEqual([]);
  });

  it("that are refused change nothing and say why until the next one is taken", () => {
    const store = opened();
    const before = now(store);
    const refusal = now(store).edit(setField("pool-1", "depth", -1));
    expect(refusal?.field).toBe("depth");
    expect(now(store).history).toBe(before.history);
    expect(now(store).revision).toBe(before.revision);
    expect(now(store).refusal).toBe(refusal);
    now(store).edit(setField("pool-1", "depth", 1));
    expect(now(store).refusal).toBeNull();
  });

  it("beyond the most that are kept fall off the far end", () => {
    const yard = sampleYard();
    let history = startHistory(yard);
    const sites = Array.from({ length: MOST_STEPS + 5 }, (_, i) => ({ ...yard, grade: i }));
    for (const site of sites) history = step(history, site, "Set grade");
    expect(history.past).toHaveLength(MOST_STEPS);
    expect(history.dropped).toBe(5);
    expect(history.past[0]?.site).toBe(sites[4]);
  });

  it("that each hold on to many elements are fewer, and some stay whatever they weigh", () => {
    const yard = sampleYard();
    const large = (count: number) => ({
      ...yard,
      elements: Array.from({ length: count }, (_, i) => ({
        id: `metal-${i}`,
        kind: "metal" as const,
        shape: { point: [0, 0] as [number, number] },
      })),
    });
    // Every step replaces all of 20,000 elements: 20,000 and 1, and a thirtieth for the list, each.
    let history = startHistory(large(20_000));
    for (let i = 0; i < 40; i++) history = step(history, large(20_000), "Move all");
    const each = 20_001 + 20_000 / 30;
    expect(history.past).toHaveLength(Math.max(SURE_STEPS, Math.floor(MOST_WEIGHT / each)));
    expect(history.past.length + history.dropped).toBe(40);
    // Steps that share all but one element weigh little.
    let light = startHistory(large(20_000));
    for (let i = 0; i < 40; i++) {
      const [, ...rest] = light.present.elements;
      light = step(
        light,
        { ...light.present, elements: [{ ...large(1).elements[0]!, id: `new-${i}` }, ...rest] },
        "Move one",
      );
    }
    expect(light.past).toHaveLength(40);
    expect(light.weight).toBeCloseTo(40 * (2 + 20_000 / 30), 6);
  });
});

describe("a gesture", () => {
  it("shows each position from the start, and is one step", () => {
    const store = opened();
    const start = now(store).history.present;
    now(store).beginGesture("Move");
    for (let i = 1; i <= 10; i++) {
      now(store).preview(moveElements(["pump-1"], i, 0));
      expect(field(now(store).shown, "pump-1", "at")).toEqual([520 + i, 220]);
      expect(now(store).history.present).toBe(start);
    }
    expect(now(store).revision).toBe(11);
    now(store).commitGesture();
    expect(now(store).history.past.map(({ label }) => label)).toEqual(["Move pump 1"]);
    expect(field(now(store).history.present, "pump-1", "at")).toEqual([530, 220]);
    expect(now(store).gesture).toBeNull();
    now(store).undo();
    expect(now(store).history.present).toBe(start);
  });

  it("given up returns to the start exactly, and leaves no step", () => {
    const store = opened();
    const start = now(store).history.present;
    now(store).beginGesture("Move");
    now(store).preview(moveElements(["pump-1"], 0.1, 0.2));
    now(store).cancelGesture();
    expect(now(store).shown).toBe(start);
    expect(now(store).history.past).toEqual([]);
    now(store).commitGesture();
    expect(now(store).shown).toBe(start);
  });

  it("that ends where it began leaves no step", () => {
    const store = opened();
    now(store).beginGesture("Move");
    now(store).preview(moveElements(["pump-1"], 7, 0));
    now(store).preview(moveElements(["pump-1"], 0, 0));
    now(store).commitGesture();
    expect(now(store).history.past).toEqual([]);
  });

  it("over a refused position keeps the last good one and says why; ended there it springs back", () => {
    const store = opened();
    const start = now(store).history.present;
    const corner = (x: number, y: number) => moveVertex("deck-1", { field: "outline" }, 2, [x, y]);
    now(store).beginGesture("Move a corner");
    now(store).preview(corner(510, 260));
    const good = now(store).shown;
    const refusal = now(store).preview(corner(200, -200));
    expect(refusal?.reason).toBe("The outline would cross itself between corner 1 and corner 3.");
    expect(now(store).shown).toBe(good);
    now(store).commitGesture();
    expect(now(store).shown).toBe(start);
    expect(now(store).history.past).toEqual([]);
    expect(now(store).refusal).toBe(refusal);
  });

  it("that comes back from a refused position goes on", () => {
    const store = opened();
    now(store).beginGesture("Move a corner");
    now(store).preview(moveVertex("deck-1", { field: "outline" }, 2, [200, -200]));
    now(store).preview(moveVertex("deck-1", { field: "outline" }, 2, [505, 255]));
    expect(now(store).refusal).toBeNull();
    now(store).commitGesture("Stretch the deck");
    expect(now(store).history.past.map(({ label }) => label)).toEqual(["Stretch the deck"]);
  });

  it("is ended by another edit, and given up by undo and by another site", () => {
    const store = opened();
    now(store).beginGesture("Move");
    now(store).preview(moveElements(["pump-1"], 7, 0));
    now(store).edit(deleteElements(["statue-1"]));
    expect(now(store).history.past.map(({ label }) => label)).toEqual(["Move pump 1", "Delete statue 1"]);
    now(store).beginGesture("Move");
    now(store).preview(moveElements(["pump-1"], 70, 0));
    // Undo takes back what is under way, and no step behind it.
    const { shown } = now(store);
    now(store).undo();
    expect(now(store).shown).not.toBe(shown);
    expect(now(store)).toMatchObject({ gesture: null, history: { future: [] } });
    now(store).undo();
    expect(now(store).history.future.map(({ label }) => label)).toEqual(["Delete statue 1"]);
    now(store).beginGesture("Move");
    now(store).preview(moveElements(["pump-1"], 70, 0));
    const other = sampleYard();
    now(store).open(other, FILE);
    expect(now(store)).toMatchObject({ shown: other, gesture: null, refusal: null });
    expect(now(store).history).toMatchObject({ past: [], present: other, future: [] });
  });
});

describe("saving", () => {
  it("marks the snapshot that was written, not what came after", () => {
    const store = opened();
    const written = now(store).history.present;
    now(store).edit(moveElements(["pump-1"], 1, 0));
    now(store).markSaved("a.site.json", written);
    expect(now(store).file).toEqual({ name: "a.site.json", saved: written });
    now(store).markSaved("a.site.json");
    expect(now(store).file.saved).toBe(now(store).history.present);
  });
});

describe("a site that is only looked at", () => {
  it("refuses every change with the reason, also of undo, and takes them again once it is let go", () => {
    const store = opened();
    now(store).edit(moveElements(["pump-1"], 1, 0));
    now(store).beginGesture("Move");
    now(store).preview(moveElements(["pump-1"], 5, 0));
    const before = now(store).history;
    now(store).lock("It is open in another tab.");
    expect(now(store).shown).toBe(before.present);
    expect(now(store).edit(moveElements(["pump-1"], 1, 0))?.reason).toBe("It is open in another tab.");
    now(store).beginGesture("Move");
    expect(now(store).preview(moveElements(["pump-1"], 1, 0))?.reason).toBe("It is open in another tab.");
    now(store).commitGesture();
    now(store).undo();
    expect(now(store).history).toEqual(before);
    expect(now(store).refusal?.reason).toBe("It is open in another tab.");
    now(store).lock(null);
    expect(now(store).refusal).toBeNull();
    now(store).undo();
    expect(now(store).history.future).toHaveLength(1);
  });
});
