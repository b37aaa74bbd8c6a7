/**
 * A hand that does anything at any moment: whatever comes, the site can be read again, nothing is left running, and what is
 * shown has a place. Random, no source.
 */
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { TOOLS } from "../../../app/commands/tool-commands.ts";
import { deleteElements } from "../../../app/edits/delete-elements.ts";
import { setField } from "../../../app/edits/set-field.ts";
import { recognized } from "../../../app/pool-shapes/recognize.ts";
import type { PoolElement } from "../../../rules/site/elements.ts";
import { checkSite } from "../../../rules/site/reader.ts";
import { runs } from "../../oracles/seed.ts";
import { sample } from "../../rules/site/sample-site.ts";
import { type Hand, handAt, siteWith } from "./hand.ts";

const KEYS = [
  "Enter",
  "Backspace",
  "Delete",
  "a",
  "r",
  "t",
  "v",
  "q",
  "n",
  "ArrowLeft",
  "ArrowUp",
  ".",
  ",",
  "Insert",
  "C",
];
const TEXTS = ["10'", "0", "-3'", "45", "1/2", "x", "100in", "360", "1e-9in", "999999in", "N 45 E"];
/** Places that come again, so that corners fall together, and one at the edge of what a site may reach. */
const PLACES = [
  [0, 0],
  [100, 0],
  [100, 100],
  [0, 100],
  [240, 120],
  [50, 50],
  [1e6, 0],
] as const;
const STEADY = new Set(["select", "pool-rectangle"]);

interface Dice {
  readonly act: number;
  readonly which: number;
  readonly x: number;
  readonly y: number;
  readonly held: {
    readonly alt: boolean;
    readonly shift: boolean;
    readonly isTouch: boolean;
    readonly isDouble: boolean;
  };
}

const dice: fc.Arbitrary<Dice> = fc.record({
  act: fc.nat(17),
  which: fc.nat(1000),
  x: fc.integer({ min: -100, max: 500 }),
  y: fc.integer({ min: -100, max: 400 }),
  held: fc.record({ alt: fc.boolean(), shift: fc.boolean(), isTouch: fc.boolean(), isDouble: fc.boolean() }),
});

const of = <T>(all: readonly T[], which: number): T => all[which % all.length] as T;

/** One thing that the hand does; some of them wait for a tool's code. */
async function act(hand: Hand, { act, which, x, y, held }: Dice): Promise<void> {
  const { document, view } = hand;
  const { shown } = document.getState();
  const one = shown.elements.length === 0 ? null : of(shown.elements, which);
  const [px, py] = which % 2 === 0 ? of(PLACES, which / 2) : ([x, y] as const);
  if (act < 3) hand.click(px, py, held);
  else if (act === 3) hand.down(px, py, held);
  else if (act === 4) hand.up(px, py, held);
  else if (act < 7) hand.move(px, py, held);
  else if (act === 7) hand.host.abandonPress();
  else if (act === 8) hand.key(of(KEYS, which), held.shift);
  else if (act === 9) {
    const field = of(hand.host.state.getState().entry?.fields ?? [null], which);
    if (field) hand.host.type(field.name, of(TEXTS, x + 100));
  } else if (act === 10) hand.host.enter();
  else if (act === 11) hand.host.cancel();
  else if (act === 12) document.getState().undo();
  else if (act === 13) document.getState().redo();
  else if (act === 14 && one) document.getState().edit(deleteElements([one.id]));
  else if (act === 15 && one) document.getState().edit(setField(one.id, "name", `N${which}`));
  else if (act === 16 && one) view.getState().select([one.id]);
  else {
    const pool = shown.elements.find(({ kind }) => kind === "pool") as PoolElement | undefined;
    const found = pool && which % 4 === 0 ? recognized(pool.outline) : null;
    if (pool && found) view.getState().reshapePool({ id: pool.id, ...found, ...found.placing });
    else hand.take(of(TOOLS, which).tool);
    await vi.dynamicImportSettled();
  }
}

function hasPlaces(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  return typeof value !== "object" || value === null || Object.values(value).every(hasPlaces);
}

describe("whatever a hand does", () => {
  it.each([
    ["an empty sheet", () => siteWith()],
    [
      "one of everything",
      () => {
        const read = checkSite(sample());
        if (!read.ok) throw new Error("the sample cannot be read");
        return read.site;
      },
    ],
  ])("on %s, the site stays whole", async (_, begin) => {
    await fc.assert(
      fc.asyncProperty(fc.array(dice, { minLength: 60, maxLength: 120 }), async (all) => {
        const hand = handAt(begin());
        for (const one of all) {
          await act(hand, one);
          expect(hasPlaces(hand.host.overlay())).toBe(true);
          const { shown, gesture } = hand.document.getState();
          const read = checkSite(JSON.parse(JSON.stringify(shown)));
          expect(read.ok ? [] : read.refusal.problems).toEqual([]);
          if (!STEADY.has(hand.view.getState().tool)) expect(gesture).toBeNull();
        }
      }),
      runs(4),
    );
  });
});
