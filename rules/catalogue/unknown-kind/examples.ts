import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "a kind that is not known",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool(), { id: "whim", kind: "sculpture", at: [10, 300] }],
    expect: { element: "whim", outcome: "review" },
  },
  {
    name: "settled as harmless",
    source: "common practice, no source",
    edition: "nec-2020",
    head: { answers: [{ question: "unknown-kind", element: "whim", answer: "no" }] },
    elements: [concretePool(), { id: "whim", kind: "sculpture", at: [10, 300] }],
    expect: { element: "whim", outcome: "exempt" },
  },
];
