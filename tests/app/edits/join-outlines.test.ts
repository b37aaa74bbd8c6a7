/** Outlines joined edge to edge. Figures are arithmetic. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Edit } from "../../../app/edits/edit.ts";
import { joinPaths } from "../../../app/edits/join-paths.ts";
import { splitOutline } from "../../../app/edits/split-element.ts";
import { areaFrom, areaOf, pathFrom, pathLength } from "../../../geometry/outline.ts";
import type { PathData, Vertex } from "../../../geometry/types.ts";
import { readSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { runs } from "../../oracles/seed.ts";
import { siteWith } from "../tools/hand.ts";

const outlineOf = (...vertices: readonly Vertex[]): PathData => ({ vertices: [...vertices], closed: true });
const deck = (id: string, outline: PathData, facts: object = {}) => ({
  id,
  kind: "surface",
  material: "concrete",
  outline,
  ...facts,
});
const rectangle = (x: number, y: number, width: number, height: number) =>
  outlineOf([x, y], [x + width, y], [x + width, y + height], [x, y + height]);

function done(site: Site, edit: Edit): Site {
  const result = edit.apply(site);
  if (!result.ok) throw new Error(result.reason);
  const read = readSite(JSON.stringify(result.site));
  if (!read.ok) throw new Error(read.refusal.message);
  return result.site;
}

function reason(site: Site, edit: Edit): string {
  const result = edit.apply(site);
  return result.ok ? "it was done" : result.reason;
}

const outline = (site: Site, id: string) =>
  (site.elements.find((element) => element.id === id) as unknown as { outline: PathData }).outline;
const area = (site: Site, id: string) => areaOf(areaFrom(outline(site, id)));
const around = (site: Site, id: string) => pathLength(pathFrom(outline(site, id)));

describe("two outlines that lie edge to edge", () => {
  const arched = deck("deck-1", outlineOf([0, 0], [240, 0, 0.4], [240, 120], [0, 120, -0.2]), {
    name: "Deck",
    level: 0,
  });

  it("become what they were before a cut, with as many corners, whichever is named first", () => {
    for (const vertices of [arched.outline.vertices, pathFromOtherSide(arched.outline)]) {
      const whole = siteWith([deck("deck-1", { vertices, closed: true }, { name: "Deck", level: 0 })]);
      const cut = done(whole, splitOutline("deck-1", { index: 0, share: 0.5 }, { index: 2, share: 0.5 }));
      expect(cut.elements).toHaveLength(2);
      for (const [one, other] of [
        ["deck-1", "surface-1"],
        ["surface-1", "deck-1"],
      ] as const) {
        const joined = done(cut, joinPaths(one, other));
        expect(joined.elements.map(({ id }) => id)).toEqual([one]);
        expect(area(joined, one)).toBeCloseTo(area(whole, "deck-1"), 6);
        expect(around(joined, one)).toBeCloseTo(around(whole, "deck-1"), 6);
        expect(outline(joined, one).vertices).toHaveLength(4);
      }
    }
  });

  it("so when the cut runs from arc to arc", () => {
    const whole = siteWith([arched]);
    const cut = done(whole, splitOutline("deck-1", { index: 1, share: 0.3 }, { index: 3, share: 0.6 }));
    const joined = done(cut, joinPaths("deck-1", "surface-1"));
    expect(area(joined, "deck-1")).toBeCloseTo(area(whole, "deck-1"), 6);
    expect(outline(joined, "deck-1").vertices).toHaveLength(4);
  });

  it("become what they were, however the outline runs and wherever it was cut", () => {
    const share = fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000);
    const corner = fc.record({ turn: share, reach: share, bend: share });
    const place = fc.record({ side: share, share: fc.oneof(fc.constant(0), share) });
    let count = 0;
    fc.assert(
      fc.property(
        fc.array(corner, { minLength: 3, maxLength: 9 }),
        place,
        place,
        fc.boolean(),
        (drawn, from, to, isOther) => {
          const vertices = drawn.map(({ turn, reach, bend }, i): Vertex => {
            const angle = (2 * Math.PI * (i + 0.4 * turn)) / drawn.length;
            const away = 100 + 300 * reach;
            return [away * Math.cos(angle), away * Math.sin(angle), bend < 0.5 ? 0 : bend - 0.7];
          });
          const whole = siteWith([deck("d", { vertices, closed: true })]);
          const [one, other] = [from, to].map(({ side, share: part }) => ({
            index: Math.min(drawn.length - 1, Math.floor(side * drawn.length)),
            share: part,
          }));
          const cut = one && other ? splitOutline("d", one, other).apply(whole) : null;
          if (!cut?.ok) return;
          const ids = cut.site.elements.map(({ id }) => id);
          const [first, second] = (isOther ? ids.toReversed() : ids) as [string, string];
          const joined = done(cut.site, joinPaths(first, second));
          expect(area(joined, first)).toBeCloseTo(area(whole, "d"), 4);
          expect(around(joined, first)).toBeCloseTo(around(whole, "d"), 4);
          count++;
        },
      ),
      runs(300),
    );
    expect(count).toBeGreaterThan(50);
  });

  it("become one where the one's side is a part of the other's", () => {
    const site = siteWith([deck("a", rectangle(0, 0, 240, 120)), deck("b", rectangle(240, 24, 60, 48))]);
    const joined = done(site, joinPaths("a", "b"));
    expect(area(joined, "a")).toBeCloseTo(240 * 120 + 60 * 48, 6);
    // Round both, without the 48 in. in common.
    expect(around(joined, "a")).toBeCloseTo(2 * (240 + 120) + 2 * (60 + 48) - 2 * 48, 6);
    expect(outline(joined, "a").vertices).toHaveLength(8);
  });

  it("keep the openings of both, and what named the second names the first", () => {
    const hole = rectangle(24, 24, 24, 24);
    const far = rectangle(300, 24, 24, 24);
    const site = siteWith([
      deck("a", rectangle(0, 0, 240, 120), { holes: [hole] }),
      deck("b", rectangle(240, 0, 240, 120), { holes: [far] }),
    ]);
    const [joined] = done(site, joinPaths("a", "b")).elements;
    expect(joined).toMatchObject({ holes: [hole, far] });
    const pools = siteWith([
      { id: "p", kind: "pool", body: "pool", shell: "unknown", outline: rectangle(0, 0, 240, 120) },
      { id: "q", kind: "pool", body: "pool", shell: "unknown", outline: rectangle(240, 0, 60, 120) },
      { id: "light-1", kind: "underwater-light", at: [290, 0], pool: "q", formingShell: "none" },
    ]);
    expect(done(pools, joinPaths("p", "q")).elements[1]).toMatchObject({ id: "light-1", pool: "p" });
  });
});

describe("no outlines are joined", () => {
  it("that only touch at a corner, lie apart, or lie over one another", () => {
    const a = deck("a", rectangle(0, 0, 120, 120));
    for (const other of [rectangle(120, 120, 60, 60), rectangle(300, 0, 60, 60), rectangle(60, 60, 120, 120)]) {
      expect(reason(siteWith([a, deck("b", other)]), joinPaths("a", "b"))).toMatch(/no side in common/);
    }
  });

  it("that would close round a gap, or differ in what has to be given", () => {
    const a = deck("a", outlineOf([0, 0], [240, 0], [240, 40], [80, 40], [80, 80], [240, 80], [240, 120], [0, 120]));
    const b = deck("b", rectangle(240, 0, 60, 120));
    expect(reason(siteWith([a, b]), joinPaths("a", "b"))).toMatch(/more than one stretch/);
    const lawn = { ...deck("b", rectangle(240, 0, 60, 120)), material: "lawn" };
    expect(reason(siteWith([deck("a", rectangle(0, 0, 240, 120)), lawn]), joinPaths("a", "b"))).toMatch(/differ in/);
  });
});

/** The same corners walked the other way. */
function pathFromOtherSide({ vertices }: PathData): Vertex[] {
  const count = vertices.length;
  return vertices.map((_, i): Vertex => {
    const [x, y] = vertices[count - 1 - i] as Vertex;
    return [x, y, -((vertices[(2 * count - 2 - i) % count] as Vertex)[2] ?? 0)];
  });
}
