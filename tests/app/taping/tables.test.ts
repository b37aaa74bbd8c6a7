/** Pasted tables, and what they draw. Common practice, no source; the rectangle is arithmetic. */
import { describe, expect, it } from "vitest";
import { emptySite } from "../../../app/files/empty-site.ts";
import { drawTaped, tapedElements } from "../../../app/taping/draw-taped.ts";
import { isTaping } from "../../../app/taping/keep-taping.ts";
import { readTable } from "../../../app/taping/read-table.ts";
import { solveTaping } from "../../../app/taping/solve-taping.ts";
import { emptyRow, emptyTaping, type Row, type Taping, type Thing } from "../../../app/taping/taping.ts";
import { areaFrom, areaOf } from "../../../geometry/outline.ts";
import type { PoolElement } from "../../../rules/site/elements.ts";

/** Stakes 20 ft apart along the near side of a pool of 20 by 15 ft, 15 ft off. */
const POOL = `Pool
1\t15'\t25'
2\t25'\t15'
3\t36' 0 11/16"\t30'
4\t30'\t36' 0 11/16"

Fence, north
A, 50' , 41', right
B, 41', 50', right
`;

function read(text: string, method: Taping["method"] = "stakes") {
  const table = readTable(text, method, "pool-outline", "ft-in");
  if (!table.ok) throw new Error(`line ${table.line}: ${table.reason}`);
  return table.things;
}

describe("a pasted table", () => {
  it("holds a whole yard: headings begin things, numbers and names of points are not lengths", () => {
    const [pool, fence, ...others] = read(POOL);
    expect(others).toEqual([]);
    expect(pool).toMatchObject({ tool: "pool-outline", name: "" });
    expect(pool?.rows.map(({ first, second }) => [first, second])[2]).toEqual([`36' 0 11/16"`, "30'"]);
    expect(fence).toMatchObject({ tool: "fence", name: "Fence, north" });
    expect(fence?.rows.map(({ side }) => side)).toEqual(["right", "right"]);
  });

  it("may have a head, a check and curves", () => {
    const [thing] = read("Point; From A; From B; Check\n1; 10'; 12'; 4' 6\"; curve\n2; 11'; 12'; 3'");
    expect(thing?.rows[0]).toEqual({ ...emptyRow(), first: "10'", second: "12'", check: "4' 6\"", isCurved: true });
  });

  it("may count its points from 1 again in the next thing", () => {
    const things = read("Pool\n1, 10', 12', 4'\n2, 11', 12'\n3, 11', 14'\nFence\n1, 30', 31'\n2, 31', 30'");
    expect(things.map(({ rows }) => rows.length)).toEqual([3, 2]);
    expect(things[1]?.rows[1]).toMatchObject({ first: "31'", second: "30'", check: "" });
  });

  it("names the line that cannot be read", () => {
    expect(readTable("Pool\n10', 12'\n11'", "stakes", "pool-outline", "ft-in")).toMatchObject({ ok: false, line: 3 });
    expect(readTable("1, 10', twelve", "stakes", "pool-outline", "ft-in")).toMatchObject({
      ok: false,
      line: 1,
      reason: expect.stringContaining("twelve"),
    });
    expect(readTable("\n\n", "stakes", "pool-outline", "ft-in")).toMatchObject({ ok: false });
  });
});

