/** The one door to the document: steps, gestures, refusals. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { deleteElements } from "../../../app/edits/delete-elements.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { moveVertex } from "../../../app/edits/move-vertex.ts";
import { setField } from "../../../app/edits/set-field.ts";
import { STEPS_KEPT } from "../../../app/site-document/history.ts";
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

  it("older than the last hundreds fall off the far end", () => {
    const store = opened();
    for (let i = 1; i <= STEPS_KEPT + 5; i++) now(store).edit(setField("pool-1", "depth", i + 1000));
    expect(now(store).history.past).toHaveLength(STEPS_KEPT);
    now(store).go(-STEPS_KEPT);
    expect(field(now(store).shown, "pool-1", "depth")).toBe(1005);
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
    now(store).undo();
    expect(now(store).history.future.map(({ label }) => label)).toEqual(["Delete statue 1"]);
    now(store).beginGesture("Move");
    now(store).preview(moveElements(["pump-1"], 70, 0));
    const other = sampleYard();
    now(store).open(other, FILE);
    expect(now(store)).toMatchObject({ shown: other, gesture: null, refusal: null });
    expect(now(store).history).toEqual({ past: [], present: other, future: [] });
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
