// What answers rest on. Source: the site format: an answer lapses, visibly, when what it was about changes (element, pool,
// edition), and an unsettled question is never a pass. That an amended edition is another one, that copper and barriers
// belong to what some questions are about, and that contradicting answers count for nothing: common practice, no source.
import { describe, expect, it } from "vitest";
import { answerQuestion } from "../../../app/edits/answer-question.ts";
import { recompute } from "../../../rules/recompute.ts";
import type { Finding } from "../../../rules/report.ts";
import type { Site } from "../../../rules/site/site.ts";
import { clampTie, concretePool, fourTies, linerPool, ringCopper, siteOf } from "../recorded/yards.ts";

const findingIn = (site: Site, rule: string, element: string | null): Finding => {
  const found = recompute(site, { withoutRoutes: true }).findings.filter(
    (finding) => finding.rule === rule && finding.element === element,
  );
  if (found.length !== 1) throw new Error(`${found.length} findings of ${rule} on ${element}`);
  return found[0] as Finding;
};

/** The site with the question of a finding answered as the editor does. */
const answered = (site: Site, rule: string, element: string | null, answer: string): Site => {
  const finding = findingIn(site, rule, element);
  const done = answerQuestion(finding, answer, "QA", "2026-05-01").apply(site);
  if (!("ok" in done) || !done.ok) throw new Error(`could not answer ${finding.question?.id}`);
  return done.site;
};

/** The elements changed, the answers and all else kept. */
const changed = (site: Site, change: (elements: readonly object[]) => readonly object[]): Site =>
  ({ ...site, elements: change(site.elements) }) as Site;
const withField = (id: string, fields: object) => (elements: readonly object[]) =>
  elements.map((element) => ((element as { id: string }).id === id ? { ...element, ...fields } : element));

const post = { id: "post", kind: "metal", shape: { point: [100, 240] }, part: "light pole", z: [0, 90] };
const wall = (changes: object = {}) => ({
  id: "wall",
  kind: "wall",
  path: {
    vertices: [
      [0, 216],
      [384, 216],
    ],
    closed: false,
  },
  thickness: 6,
  top: 72,
  base: 0,
  permanent: true,
  ...changes,
});