describe("a first cell that may be a number or a length", () => {
  const firsts = (text: string) => read(text).flatMap(({ rows }) => rows.map(({ first }) => first));

  it("is a number where the others have units, or where it counts up from 1", () => {
    expect(firsts("Post\n1, 10', 12'")).toEqual(["10'"]);
    expect(firsts("1, 10', 12'\n2, 11', 12'\n4, 13', 14'")).toEqual(["10'", "11'", "13'"]);
    expect(firsts("101, 10', 12'\n102, 11', 12'")).toEqual(["10'", "11'"]);
    expect(firsts("1, 10, 12\n2, 11, 12\n4, 13, 14")).toEqual(["10", "11", "13"]);
    expect(firsts("No., A, B\n7, 10, 12\n9, 11, 12")).toEqual(["10", "11"]);
  });

  it("is a length where it does not count, and is asked about where it may be either", () => {
    expect(firsts("16, 10, 12\n12, 11, 12")).toEqual(["16", "12"]);
    expect(readTable("101, 10, 12\n102, 11, 12", "stakes", "pool-outline", "ft-in")).toMatchObject({
      ok: false,
      line: 1,
      reason: expect.stringContaining("101"),
    });
  });

  it("along a line a word is no length", () => {
    expect(read("1, 5, left\n2, 5, right", "line")[0]?.rows).toMatchObject([
      { first: "1", second: "5", side: "left" },
      { first: "2", second: "5", side: "right" },
    ]);
  });

  it("may be a letter, R and L too: those are no sides when they come first", () => {
    const rows = read("L, 10', 12'\nR, 10', 12'\nS, 10', 12', R")[0]?.rows;
    expect(rows?.map(({ side }) => side)).toEqual(["left", "left", "right"]);
    expect(read("right, 10', 12'")[0]?.rows[0]?.side).toBe("right");
  });
});

describe("what could be misread", () => {
  const refusal = (text: string) => {
    const table = readTable(text, "stakes", "pool-outline", "m");
    return table.ok ? null : `${table.line}: ${table.reason}`;
  };

  it("decimal commas are refused between tabs, never taken apart", () => {
    expect(refusal("1\t5,03\t4\n2\t6\t4")).toBe('1: "5,03": Use a point for decimals: 5.03.');
    expect(refusal("5,03\t4\t6")).toContain("Use a point for decimals");
    expect(refusal("5,03\t6,1")).toContain("Use a point for decimals");
  });

  it("a row without one length that can be read is no heading: a pool is not cut in two", () => {
    expect(refusal("Pool\n1\t5m\t6m\nP2\t12'6'''\t10x\n3\t4m\t5m")).toMatch(/^3: /);
  });

  it("a head may name the unit of numbers without one", () => {
    const rows = read("No.; A (m); B (m)\n1; 5.03; 4\n2; 6; 12'")[0]?.rows;
    expect(rows).toMatchObject([
      { first: "5.03 m", second: "4 m" },
      { first: "6 m", second: "12'" },
    ]);
    expect(refusal("A (yd); B (yd)\n5; 4")).toBe('1: "yd" is no unit of length.');
  });

  it.each([
    ["Pool deck", "surface"],
    ["Pool fence, north", "fence"],
    ["Fence along the pool", "fence"],
    ["Deck around pool", "surface"],
    ["Inside wall", "pool-outline"],
    ["Pool house", "building"],
    ["Main pool", "pool-outline"],
  ])("%s is drawn as %s", (heading, tool) => {
    expect(read(`${heading}\n10', 12'`)[0]?.tool).toBe(tool);
  });
});

describe("a kept table", () => {
  it("of another version is not taken: the dialog could not show it", () => {
    const kept = emptyTaping("line");
    expect(isTaping(kept)).toBe(true);
    expect(isTaping({ ...kept, method: "three stakes" })).toBe(false);
    expect(isTaping({ ...kept, things: [{ tool: "pond", name: "", rows: [] }] })).toBe(false);
    expect(isTaping({ ...kept, things: [{ tool: "fence", name: "", rows: [{ first: "1" }] }] })).toBe(false);
    expect(isTaping({ ...kept, things: [{ tool: "fence", rows: [] }] })).toBe(false);
    expect(isTaping(null)).toBe(false);
  });
});

