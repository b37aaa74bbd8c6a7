/** Pasted tables, and what they draw. Common practice, no source; the rectangle is arithmetic. */
import { describe, expect, it } from "vitest";
import { emptySite } from "../../../app/files/empty-site.ts";
import { drawTaped } from "../../../app/taping/draw-taped.ts";
import { readTable } from "../../../app/taping/read-table.ts";
import { solveTaping } from "../../../app/taping/solve-taping.ts";
import { emptyRow, emptyTaping, type Taping } from "../../../app/taping/taping.ts";
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

describe("what was taped", () => {
  const taping: Taping = { ...emptyTaping("stakes"), apart: "20'", things: read(POOL) };

  it("is drawn in one step, named, and makes the drawing no more exact than the tape", () => {
    const solved = solveTaping(taping, "ft-in");
    expect(solved.faults).toEqual({});
    expect(solved.isChecked).toBe(false);
    const result = drawTaped(taping, solved, 1).apply(emptySite());
    if (!result.ok) throw new Error(result.reason);
    const [pool, fence] = result.site.elements;
    // 240 by 180 in., to the sixteenths that the diagonals were written in.
    expect(areaOf(areaFrom((pool as PoolElement).outline)) / (240 * 180)).toBeCloseTo(1, 3);
    expect(fence).toMatchObject({ kind: "fence", name: "Fence, north" });
    expect(result.site.accuracy).toBe(1);
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
});
