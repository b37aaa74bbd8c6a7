import { post } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "common practice, no source";

export const examples: readonly RuleExample[] = [
  {
    name: "a post and no pool",
    source,
    edition: "nec-2020",
    elements: [post(50)],
    expect: { element: null, outcome: "review" },
  },
  {
    name: "a yard that has none",
    source,
    edition: "nec-2020",
    head: { answers: [{ question: "water-on-site", answer: "no" }] },
    elements: [post(50)],
    expect: { element: null, outcome: "exempt" },
  },
];
