import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "an edition that is not held",
    source: "common practice, no source",
    edition: "nec-2020",
    head: { edition: "nec-1999" },
    elements: [concretePool()],
    expect: { element: null, outcome: "review" },
  },
  {
    name: "no edition named",
    source: "common practice, no source",
    edition: "nec-2020",
    head: { edition: undefined },
    elements: [concretePool()],
    expect: { element: null, outcome: "review" },
  },
  {
    name: "an edition given as the answer",
    source: "common practice, no source",
    edition: "nec-2017",
    head: { edition: undefined, answers: [{ question: "edition-in-force", element: null, answer: "nec-2017" }] },
    elements: [concretePool()],
    expect: { element: null, outcome: "meets" },
  },
];
