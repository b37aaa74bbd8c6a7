import { box, concretePool, deck } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

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
];
