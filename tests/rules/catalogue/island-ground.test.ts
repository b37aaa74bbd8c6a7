// Islands without room for a ring: NEC 680.26(B)(2), restated, 18 to 24 in. and 3 ft; areas: arithmetic; that it is asked: common practice, no source.
import { describe, expect, it } from "vitest";
import { box, concretePool } from "../../../rules/catalogue/common/example-yard.ts";
import { rule } from "../../../rules/catalogue/island-ground/rule.ts";
import { recompute } from "../../../rules/recompute.ts";
import { checkSite } from "../../../rules/site/reader.ts";
import { yardOf } from "./yards.ts";

const pool = (...islands: readonly object[]) => concretePool({ islands });
const judge = (elements: readonly object[], head: object = {}) => rule.judge(yardOf(elements, head));

describe("the ground of an island", () => {
  it("is asked about where no loop has room on it, in every edition", () => {
    for (const edition of ["nec-2017", "nec-2020", "nec-2023"]) {
      const [found, ...others] = judge([pool(box(180, 70, 204, 120))], { edition });
      expect(others).toEqual([]);
      expect(found).toMatchObject({
        element: null,
        body: "pool",
        outcome: "review",
        question: { id: "island-ground" },
      });
      expect(found?.measured.area).toBeCloseTo(24 * 50, 0);
    }
    expect(judge([pool(box(180, 70, 204, 120), box(100, 70, 130, 110))])[0]?.measured.area).toBeCloseTo(1200 + 1200, 0);
    expect(judge([pool(box(150, 60, 234, 132))])).toEqual([]);
    expect(judge([pool()])).toEqual([]);
  });

  it("is not asked about where another body of water fills it, or nothing needs bonding there", () => {
    const spa = concretePool({ id: "spa", body: "spa", outline: box(180, 70, 204, 120) });
    expect(judge([pool(box(180, 70, 204, 120)), spa])).toEqual([]);
    const raised = { kind: "surface", material: "composite", support: "raised", supports: "nonconductive", level: 4 };
    const deck = { ...raised, id: "deck", outline: box(180, 70, 204, 120) };
    expect(judge([pool(box(180, 70, 204, 120)), deck], { edition: "nec-2023" })).toEqual([]);
  });

  it("is a question in the report of a pool with a ring recorded all round it", () => {
    const bow = Math.tan(Math.PI / 8);
    const path = {
      vertices: [
        [0, -21],
        [384, -21, bow],
        [405, 0],
        [405, 192, bow],
        [384, 213],
        [0, 213, bow],
        [-21, 192],
        [-21, 0, bow],
      ],
      closed: true,
    };
    const wire = { awg: 8, solid: true, material: "copper", covering: "bare", joint: "none" };
    const ring = { id: "ring", kind: "conductor", role: "ring", path, cover: 5, coverFrom: "subgrade", ...wire };
    const hardware = { hardware: "listed-clamp", listedForBurial: true, conductorsInClamp: 1 };
    const places = [
      [96, 0],
      [384, 0],
      [288, 192],
      [0, 192],
    ];
    const ties = places.map((at, i) => ({ id: `tie-${i}`, kind: "tie", at, joins: ["ring", "pool"], ...hardware }));
    const elements = [pool(box(180, 70, 204, 120)), ring, ...ties];
    const read = checkSite({ format: "copperband-site", version: 1, edition: "nec-2020", elements });
    if (!read.ok) throw new Error(JSON.stringify(read));
    const report = recompute(read.site);
    expect(report.missing).toBe(0);
    expect(report.findings.filter(({ outcome }) => outcome === "review").map((f) => f.rule)).toContain("island-ground");
  });
});
