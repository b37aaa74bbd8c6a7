// A strip of the perimeter that the ring's course passes beside still has to be served: by copper along it, by its own steel
// or by a grid under it. Source: NEC 680.26(B)(2), restated (the whole of the 3 ft is bonded); lengths: arithmetic.
import { describe, expect, it } from "vitest";
import { box } from "../../../rules/catalogue/common/example-yard.ts";
import { recompute } from "../../../rules/recompute.ts";
import type { Report } from "../../../rules/report.ts";
import { checkSite } from "../../../rules/site/reader.ts";

/** Deck with bare bars round the pool, turf from `out` in. off the south wall over 200 in. of it; four ties to the deck. */
function yardWithTurf(out: number, recorded: readonly object[] = [], edition = "nec-2020"): Report {
  const ties = [
    [96, 0],
    [384, 0],
    [288, 192],
    [0, 192],
  ].map((at, i) => ({ ...clamp, id: `t${i}`, at, joins: ["p", "deck"] }));
  const read = checkSite({
    format: "copperband-site",
    version: 1,
    edition,
    elements: [
      { id: "deck", kind: "surface", outline: box(-60, -60, 444, 252), material: "concrete", steel: "rebar", level: 3 },
      { id: "turf", kind: "surface", outline: box(100, -60, 300, -out), material: "lawn", level: 3 },
      {
        id: "p",
        kind: "pool",
        outline: box(0, 0, 384, 192),
        body: "pool",
        shell: "sprayed-concrete",
        steel: "bare",
        finish: "plaster",
      },
      ...ties,
      ...recorded,
    ],
  });
  if (!read.ok) throw new Error(read.refusal.message);
  return recompute(read.site);
}

const clamp = { kind: "tie", hardware: "listed-clamp", listedForBurial: true, conductorsInClamp: 1 };
const wire = {
  kind: "conductor",
  role: "ring",
  awg: 8,
  solid: true,
  material: "copper",
  covering: "bare",
  cover: 5,
  coverFrom: "subgrade",
  joint: "none",
};
const along = (from: number, to: number) => [
  {
    ...wire,
    id: "w",
    path: {
      closed: false,
      vertices: [
        [from, -21],
        [to, -21],
      ],
    },
  },
  { ...clamp, id: "a", at: [from, -21], joins: ["w", "deck"] },
];
const outcomeOf = (report: Report, element: string) =>
  report.findings.find((f) => f.rule === "perimeter-surfaces" && f.element === element)?.outcome;

describe("a strip beside the ring's course", () => {
  it("is missing while only the deck's steel is tied, and the ring is planned along it", () => {
    for (const out of [26, 30]) {
      const report = yardWithTurf(out);
      expect(outcomeOf(report, "turf")).toBe("missing");
      expect(outcomeOf(report, "deck")).toBe("meets");
      expect(report.missing).toBe(1);
      expect(Math.abs(report.ring.length - 200)).toBeLessThan(0.01);
    }
  });

  it("meets once copper lies along all of it and is joined", () => {
    expect(outcomeOf(yardWithTurf(26, along(99, 301)), "turf")).toBe("meets");
    expect(outcomeOf(yardWithTurf(26, along(99, 200)), "turf")).toBe("missing");
    // Copper that nothing joins to the rest leaves the loop open, whichever surface that is told of.
    expect(yardWithTurf(26, along(99, 301)).missing).toBe(0);
    expect(yardWithTurf(26, along(99, 301).slice(0, 1)).missing).toBe(1);
  });

  it("asks for nothing beyond the band", () => {
    const report = yardWithTurf(36);
    expect(report.missing).toBe(0);
    expect(report.ring.length).toBe(0);
  });

  it("leaves the corners of a strip that the course crosses to the course itself", () => {
    // Lawn from 12 in. out: the course at 21 in. runs in it over its whole length.
    const report = yardWithTurf(12);
    expect(outcomeOf(report, "turf")).toBe("missing");
    expect(Math.abs(report.ring.length - 200)).toBeLessThan(0.01);
  });
});
