import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "common practice, no source";

const light = {
  id: "light",
  kind: "underwater-light",
  at: [384, 96],
  pool: "pond",
  formingShell: "nonmetal",
  metalBracket: false,
  lensTopDepth: 18,
};

export const examples: readonly RuleExample[] = [
  {
    name: "a light of a pool that is not drawn",
    source,
    edition: "nec-2020",
    elements: [concretePool(), light],
    expect: { element: "light", outcome: "review" },
  },
  {
    name: "settled: it is the one that is drawn",
    source,
    edition: "nec-2020",
    head: { answers: [{ question: "named-pool", element: "light", answer: "yes" }] },
    elements: [concretePool(), light],
    expect: { element: "light", outcome: "meets" },
  },
  {
    name: "another one that is not drawn",
    source,
    edition: "nec-2020",
    head: { answers: [{ question: "named-pool", element: "light", answer: "no" }] },
    elements: [concretePool(), light],
    expect: { element: "light", outcome: "review" },
  },
];
