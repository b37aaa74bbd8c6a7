/**
 * The laws of undo over a long day: 10,000 random edits, back to the very start, forward again to the very end, every
 * step on the way identical. Expectations are arithmetic.
 *
 * Terms. An edit is "taken" when it is not refused and changes something: only those count toward the 10,000.
 */
import { expect, it } from "vitest";
import { createDocumentStore } from "../../app/site-document/store.ts";
import { checkSite } from "../../rules/site/reader.ts";
import { deepFreeze, sampleYard } from "../app/edits/yard.ts";
import { seed } from "../oracles/seed.ts";
import { type Dice, VERBS } from "../support/random-edits.ts";

const EDITS = 10_000;
/** Elements above which the next edits take some away, so that the yard stays a yard. */
const CROWDED = 30;
const TAKE_AWAY = VERBS.findIndex((make) => make(sampleYard(), Array(10).fill(0)).label.startsWith("Delete"));

/** Numbers from 0 to 1, the same for the same seed: a linear congruence of full period (Hull and Dobell, 1962). */
function numbersFrom(start: number): () => number {
  let state = start >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

it(`${EDITS} random edits lead back to the start and forward again, step by step identical`, () => {
  const next = numbersFrom(seed);
  const start = deepFreeze(sampleYard());
  const store = createDocumentStore(start, { name: "", saved: null });
  const now = () => store.getState();
  /** The text of the site after each step: what was, kept apart from the history that is on trial. */
  const texts = [JSON.stringify(start)];
  const labels: string[] = [];
  const verbs = new Set<number>();
  for (let tries = 0; labels.length < EDITS; tries++) {
    if (tries > 20 * EDITS) throw new Error(`only ${labels.length} edits of ${tries} were taken`);
    const site = now().history.present;
    const verb = site.elements.length > CROWDED ? TAKE_AWAY : Math.floor(next() * VERBS.length);
    const dice: Dice = Array.from({ length: 10 }, next);
    const edit = VERBS[verb]!(site, dice);
    const isGesture = next() < 0.3;
    if (isGesture) {
      now().beginGesture(edit.label);
      now().preview(VERBS[verb]!(site, dice.toReversed()));
      now().preview(edit);
      now().commitGesture();
    } else now().edit(edit);
    if (now().history.present === site) continue;
    verbs.add(verb);
    texts.push(JSON.stringify(now().history.present));
    labels.push(now().history.past.at(-1)?.label ?? "");
    if (labels.length % 500 === 0) expect(checkSite(now().shown)).toMatchObject({ ok: true });
  }
  expect(verbs.size).toBeGreaterThan(VERBS.length * 0.8);
  expect(labels.every((label) => label.trim() !== "")).toBe(true);
  const end = now().history.present;
  expect(now().history.past.map(({ label }) => label)).toEqual(labels);

  for (let i = EDITS; i > 0; i--) {
    if (JSON.stringify(now().shown) !== texts[i]) throw new Error(`step ${i} on the way back is another site`);
    now().undo();
  }
  expect(now().shown).toBe(start);
  expect(now().shown).toEqual(sampleYard());
  expect(now().history.past).toEqual([]);
  now().undo();
  expect(now().shown).toBe(start);

  for (let i = 1; i <= EDITS; i++) {
    now().redo();
    if (JSON.stringify(now().shown) !== texts[i]) throw new Error(`step ${i} on the way forward is another site`);
  }
  expect(now().shown).toBe(end);
  expect(now().shown).toEqual(JSON.parse(texts[EDITS] ?? ""));
  expect(now().history.future).toEqual([]);
  expect(now().history.past.map(({ label }) => label)).toEqual(labels);

  // In one go each way, as from the list of steps, and to a place in the middle.
  now().go(-EDITS);
  expect(now().shown).toBe(start);
  now().go(EDITS / 2);
  expect(JSON.stringify(now().shown)).toBe(texts[EDITS / 2]);
  expect(now().history.future[0]?.label).toBe(labels[EDITS / 2]);
  now().go(EDITS);
  expect(now().shown).toBe(end);
});
