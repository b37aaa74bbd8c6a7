// Sizes as ASTM B258 numbers them; what serves: NEC 680.26(B), restated. "Not given" cases: common practice, no source.
import { describe, expect, it } from "vitest";
import { rule } from "../../../rules/catalogue/conductor-wire/rule.ts";
import { awgOf } from "../../../rules/recorded/awg.ts";
import { verdictOf } from "../catalogue/yards.ts";
import { branch, concretePool, fourTies, line, reportOf, ringCopper, yardOf } from "./yards.ts";

describe("a gauge as people write it", () => {
  it.each([
    [8, 8],
    ["8", 8],
    ["8 AWG", 8],
    ["#6", 6],
    ["No. 4", 4],
    ["1/0", 0],
    ["2/0 AWG", -1],
    ["4/0", -3],
    ["0", 0],
    ["00", -1],
    ["250 kcmil", -4],
    ["300 MCM", -4],
    [undefined, null],
    ["thick", null],
    ["100 kcmil", null],
  ])("%s is %s", (given, awg) => {
    expect(awgOf(given)).toBe(awg);
  });
});

describe("the wire of a conductor", () => {
  const judge = (changes: object, head: object = {}) =>
    verdictOf(rule, yardOf([concretePool(), ringCopper(changes)], head), "ring");

  it("names every fault at once", () => {
    const { outcome, why } = judge({ awg: 12, solid: false, material: "aluminum" });
    expect(outcome).toBe("conflict");
    expect(why).toMatch(/12 AWG/);
    expect(why).toMatch(/stranded/);
    expect(why).toMatch(/aluminum/);
  });

  // NEC 680.26(B)(2)(b), restated: the ring is bare. Its covering is a fault of the wire, under 680.26(B), not of its place.
  it("is bare in a ring, which joins what it is tied to all the same", () => {
    const insulated = ringCopper({ covering: "insulated" });
    const report = reportOf([concretePool(), insulated, ...fourTies()]);
    const outcomes = Object.fromEntries(report.findings.map((finding) => [finding.rule, finding.outcome]));
    expect(outcomes).toMatchObject({
      "conductor-wire": "conflict",
      "conductor-place": "meets",
      "perimeter-surfaces": "missing",
      "tie-spacing": "meets",
    });
    expect(judge({ covering: "insulated" })).toMatchObject({ margin: null });
    expect(judge({ covering: undefined }).question?.id).toBe("conductor-bare");
    expect(judge({ covering: "insulated", role: "branch" }).outcome).toBe("meets");
  });

  it("has its size held against the edition's", () => {
    expect(judge({ awg: 6 })).toMatchObject({
      outcome: "meets",
      measured: { awg: 6 },
      required: { awg: 8 },
      margin: 2,
    });
    expect(judge({ awg: 9 })).toMatchObject({ outcome: "conflict", margin: -1 });
    // A local amendment that asks for 6 AWG (invented).
    const head = { amendments: [{ parameter: "conductor.size", value: 6, reason: "invented" }] };
    expect(judge({ awg: 8 }, head).outcome).toBe("conflict");
  });

  it("asks for one fact that is not given, and a fault goes before a question", () => {
    expect(judge({ solid: undefined }).question?.id).toBe("conductor-solid");
    expect(judge({ awg: "thick" }).question?.id).toBe("conductor-size");
    expect(judge({ solid: undefined, awg: 10 }).outcome).toBe("conflict");
  });

  it("follows the site's answer, and says so", () => {
    const answers = (answer: string) => ({
      answers: [{ question: "conductor-solid", element: "ring", answer, on: "2026-05-01", by: "ab" }],
    });
    expect(judge({ solid: undefined }, answers("yes"))).toMatchObject({
      outcome: "meets",
      answered: { answer: "yes", on: "2026-05-01", by: "ab" },
    });
    expect(judge({ solid: undefined }, answers("no")).outcome).toBe("conflict");
    const stale = { answers: [{ question: "conductor-solid", element: "ring", answer: "yes", about: "00000000" }] };
    const lapsed = judge({ solid: undefined }, stale);
    expect(lapsed).toMatchObject({ outcome: "review", lapsed: true });
    expect(lapsed.why).toMatch(/lapsed/);
  });

  it("of a branch, is not joined by twisting or solder (250.8)", () => {
    const joint = (word: string | undefined) =>
      verdictOf(rule, yardOf([concretePool(), branch("b", line(405, 100, 600, 100), { joint: word })]), "b").outcome;
    expect([joint("none"), joint("listed-splice"), joint("twisted"), joint("solder"), joint(undefined)]).toEqual([
      "meets",
      "meets",
      "conflict",
      "conflict",
      "review",
    ]);
  });

  it("gives exactly one finding for each conductor, even without a pool", () => {
    const report = reportOf([ringCopper(), branch("b", line(405, 100, 600, 100))]);
    expect(report.findings.filter(({ rule: id }) => id === "conductor-wire").map(({ element }) => element)).toEqual([
      "ring",
      "b",
    ]);
  });

  it("is not asked about where every pool is storable (680.2, 680.30)", () => {
    const pool = concretePool({ shell: "vinyl-liner", storable: true, installation: "on-ground" });
    expect(verdictOf(rule, yardOf([pool, ringCopper({ solid: false })]), "ring").outcome).toBe("exempt");
  });
});
