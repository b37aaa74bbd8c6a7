import { fourTies, pathRoundPool, ringCopper } from "../common/example-copper.ts";
import { box, concretePool, deck, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

/** A long wall 18 in. off the pool's long side, its top at a level. */
function wallAt(top: number) {
  const path = line(-2000, 211, 2400, 211);
  return { id: "wall", kind: "wall", path, thickness: 2, base: 0, top, permanent: true, reinforced: false };
}

/** A copper grid over the whole perimeter surface. */
function recordedGrid(coverFrom: string) {
  return ringCopper({ id: "grid", role: "grid", path: pathRoundPool(36.5), cover: 5, coverFrom });
}

export const examples: readonly RuleExample[] = [
  {
    name: "concrete without steel: a ring in 2020",
    source: "NEC 2020 680.26(B)(2)(b), restated",
    edition: "nec-2020",
    elements: [concretePool(), deck()],
    expect: { element: "deck", outcome: "bond" },
  },
  {
    name: "ground that nothing covers",
    source: "NEC 680.26(B)(2), restated: paved and unpaved alike",
    edition: "nec-2023",
    elements: [concretePool()],
    expect: { element: null, body: "pool", outcome: "bond" },
  },
  {
    name: "wood on nonconductive supports in 2023",
    source: "NEC 2023 680.26(B)(2)(c), restated",
    edition: "nec-2023",
    elements: [concretePool(), deck({ material: "wood", support: "raised", supports: "nonconductive" })],
    expect: { element: "deck", outcome: "exempt" },
    elsewhere: { "nec-2017": "review", "nec-2020": "review" },
  },
  {
    name: "the same deck in 2020: no exemption is written",
    source: "NEC 2020 680.26(B)(2), restated; what inspectors ask: common practice, no source",
    edition: "nec-2020",
    elements: [concretePool(), deck({ material: "wood", support: "raised", supports: "nonconductive" })],
    expect: { element: "deck", outcome: "review" },
    elsewhere: { "nec-2023": "exempt" },
  },
  {
    name: "wood whose supports are not given in 2023",
    source: "common practice, no source",
    edition: "nec-2023",
    elements: [concretePool(), deck({ material: "wood", support: "raised" })],
    expect: { element: "deck", outcome: "review" },
  },
  {
    name: "stone in 2023: its class is a question",
    source: "common practice, no source",
    edition: "nec-2023",
    elements: [concretePool(), deck({ material: "stone" })],
    expect: { element: "deck", outcome: "review" },
    elsewhere: { "nec-2017": "bond", "nec-2020": "bond" },
  },
  {
    name: "welded wire before 2023: argued",
    source: "common practice, no source",
    edition: "nec-2017",
    elements: [concretePool(), deck({ steel: "mesh" })],
    expect: { element: "deck", outcome: "review" },
    elsewhere: { "nec-2023": "bond" },
  },
  {
    name: "a terrace beyond the band",
    source: "NEC 680.26(B)(2), restated: 3 ft from the inside walls",
    edition: "nec-2020",
    elements: [concretePool(), deck({ outline: box(0, 228, 384, 300) })],
    expect: { element: "deck", outcome: "exempt" },
  },
  {
    name: "a terrace half an inch into the band",
    source: "NEC 680.26(B)(2), restated: 3 ft from the inside walls",
    edition: "nec-2020",
    elements: [concretePool(), deck({ outline: box(0, 227.5, 384, 300) })],
    expect: { element: "deck", outcome: "bond" },
  },
  ...[36, -24].map(
    (level): RuleExample => ({
      name: `a deck at ${level} in., at the edge of the heights`,
      source: "NEC 2023 680.26(B)(2), restated; one published source",
      edition: "nec-2023",
      elements: [concretePool(), deck({ level })],
      expect: { element: "deck", outcome: "bond" },
    }),
  ),
  ...[36.01, -24.01].map(
    (level): RuleExample => ({
      name: `a deck at ${level} in., beyond the heights that 2023 names`,
      source: "NEC 2023 680.26(B)(2), restated; one published source",
      edition: "nec-2023",
      elements: [concretePool(), deck({ level })],
      expect: { element: "deck", outcome: "review" },
      elsewhere: { "nec-2017": "bond", "nec-2020": "bond" },
    }),
  ),
  {
    name: "beyond a wall of exactly 5 ft",
    source: "NEC 680.26(B)(2), restated; one published source",
    edition: "nec-2020",
    elements: [concretePool(), wallAt(60), deck({ outline: box(-120, 214, 504, 300) })],
    expect: { element: "deck", outcome: "exempt" },
  },
  {
    name: "beyond a wall a hundredth lower",
    source: "NEC 680.26(B)(2), restated; one published source",
    edition: "nec-2020",
    elements: [concretePool(), wallAt(59.99), deck({ outline: box(-120, 214, 504, 300) })],
    expect: { element: "deck", outcome: "bond" },
  },
  {
    name: "pavers over welded wire before 2023: argued",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool(), deck({ material: "pavers", steel: "mesh" })],
    expect: { element: "deck", outcome: "review" },
    elsewhere: { "nec-2023": "bond" },
  },
  ...["soil", "lawn", "gravel"].map(
    (material): RuleExample => ({
      name: `${material} where a local amendment bars the lone ring under paving`,
      source: "NEC 680.26(B)(2), restated; the amendment is invented",
      edition: "nec-2020",
      head: { amendments: [{ parameter: "perimeter.ringUnderPaving", value: false, reason: "invented ordinance" }] },
      elements: [concretePool(), deck({ material })],
      expect: { element: "deck", outcome: "bond" },
    }),
  ),
  ...["plastic", "composite"].map(
    (material): RuleExample => ({
      name: `${material} raised on nonconductive supports`,
      source: "NEC 2023 680.26(B)(2)(c), restated; before it common practice, no source",
      edition: "nec-2023",
      elements: [concretePool(), deck({ material, support: "raised", supports: "nonconductive" })],
      expect: { element: "deck", outcome: "exempt" },
      elsewhere: { "nec-2017": "review", "nec-2020": "review" },
    }),
  ),
  {
    name: "a recorded copper grid in bare ground: no method of 2017",
    source: "NEC 680.26(B)(2), restated; before 2020 from memory",
    edition: "nec-2020",
    elements: [concretePool(), recordedGrid("subgrade"), ...fourTies()],
    expect: { element: null, body: "pool", outcome: "meets" },
    elsewhere: { "nec-2017": "missing", "nec-2023": "review" },
  },
  {
    name: "a recorded copper grid, its depth told from grade",
    source: "NEC 2023 680.26(B)(2)(b), restated",
    edition: "nec-2023",
    elements: [concretePool(), recordedGrid("grade"), ...fourTies()],
    expect: { element: null, body: "pool", outcome: "meets" },
    elsewhere: { "nec-2017": "missing", "nec-2020": "review" },
  },
];