describe("what was taped", () => {
  const taping: Taping = { ...emptyTaping("stakes"), apart: "20'", things: read(POOL) };

  it("is drawn in one step, named, and makes the drawing no more exact than the tape", () => {
    const solved = solveTaping(taping, "ft-in");
    expect(solved.faults).toEqual({});
    expect(solved.things.flatMap(({ rows }) => rows.filter(({ isChecked }) => isChecked))).toEqual([]);
    const result = drawTaped(taping, solved, 1).apply(emptySite());
    if (!result.ok) throw new Error(result.reason);
    const [pool, fence] = result.site.elements;
    // 240 by 180 in., to the sixteenths that the diagonals were written in.
    expect(areaOf(areaFrom((pool as PoolElement).outline)) / (240 * 180)).toBeCloseTo(1, 3);
    expect(fence).toMatchObject({ kind: "fence", name: "Fence, north" });
    expect(result.site.accuracy).toBe(1);
  });

  it("is drawn once: what the table has put on the sheet already is passed over, and that is said", () => {
    const solved = solveTaping(taping, "ft-in");
    const once = drawTaped(taping, solved, null).apply(emptySite());
    if (!once.ok) throw new Error(once.reason);
    const twice = drawTaped(taping, solved, null).apply(once.site);
    expect(twice).toMatchObject({ ok: false, reason: "All that was taped is on the sheet already." });
    const [pool, ...others] = taping.things;
    const posts = {
      tool: "metal-point",
      name: "Posts",
      rows: [{ ...emptyRow(), first: "30'", second: "30'" }],
    } as const;
    const more: Taping = { ...taping, things: [pool as Thing, ...others, posts] };
    expect(tapedElements(once.site, more, solveTaping(more, "ft-in")).standing).toEqual([
      "Pool or spa",
      "Fence, north",
    ]);
    const added = drawTaped(more, solveTaping(more, "ft-in"), null).apply(once.site);
    expect(added.ok ? added.site.elements.map(({ kind }) => kind) : added).toEqual(["pool", "fence", "metal"]);
  });

  it("is laid from where the stakes stand, by plan angle or compass", () => {
    const placed = { ...taping, startX: "100in", startY: "-50in", bearing: "90" };
    for (const [bearing, north] of [
      ["90", undefined],
      ["E", 180],
    ] as const) {
      const { start, end } = solveTaping({ ...placed, bearing }, "ft-in", north);
      expect(start).toEqual([100, -50]);
      expect(end?.[0]).toBeCloseTo(100, 9);
      expect(end?.[1]).toBeCloseTo(190, 9);
    }
  });

  it("says what is wrong by row and field, and draws nothing of a thing with an unread row", () => {
    const [pool] = taping.things;
    if (!pool) throw new Error("no pool");
    const rows = [...pool.rows.slice(0, 3), { ...emptyRow(), first: "30'", second: "x" }];
    const solved = solveTaping({ ...taping, tape: "0", things: [{ ...pool, rows }] }, "ft-in");
    expect(solved.faults.tape).toBe("This has to be more than zero.");
    const again = solveTaping({ ...taping, things: [{ ...pool, rows }] }, "ft-in");
    expect(again.things[0]?.rows[3]?.faults[0]).toContain("From B");
    expect(again.things[0]?.path).toBeNull();
    const leftOut = rows.map((row, i) => (i === 3 ? { ...row, isLeftOut: true } : row));
    expect(
      solveTaping({ ...taping, things: [{ ...pool, rows: leftOut }] }, "ft-in").things[0]?.path?.vertices,
    ).toHaveLength(3);
  });

  it("along a straight line, to both sides of it", () => {
    const things = read("Pool\n0, 5'\n20', 5'\n20', 2', right\n0', 2', right", "line");
    const solved = solveTaping({ ...emptyTaping("line"), bearing: "0", things }, "ft-in");
    expect(solved.things[0]?.path?.vertices).toEqual([
      [0, 60],
      [240, 60],
      [240, -24],
      [0, -24],
    ]);
  });

  it("is refused as a whole while a part of it would stay out", () => {
    const refusal = (text: string, apart = "20'") => {
      const taping: Taping = { ...emptyTaping("stakes"), apart, things: read(text) };
      const result = drawTaped(taping, solveTaping(taping, "ft-in"), null).apply(emptySite());
      return result.ok ? null : result.reason;
    };
    expect(refusal(POOL)).toBeNull();
    expect(refusal(POOL.replace("B, 41', 50', right", ""))).toBe(
      "Fence, north: there are not enough points, at least two. Nothing is drawn yet.",
    );
    expect(refusal(POOL, "far")).toMatch(/^Above the table: /);
    const unread: Taping = {
      ...emptyTaping("stakes"),
      apart: "20'",
      things: read(POOL).map((thing) => ({
        ...thing,
        rows: thing.rows.map((row, i) => (thing.name !== "" && i === 1 ? { ...row, second: "wide" } : row)),
      })),
    };
    const result = drawTaped(unread, solveTaping(unread, "ft-in"), null).apply(emptySite());
    expect(result.ok ? null : result.reason).toBe(
      "Fence, north: point 2 cannot be read. Mend it or leave it out; nothing is drawn yet.",
    );
  });

  describe("with a slip in it", () => {
    const corners = [
      [0, 120],
      [192, 120],
      [192, 504],
      [0, 504],
    ] as const;
    const inches = (one: number) => `${one.toFixed(6)}in`;
    const rows = corners.map(([x, y], i): Row => {
      const [px, py] = corners[(i + 3) % 4] as readonly [number, number];
      const [first, second, check] = [Math.hypot(x, y), Math.hypot(x - 240, y), Math.hypot(x - px, y - py)].map(inches);
      return { ...emptyRow(), first: first ?? "", second: second ?? "", check: check ?? "" };
    });
    const of = (changed: readonly Row[]): Taping => ({
      ...emptyTaping("stakes"),
      apart: "20'",
      things: [{ tool: "pool-outline", name: "Main", rows: changed }],
    });
    const refusal = (taping: Taping) => {
      const result = drawTaped(taping, solveTaping(taping, "ft-in"), null).apply(emptySite());
      return result.ok ? null : result.reason;
    };

    it("draws nothing before the point is taped again or left out", () => {
      expect(refusal(of(rows))).toBeNull();
      const slipped = rows.map((row, i) => (i === 2 ? { ...row, first: inches(Math.hypot(192, 504) + 12) } : row));
      expect(refusal(of(slipped))).toMatch(/^Main, point \d is in doubt\. .*Tape it again or leave it out/);
      expect(refusal(of(slipped.map((row, i) => (i === 2 ? { ...row, isLeftOut: true } : row))))).toBeNull();
    });

    it("asks for no absurd accuracy: a point in doubt, which is not drawn, has no part in it", () => {
      const [first, second] = rows as [Row, Row];
      const short = [{ ...first, check: "" }, second, { ...first, first: "2'", second: "3'", check: "" }];
      const solved = solveTaping(of(short), "ft-in");
      expect(solved.things[0]?.rows[2]?.doubts[0]).toContain("do not reach each other");
      expect(solved.between).toBeLessThan(5);
      expect(refusal(of(short))).toContain("point 3 is in doubt. The two tapes do not reach each other");
    });

    it("a point on the stakes' line asks for a tape from a neighbor, and is drawn with one", () => {
      const [first, second] = rows as [Row, Row];
      const begin = { ...first, check: "" };
      const flat = { ...emptyRow(), first: "96in", second: "144in" };
      expect(refusal(of([begin, second, flat]))).toContain("cross at 0 degrees only");
      const checked = { ...flat, check: inches(Math.hypot(192 - 96, 120)) };
      expect(refusal(of([begin, second, checked]))).toBeNull();
    });

    it("a check leads to nothing while the point before is left out or cannot be read", () => {
      for (const change of [{ isLeftOut: true }, { second: "wide" }] satisfies Partial<Row>[]) {
        for (const at of [0, 1, 3]) {
          const solved = solveTaping(of(rows.map((row, i) => (i === at ? { ...row, ...change } : row))), "ft-in");
          const [thing] = solved.things;
          expect(thing?.rows.flatMap(({ doubts }) => doubts)).toEqual([]);
          expect(thing?.rows[(at + 1) % 4]?.residuals?.check).toBeNull();
          expect(thing?.rows[(at + 2) % 4]?.residuals?.check).toBeCloseTo(0, 4);
        }
      }
    });

    it("the accuracy that it asks for covers both ends of a distance", () => {
      const { between, spread } = solveTaping(of(rows), "ft-in");
      // Half an inch on every tape: at square tapes alone 0.71 in. for each end.
      expect(spread).toBeGreaterThan(Math.SQRT1_2);
      expect(between).toBeGreaterThan(2 * Math.SQRT1_2);
      expect(between).toBeLessThan(2 * 8 * 0.5);
    });
  });
});
