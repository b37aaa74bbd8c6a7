// Which water a contact is in, where nothing says so: a field that is absent and decides is a question (the site format).
// 680.26(C), restated; niches and pipes: common practice, no source.
import { describe, expect, it } from "vitest";
import { box, concretePool, linerPool, post } from "../../../rules/catalogue/common/example-yard.ts";
import { rule as named } from "../../../rules/catalogue/named-pool/rule.ts";
import { rule as lights } from "../../../rules/catalogue/underwater-lights/rule.ts";
import { rule as water } from "../../../rules/catalogue/water-contact/rule.ts";
import { verdictOf, yardOf } from "./yards.ts";

const spa = (changes: object = {}) =>
  linerPool({ id: "spa", outline: box(396, 50, 480, 134), body: "spa", ...changes });
const light = (x: number, changes: object = {}) => ({
  id: "light",
  kind: "underwater-light",
  at: [x, 96],
  formingShell: "metal",
  metalBracket: false,
  ...changes,
});
const plate = (x: number) => ({
  id: "plate",
  kind: "water-bond",
  at: [x, 96],
  exposedArea: 12,
  material: "bronze",
  alwaysSubmerged: true,
});
const waterOf = (body: string, elements: readonly object[], head: object = {}) => {
  const found = water.judge(yardOf(elements, head)).filter((verdict) => verdict.body === body);
  expect(found).toHaveLength(1);
  return found[0];
};

describe("a light or a fitting that names no pool", () => {
  it("counts for the one in whose water or wall it stands", () => {
    for (const part of [light(384), plate(384), light(380)]) {
      expect(waterOf("pool", [linerPool(), spa(), part])?.need?.elements).toEqual([part.id]);
      expect(waterOf("spa", [linerPool(), spa(), part])?.need?.elements).toEqual([]);
      expect(named.judge(yardOf([linerPool(), spa(), part]))).toEqual([]);
    }
    expect(waterOf("spa", [linerPool(), spa(), light(397)])?.need?.elements).toEqual(["light"]);
  });

  it("counts for none between two until somebody says whose it is", () => {
    for (const part of [light(389), plate(389)]) {
      expect(waterOf("pool", [linerPool(), spa(), part])).toMatchObject({
        outcome: "review",
        question: { id: `named-pool-${part.id}` },
      });
      expect(waterOf("spa", [linerPool(), spa(), part])?.outcome).toBe("bond");
      expect(verdictOf(named, yardOf([linerPool(), spa(), part]), part.id)).toMatchObject({ outcome: "review" });
      const yes = { answers: [{ question: "named-pool", element: part.id, answer: "yes" }] };
      expect(waterOf("pool", [linerPool(), spa(), part], yes)?.need?.elements).toEqual([part.id]);
      expect(waterOf("pool", [linerPool(), spa(), { ...part, pool: "pool" }])?.need?.elements).toEqual([part.id]);
    }
  });

  it("is as open in a wall that two bodies share", () => {
    const joined = spa({ outline: box(384, 50, 480, 134) });
    expect(waterOf("pool", [linerPool(), joined, light(384)])?.outcome).toBe("review");
  });

  it("one body alone leaves nothing to ask", () => {
    expect(waterOf("pool", [linerPool(), light(392)])?.need?.elements).toEqual(["light"]);
  });

  it("what stands in a storable pool counts for no other water, and is bonded all the same", () => {
    const storable = linerPool({
      id: "tub",
      outline: box(1000, 0, 1200, 200),
      storable: true,
      installation: "on-ground",
    });
    const ladder = post(0, {
      shape: { point: [1100, 96] },
      part: "ladder",
      inPoolStructure: true,
      z: [-40, 30],
      wettedArea: 30,
      removable: false,
    });
    for (const part of [light(1100), plate(1100), ladder]) {
      expect(waterOf("pool", [linerPool(), storable, part])?.need?.elements).toEqual([]);
    }
    expect(verdictOf(lights, yardOf([linerPool(), storable, light(1100)]), "light").outcome).toBe("bond");
  });
});

describe("water whose contact is open", () => {
  it("a ladder drawn at its cups on the deck stands in the water where it reaches below it", () => {
    const ladder = (changes: object) =>
      waterOf("pool", [
        linerPool(),
        post(0, { shape: { point: [100, -6] }, part: "ladder", inPoolStructure: true, removable: false, ...changes }),
      ]);
    expect(ladder({ z: [-40, 30] })).toMatchObject({ outcome: "bond", need: { elements: ["post"] } });
    expect(ladder({ z: undefined })).toMatchObject({ outcome: "review", question: { id: "wetted-area-post" } });
    expect(ladder({ z: [0, 30] })?.need?.elements).toEqual([]);
    expect(ladder({ z: [-40, 30], shape: { point: [100, -24.01] } })?.need?.elements).toEqual([]);
    expect(ladder({ z: [-40, 30], removable: true })?.outcome).toBe("review");
  });

  it("a ladder at its cups between two pools counts for none of them until somebody says whose it is", () => {
    const part = (x: number) =>
      post(0, { shape: { point: [x, 96] }, part: "ladder", inPoolStructure: true, removable: false, z: [-40, 30] });
    const both = (x: number) => [linerPool(), spa(), part(x)];
    expect(waterOf("pool", both(389))).toMatchObject({ outcome: "review", question: { id: "named-pool-post" } });
    const yes = { answers: [{ question: "named-pool", element: "post", answer: "yes" }] };
    expect(waterOf("pool", both(389), yes)?.need?.elements).toEqual(["post"]);
    expect(waterOf("pool", both(380))?.need?.elements).toEqual(["post"]);
  });

  it("a shell that nobody names may conduct", () => {
    expect(waterOf("pool", [concretePool({ shell: "unknown", steel: undefined })])).toMatchObject({
      outcome: "review",
      question: { id: "shell-kind" },
    });
  });

  it("a pipe may drain when the pump is off", () => {
    const pipe = post(0, { part: "copper piping", z: [-10, -8], wettedArea: 20, removable: false });
    const judge = (answer?: string) =>
      waterOf(
        "pool",
        [linerPool(), pipe],
        answer === undefined ? {} : { answers: [{ question: "contact-stays-wet", element: "post", answer }] },
      );
    expect(judge()).toMatchObject({ outcome: "review", question: { id: "contact-stays-wet-post" } });
    expect(judge("yes")).toMatchObject({ outcome: "bond", need: { elements: ["post"] } });
    expect(judge("no")).toMatchObject({ outcome: "bond", need: { elements: [] } });
  });
});
