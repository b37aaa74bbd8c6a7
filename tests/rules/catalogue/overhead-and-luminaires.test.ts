// NEC 680.9 and 680.22(B), restated; what is argued: common practice, no source. Distances: arithmetic.
import { describe, expect, it } from "vitest";
import { box, concretePool, deck, linerPool } from "../../../rules/catalogue/common/example-yard.ts";
import { rule as luminaires } from "../../../rules/catalogue/luminaire-height/rule.ts";
import { rule as overhead } from "../../../rules/catalogue/overhead-clearance/rule.ts";
import { EDITION_IDS } from "../../../rules/editions/edition.ts";
import { verdictOf, yardOf } from "./yards.ts";

describe("overhead lines", () => {
  /** Level, along the pool's long side; `out` inches from the inside wall, negative over the water. */
  const wire = (out: number, z: number, kind = "communications", changes: object = {}) => ({
    id: "it",
    kind: "overhead-line",
    path: {
      closed: false,
      vertices: [
        [-500, 192 + out, z],
        [900, 192 + out, z],
      ],
    },
    class: kind,
    sag: 0,
    ...changes,
  });
  const of = (elements: readonly object[], head: object = {}, pool: object = concretePool()) =>
    verdictOf(overhead, yardOf([pool, ...elements], head), "it");
  const structure = (kind: string, changes: object = {}) => ({
    id: "stand",
    kind: "structure",
    outline: box(150, 250, 250, 290),
    structure: kind,
    top: 60,
    ...changes,
  });
  /** The highest that a wire right over the edge of the prism may hang to be exactly this clear of the water's edge. */
  const atEdge = (clear: number) => Math.sqrt(clear * clear - 120 * 120);

  it.each([
    ["insulated-750", 270, "680.9(A)"],
    ["to-15kv", 300, "680.9(A)"],
    ["to-50kv", 324, "680.9(A)"],
    ["broadband", 270, "680.9(C)"],
  ])("%s clear the water by %s in., in any direction", (kind, limit, section) => {
    for (const edition of EDITION_IDS) {
      expect(of([wire(120, atEdge(limit), kind)], { edition })).toMatchObject({ outcome: "meets", section });
      expect(of([wire(120, atEdge(limit) - 0.02, kind)], { edition }).outcome).toBe("conflict");
      const over = of([wire(-96, limit, kind)], { edition });
      expect(over).toMatchObject({ outcome: "review", measured: { clearance: limit, vertical: limit }, margin: 0 });
      expect(of([wire(-96, limit - 0.01, kind)], { edition }).outcome).toBe("conflict");
    }
  });

  it("communications lines clear it by 10 ft, also right over the water", () => {
    expect(of([wire(-96, 120)])).toMatchObject({ outcome: "meets", section: "680.9(B)", margin: 0 });
    expect(of([wire(-96, 119.99)]).outcome).toBe("conflict");
    expect(of([wire(96, 72)])).toMatchObject({ outcome: "meets", measured: { horizontal: 96, clearance: 120 } });
    expect(of([wire(96, 71.9)]).outcome).toBe("conflict");
  });

  it("beyond 10 ft of the inside wall are free, with the way that is left", () => {
    expect(of([wire(120.01, 20)])).toMatchObject({ outcome: "exempt", required: { horizontal: 120 } });
    expect(of([wire(120, 20)]).outcome).not.toBe("exempt");
    expect(of([wire(120.5, 20, "insulated-750")], { accuracy: 1 }).outcome).toBe("review");
    expect(of([wire(121.5, 20, "insulated-750")], { accuracy: 1 }).outcome).toBe("exempt");
  });

  it("are told from the body of water that they come nearest to in space", () => {
    // Arithmetic: a line that falls from over the pool to over the spa hangs lowest, and so nearest, over the spa.
    const spa = concretePool({ id: "spa", body: "spa", outline: box(420, 60, 500, 140) });
    const vertices = [
      [0, 100, 300],
      [500, 100, 200],
    ];
    for (const bodies of [
      [concretePool(), spa],
      [spa, concretePool()],
    ]) {
      const found = of(
        [
          spa === bodies[0] ? bodies[1] : spa,
          wire(0, 0, "communications", { path: { closed: false, vertices } }),
        ] as object[],
        {},
        bodies[0] as object,
      );
      expect(found).toMatchObject({ outcome: "meets", body: "spa" });
      expect(found.measured.clearance).toBeCloseTo(200, 6);
    }
  });

  it("hang by their sag, and are asked about without it", () => {
    const sagging = (sag: number | undefined) => {
      const vertices = [
        [192, -500, 140],
        [192, 692, 140],
      ];
      return of([{ ...wire(0, 0), path: { closed: false, vertices }, sag }]);
    };
    expect(sagging(20)).toMatchObject({ outcome: "meets", measured: { clearance: 120 } });
    expect(sagging(20.01).outcome).toBe("conflict");
    expect(sagging(undefined)).toMatchObject({ outcome: "review" });
    expect(sagging(undefined).question?.text).toContain("`sag`");
    const tooLow = of([wire(-96, 100, "communications", { sag: undefined })]);
    expect(tooLow.outcome).toBe("conflict");
  });

  it("whose heights are not given are a question, unless they are far", () => {
    const flat = {
      closed: false,
      vertices: [
        [-500, 100],
        [900, 100],
      ],
    };
    expect(of([{ ...wire(0, 0), path: flat }]).question?.text).toContain("`z`");
    const far = {
      closed: false,
      vertices: [
        [-500, 900],
        [900, 900],
      ],
    };
    expect(of([{ ...wire(0, 0), path: far }]).outcome).toBe("exempt");
  });

  it("clear stands, towers and platforms by their own distance, over the whole of them", () => {
    const wireOver = (z: number) => wire(80, z, "insulated-750");
    // 174 in. above a tower of 60 in.: 234; the water's edge is 80 in. off in plan, hypot(80, 258) = 270.1.
    expect(of([structure("tower"), wireOver(258)]).outcome).toBe("review");
    expect(of([structure("tower", { top: 84.01 }), wireOver(258)]).outcome).toBe("conflict");
    expect(of([structure("tower", { top: 84 }), wireOver(258)])).toMatchObject({ outcome: "review" });
    expect(of([structure("tower", { top: undefined }), wireOver(258)])).toMatchObject({ outcome: "review" });
    const away = structure("stand", { outline: box(150, 400, 250, 440), top: 60 });
    expect(of([away, wire(220, 60 + 174, "insulated-750")]).outcome).toBe("meets");
    expect(of([away, wire(220, 60 + 173.99, "insulated-750")]).outcome).toBe("conflict");
    expect(of([wire(220, 20, "insulated-750")]).outcome).toBe("exempt");
    // The base of a diving platform counts like the water: 270 in.
    const platform = structure("platform", { outline: box(150, 400, 250, 440), top: 36 });
    expect(of([platform, wire(220, 270, "insulated-750")]).outcome).toBe("meets");
    expect(of([platform, wire(220, 269.99, "insulated-750")]).outcome).toBe("conflict");
    expect(of([wire(100, 130)]).outcome).toBe("meets");
    expect(of([structure("slide", { top: 36 }), wire(100, 130)]).outcome).toBe("review");
    const raft = structure("raft", { outline: box(150, 80, 250, 120), top: 6 });
    expect(of([raft, wire(-92, 126)]).outcome).toBe("meets");
    expect(of([raft, wire(-92, 125.99)]).outcome).toBe("conflict");
    // Not given how high it lies: a question (the site format).
    expect(of([{ ...raft, top: undefined }, wire(-92, 126)]).question?.text).toContain("`top of stand`");
    const under = deck({ outline: box(140, 390, 260, 450), level: 1 });
    expect(of([under, platform, wire(220, 270, "insulated-750")]).outcome).toBe("conflict");
    const unsure = of([{ ...under, level: undefined }, platform, wire(220, 271, "insulated-750")]);
    expect(unsure).toMatchObject({ outcome: "review" });
    expect(unsure.question?.text).toContain("`level of deck`");
  });

  it.each([
    ["to-15kv", 204],
    ["to-50kv", 216],
    ["broadband", 174],
    ["communications", 120],
  ])("%s clear stands by %s in.", (kind, limit) => {
    const away = structure("stand", { outline: box(150, 400, 250, 440), top: 60 });
    expect(of([away, wire(220, 60 + limit, kind)]).outcome).toBe("meets");
    expect(of([away, wire(220, 60 + limit - 0.01, kind)]).outcome).toBe("conflict");
  });

  it("within the accuracy of the drawing are a question", () => {
    expect(of([wire(-96, 120.5)], { accuracy: 1 }).outcome).toBe("review");
    expect(of([wire(-96, 119.5)], { accuracy: 1 }).outcome).toBe("review");
    expect(of([wire(-96, 118)], { accuracy: 1 }).outcome).toBe("conflict");
  });

  it("are judged over the pool's own water level, storable pools too", () => {
    expect(of([wire(-96, 138)], {}, concretePool({ waterLevel: 18 })).outcome).toBe("meets");
    expect(of([wire(-96, 137.99)], {}, concretePool({ waterLevel: 18 })).outcome).toBe("conflict");
    const storable = linerPool({ installation: "on-ground", storable: true, waterLevel: 42 });
    expect(of([wire(-96, 161)], {}, storable).outcome).toBe("conflict");
  });

  it("inside 10 ft are argued, and the answer settles it", () => {
    const answers = (answer: string) => ({ answers: [{ question: "overhead-clearance", element: "it", answer }] });
    expect(of([wire(-96, 300, "insulated-750")], answers("yes")).outcome).toBe("meets");
    expect(of([wire(-96, 300, "insulated-750")], answers("no")).outcome).toBe("conflict");
    expect(of([wire(-96, 269, "insulated-750")], answers("yes")).outcome).toBe("conflict");
  });
});