describe("an answer lapses", () => {
  const crowded = [50, 60, 70, 80].map((x, i) => clampTie(`tie-${i + 1}`, [x, 0], ["ring", "pool"]));

  it("about even ties when a tie is moved", () => {
    const site = siteOf([concretePool(), ringCopper(), ...crowded]);
    const settled = answered(site, "tie-spacing", null, "yes");
    expect(findingIn(settled, "tie-spacing", null).outcome).toBe("meets");
    const moved = changed(settled, withField("tie-4", { at: [90, 0] }));
    expect(findingIn(moved, "tie-spacing", null)).toMatchObject({ outcome: "review", lapsed: true });
  });

  it("about a connection, and about the perimeter, when recorded copper changes", () => {
    const ring = ringCopper({ solid: undefined });
    const site = siteOf([concretePool(), ring, ...fourTies(), post, clampTie("p", [100, 240], ["ring", "post"])]);
    const settled = answered(site, "fixed-metal", "post", "yes");
    expect(findingIn(settled, "fixed-metal", "post").outcome).toBe("meets");
    const rung = changed(settled, withField("ring", { joint: undefined }));
    expect(findingIn(rung, "fixed-metal", "post")).toMatchObject({ outcome: "review", lapsed: true });
    const screwed = changed(settled, withField("p", { hardware: "other" }));
    expect(findingIn(screwed, "fixed-metal", "post")).toMatchObject({ outcome: "review", lapsed: true });
  });

  it("about a barrier when the barrier changes, and not when a tie does", () => {
    const site = siteOf([concretePool(), post, wall()]);
    const settled = answered(site, "fixed-metal", "post", "yes");
    expect(findingIn(settled, "fixed-metal", "post").outcome).toBe("exempt");
    const lower = changed(settled, withField("wall", { top: 61 }));
    expect(findingIn(lower, "fixed-metal", "post")).toMatchObject({ outcome: "review", lapsed: true });
    const named = changed(settled, (elements) => [...elements, clampTie("t", [0, 0], ["pool"])]);
    expect(findingIn(named, "fixed-metal", "post").lapsed).toBeUndefined();
  });

  it("about a fitting, asked of the water, when the fitting changes", () => {
    const plate = {
      id: "plate",
      kind: "water-bond",
      at: [0, 96],
      pool: "pool",
      exposedArea: 12,
      material: "nickel alloy",
      alwaysSubmerged: true,
    };
    const site = siteOf([linerPool(), plate]);
    const settled = answered(site, "water-contact", null, "yes");
    expect(findingIn(settled, "water-contact", null).outcome).toBe("bond");
    const rusty = changed(settled, withField("plate", { material: "mild steel" }));
    expect(findingIn(rusty, "water-contact", null)).toMatchObject({ outcome: "review", lapsed: true });
  });

  it("about a tie when what it joins is moved", () => {
    const far = clampTie("far", [100, 340], ["ring", "post"]);
    const site = siteOf([concretePool(), ringCopper(), ...fourTies(), post, far]);
    const settled = answered(site, "tie-hardware", "far", "yes");
    expect(findingIn(settled, "tie-hardware", "far").outcome).toBe("meets");
    const moved = changed(settled, withField("post", { shape: { point: [100, 244] } }));
    expect(findingIn(moved, "tie-hardware", "far")).toMatchObject({ outcome: "review", lapsed: true });
  });

  it("when a local amendment changes the edition", () => {
    const near = { ...post, shape: { point: [100, 192 + 60.25] } };
    const site = siteOf([concretePool(), near], { accuracy: 0.5 });
    const settled = answered(site, "fixed-metal", "post", "no");
    expect(findingIn(settled, "fixed-metal", "post").outcome).toBe("exempt");
    const amendments = [{ parameter: "fixedMetal.distance", value: 60.5, reason: "ordinance" }];
    expect(findingIn({ ...settled, amendments }, "fixed-metal", "post")).toMatchObject({
      outcome: "review",
      lapsed: true,
    });
  });

  it("about a solid barrier in between when that changes, whatever stands behind it", () => {
    const fence = {
      id: "wall",
      kind: "fence",
      path: {
        vertices: [
          [-200, 216],
          [600, 216],
        ],
        closed: false,
      },
      top: 72,
      metal: false,
      solid: true,
      permanent: true,
    };
    const device = (kind: string) => ({ id: "x", kind: "device", device: kind, at: [100, 230], z: 40, volts: 120 });
    const heater = {
      id: "x",
      kind: "equipment",
      unit: "heater",
      at: [100, 230],
      z: [0, 30],
      electric: true,
      volts: 240,
    };
    const behind: readonly (readonly [string, object])[] = [
      ["switch-distance", device("switch")],
      ["outlet-distance", device("outlet")],
      ["other-equipment-distance", heater],
    ];
    for (const [rule, thing] of behind) {
      const settled = answered(siteOf([concretePool(), fence, thing]), rule, "x", "yes");
      expect(findingIn(settled, rule, "x"), rule).toMatchObject({ outcome: "meets", answered: { answer: "yes" } });
      const lower = changed(settled, withField("wall", { top: 30 }));
      expect(findingIn(lower, rule, "x"), rule).toMatchObject({ outcome: "review", lapsed: true });
      const renamed = changed(settled, (elements) => [...elements, { ...post, id: "post-2" }]);
      expect(findingIn(renamed, rule, "x").outcome, rule).toBe("meets");
    }
  });

  it("about a ring behind a wall when the wall changes", () => {
    const high = {
      ...wall(),
      path: {
        vertices: [
          [0, -9],
          [384, -9],
        ],
        closed: false,
      },
    };
    const settled = answered(siteOf([concretePool(), ringCopper(), high]), "conductor-place", "ring", "yes");
    expect(findingIn(settled, "conductor-place", "ring").outcome).toBe("meets");
    const longer = changed(settled, withField("wall", { thickness: 8 }));
    expect(findingIn(longer, "conductor-place", "ring")).toMatchObject({ outcome: "review", lapsed: true });
  });

  it("only as far as its question says that it rests on anything else, which the answer keeps", () => {
    const kept = (site: Site) => site.answers?.map(({ restsOn }) => restsOn);
    const stranded = siteOf([concretePool(), ringCopper({ solid: undefined })]);
    expect(kept(answered(stranded, "conductor-wire", "ring", "yes"))).toEqual([undefined]);
    const uneven = siteOf([concretePool(), ringCopper(), ...crowded]);
    expect(kept(answered(uneven, "tie-spacing", null, "yes"))).toEqual([{ kinds: ["conductor", "tie"] }]);
  });
});

