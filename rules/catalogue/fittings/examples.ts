import { concretePool, post } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "a ladder",
    source: "NEC 680.26(B)(5), restated",
    edition: "nec-2020",
    elements: [concretePool(), post(0, { part: "ladder", anchors: 2 })],
    expect: { element: "post", outcome: "bond" },
  },
  {
    name: "a small isolated anchor",
    source: "NEC 680.26(B)(5), restated: 4 in. and 1 in.",
    edition: "nec-2020",
    elements: [concretePool(), post(6, { part: "anchor", isolated: true, largestDimension: 4, penetration: 1 })],
    expect: { element: "post", outcome: "exempt" },
  },
  {
    name: "an anchor that reaches deeper",
    source: "NEC 680.26(B)(5), restated: 1 in.",
    edition: "nec-2020",
    elements: [concretePool(), post(6, { part: "anchor", isolated: true, largestDimension: 4, penetration: 1.01 })],
    expect: { element: "post", outcome: "bond" },
  },
  {
    name: "a small anchor not known to be isolated",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool(), post(6, { part: "anchor", largestDimension: 3, penetration: 0.5 })],
    expect: { element: "post", outcome: "review" },
  },
  {
    name: "an isolated anchor a hundredth too large",
    source: "NEC 680.26(B)(5), restated: 4 in.",
    edition: "nec-2020",
    elements: [concretePool(), post(6, { part: "anchor", isolated: true, largestDimension: 4.01, penetration: 1 })],
    expect: { element: "post", outcome: "bond" },
  },
  {
    name: "a small cover anchor, freed by name from 2023 on",
    source: "NEC 2023 680.26(B)(5), from memory",
    edition: "nec-2023",
    elements: [concretePool(), post(6, { part: "cover anchor", largestDimension: 2, penetration: 1.5 })],
    expect: { element: "post", outcome: "exempt" },
    elsewhere: { "nec-2017": "bond", "nec-2020": "bond" },
  },
  {
    name: "a cover anchor a hundredth longer",
    source: "NEC 2023 680.26(B)(5), from memory",
    edition: "nec-2023",
    elements: [concretePool(), post(6, { part: "cover anchor", largestDimension: 2.01, penetration: 1.5 })],
    expect: { element: "post", outcome: "bond" },
  },
  ...(
    [
      [2, "exempt"],
      [2.01, "bond"],
    ] as const
  ).map(
    ([largestDimension, outcome]): RuleExample => ({
      name: `a cover anchor of ${largestDimension} in. where a local amendment frees them`,
      source: "NEC 2023 680.26(B)(5), from memory; the amendment is invented",
      edition: "nec-2020",
      head: { amendments: [{ parameter: "fittings.coverAnchorsExempt", value: true, reason: "invented ordinance" }] },
      elements: [concretePool(), post(6, { part: "cover anchor", largestDimension, penetration: 1.5 })],
      expect: { element: "post", outcome },
    }),
  ),
];