describe("luminaires", () => {
  const lamp = (distance: number, changes: object = {}) => ({
    id: "it",
    kind: "device",
    device: "luminaire",
    at: [200, 192 + distance],
    z: 100,
    indoor: false,
    gfci: true,
    rigidlyAttached: true,
    totallyEnclosed: true,
    ...changes,
  });
  const of = (changes: object, distance = 30, head: object = {}, more: readonly object[] = []) =>
    verdictOf(luminaires, yardOf([concretePool(), ...more, lamp(distance, changes)], head), "it");

  it.each(EDITION_IDS)("new and outdoors hang 12 ft up to 5 ft off, under %s", (edition) => {
    for (const distance of [-60, 0, 60]) {
      expect(of({ z: 144, gfci: false }, distance, { edition })).toMatchObject({
        outcome: "meets",
        section: "680.22(B)(1)",
      });
      expect(of({ z: 143.99 }, distance, { edition }).outcome).toBe("conflict");
    }
    expect(of({ z: 10 }, 60.01, { edition })).toMatchObject({ outcome: "meets", section: "680.22(B)(4)" });
    expect(of({ device: "fan", z: 143.99 }, 30, { edition }).outcome).toBe("conflict");
  });

  it.each(EDITION_IDS)("indoors hang 7 ft 6 in. with GFCI and enclosed, under %s", (edition) => {
    const indoor = (changes: object) => of({ indoor: true, z: 90, ...changes }, 0, { edition });
    expect(indoor({})).toMatchObject({ outcome: "meets", section: "680.22(B)(2)" });
    expect(indoor({ z: 89.99 }).outcome).toBe("conflict");
    // Its two levels given top first: the lower one counts. Arithmetic.
    expect(indoor({ z: [144, 80] }).outcome).toBe("conflict");
    expect(indoor({ z: [80, 144] }).outcome).toBe("conflict");
    expect(indoor({ gfci: false }).outcome).toBe("conflict");
    expect(indoor({ totallyEnclosed: false }).outcome).toBe("conflict");
    expect(indoor({ totallyEnclosed: undefined }).question?.text).toContain("`totallyEnclosed`");
    expect(indoor({ gfci: undefined }).outcome).toBe("review");
    expect(indoor({ z: 144, gfci: false, totallyEnclosed: false }).outcome).toBe("meets");
    expect(indoor({ device: "fan", totallyEnclosed: undefined, listedNearWater: true }).outcome).toBe("meets");
    expect(indoor({ device: "fan", totallyEnclosed: false }).question?.text).toContain("`listedNearWater`");
    expect(indoor({ device: "fan", totallyEnclosed: false, listedNearWater: false }).outcome).toBe("conflict");
  });

  it.each(EDITION_IDS)("there before hang 5 ft up, rigid, with GFCI, under %s", (edition) => {
    const old = (changes: object) => of({ existing: true, z: 60, ...changes }, 40, { edition });
    expect(old({})).toMatchObject({ outcome: "meets", section: "680.22(B)(3)" });
    expect(old({ z: 59.99 }).outcome).toBe("conflict");
    expect(old({ gfci: false }).outcome).toBe("conflict");
    expect(old({ rigidlyAttached: false }).outcome).toBe("conflict");
    expect(old({ rigidlyAttached: undefined }).outcome).toBe("review");
    expect(old({ existing: undefined }).outcome).toBe("conflict");
    // As high as a new one: the paragraph for existing ones still names GFCI and the fastening. Common practice, no source.
    expect(old({ z: 144 }).outcome).toBe("meets");
    for (const lacking of [{ gfci: false }, { rigidlyAttached: false }, { gfci: undefined }])
      expect(old({ z: 144, ...lacking })).toMatchObject({ outcome: "review", section: "680.22(B)(3)" });
  });

  it.each(EDITION_IDS)("from 5 to 10 ft have GFCI, or hang 5 ft up and rigid, under %s", (edition) => {
    const outer = (changes: object, distance = 100) => of({ gfci: false, z: 60, ...changes }, distance, { edition });
    expect(outer({})).toMatchObject({ outcome: "meets", margin: 0 });
    expect(outer({ z: 59.99 }).outcome).toBe("conflict");
    expect(outer({ rigidlyAttached: false }).outcome).toBe("conflict");
    expect(outer({ gfci: true, z: 5, rigidlyAttached: false }).outcome).toBe("meets");
    expect(outer({ gfci: undefined, z: 5 }).question?.text).toContain("`gfci`");
    expect(outer({ z: 5 }, 120).outcome).toBe("conflict");
    expect(outer({ z: 5 }, 120.01)).toMatchObject({ outcome: "exempt", required: { horizontal: 120 } });
  });

  it("of low voltage may hang nearer when listed, without need of grounding, at the contact limit (15 V, from memory)", () => {
    const garden = (changes: object) =>
      of({ z: 14, lowVoltage: true, volts: 15, listedNearWater: true, needsGrounding: false, ...changes }, 20);
    expect(garden({})).toMatchObject({ outcome: "meets", section: "680.22(B)(6)" });
    const unsure = [
      { listedNearWater: undefined },
      { needsGrounding: undefined },
      { volts: 15.01 },
      { volts: undefined },
    ];
    for (const changes of unsure) expect(garden(changes).outcome).toBe("review");
    expect(garden({ volts: undefined }).question?.text).toContain("`volts`");
    for (const changes of [{ listedNearWater: false }, { needsGrounding: true }, { lowVoltage: undefined }])
      expect(garden(changes).outcome).toBe("conflict");
    expect(garden({ listedNearWater: undefined, z: 144 }).outcome).toBe("meets");
  });

  it("inside a drawn house may be indoors; elsewhere they are outdoors unless it is said", () => {
    const hall = { id: "hall", kind: "building", outline: box(-100, -100, 500, 400), top: 200 };
    expect(of({ indoor: undefined, z: 100 }).outcome).toBe("conflict");
    expect(of({ indoor: undefined, z: 100 }, 30, {}, [hall])).toMatchObject({ outcome: "review" });
    expect(of({ indoor: undefined, z: 80 }, 30, {}, [hall]).outcome).toBe("conflict");
    expect(of({ indoor: undefined, z: 144 }, 30, {}, [hall]).outcome).toBe("meets");
  });

  it("whose height or place is in doubt are a question", () => {
    expect(of({ z: undefined }).question?.text).toContain("`z`");
    expect(of({ z: 144.5 }, 30, { accuracy: 1 }).outcome).toBe("review");
    expect(of({ z: 20 }, 60.5, { accuracy: 1 }).outcome).toBe("review");
    expect(of({ z: 150 }, 60.5, { accuracy: 1 }).outcome).toBe("meets");
    expect(of({ z: 20, gfci: false }, 60.5, { accuracy: 1 }).outcome).toBe("conflict");
    expect(of({ z: 20, gfci: false }, 120.5, { accuracy: 1 }).outcome).toBe("review");
  });

  it("lighting outlets are judged alike, and asked about where nobody says what they feed", () => {
    const fed = (serves: unknown, changes: object = {}) => of({ device: "outlet", serves, ...changes });
    expect(fed("garden light").outcome).toBe("conflict");
    expect(fed(undefined).question?.text).toContain("`serves`");
    expect(fed("garden light", { z: 144 }).outcome).toBe("meets");
    expect(luminaires.judge(yardOf([concretePool(), lamp(30, { device: "outlet", serves: ["bell"] })]))).toEqual([]);
  });
});