describe("several answers to one question", () => {
  const ask = (...answers: object[]) =>
    findingIn(
      siteOf([concretePool(), ringCopper({ solid: undefined })], {
        answers: answers.map((answer) => ({ question: "conductor-solid", element: "ring", ...answer })),
      }),
      "conductor-wire",
      "ring",
    );

  it("count for nothing where they contradict each other on one day, or without a day", () => {
    for (const on of [{}, { on: "2026-05-01" }]) {
      const both = ask({ answer: "no", ...on }, { answer: "yes", ...on });
      expect(both.outcome).toBe("review");
      expect(both.why).toContain('The answers "yes" and "no" contradict each other');
      expect(ask({ answer: "yes", ...on }, { answer: "yes", ...on }).outcome).toBe("meets");
    }
  });

  it("follow the later day, whatever their order in the file", () => {
    const [old, late] = [
      { answer: "no", on: "2026-01-31" },
      { answer: "yes", on: "2026-02-01" },
    ];
    expect(ask(old, late).outcome).toBe("meets");
    expect(ask(late, old).outcome).toBe("meets");
    expect(ask(late, old, { ...late, answer: "no" }).outcome).toBe("review");
  });

  it("contradict each other where one has no day, whatever their order in the file", () => {
    const [old, late, undated] = [
      { answer: "no", on: "2026-01-31" },
      { answer: "yes", on: "2026-02-01" },
      { answer: "no" },
    ];
    for (const order of [
      [late, undated, old],
      [late, old, undated],
      [undated, late, old],
      [old, undated, late],
    ]) {
      expect(ask(...order).why).toContain("contradict each other");
    }
    expect(ask({ ...undated, answer: "yes" }, late, old).outcome).toBe("meets");
    expect(ask(old, { ...undated, answer: "yes" }, late).outcome).toBe("meets");
  });

  it("are told with their day and initials as far as they are given", () => {
    const said = (more: object) => ask({ answer: "yes", ...more }).why.replace(/^.*Settled/, "Settled");
    expect(said({ by: "QA", on: "2026-05-01" })).toBe('Settled by the answer "yes" by QA on 2026-05-01.');
    expect(said({ by: " ", on: "2026-05-01" })).toBe('Settled by the answer "yes" on 2026-05-01.');
    expect(said({ by: "QA", on: "" })).toBe('Settled by the answer "yes" by QA.');
    expect(said({})).toBe('Settled by the answer "yes".');
  });

  it("about the edition are held to the same", () => {
    const judged = (...answers: object[]) => {
      const asked = answers.map((answer) => ({ question: "edition-in-force", ...answer }));
      const site = siteOf([concretePool()], { edition: undefined, answers: asked });
      const report = recompute(site, { withoutRoutes: true });
      return [report.edition, report.findings.find(({ rule }) => rule === "edition-in-force")?.outcome];
    };
    const day = (answer: string, on: string, more: object = {}) => ({ answer, on, ...more });
    expect(judged(day("nec-2020", "2026-05-01"))).toEqual(["nec-2020", "meets"]);
    expect(judged(day("nec-2017", "2026-06-01"), day("nec-2020", "2026-05-01"))).toEqual(["nec-2017", "meets"]);
    expect(judged(day("nec-2017", "2026-05-01"), day("nec-2020", "2026-05-01"))).toEqual(["nec-2023", "review"]);
    expect(judged(day("nec-2014", "2026-05-01"))).toEqual(["nec-2023", "review"]);
    expect(judged(day("nec-2020", "2026-05-01", { element: "pool" }))).toEqual(["nec-2023", "review"]);
  });
});
