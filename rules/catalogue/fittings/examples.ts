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
];
