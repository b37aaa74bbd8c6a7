import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "an insulated conductor in the conduit",
    source: "NEC 680.23(B)(2)(b), from memory",
    edition: "nec-2020",
    elements: [
      concretePool(),
      {
        id: "light",
        kind: "underwater-light",
        at: [100, 0],
        pool: "pool",
        formingShell: "metal",
        conduit: "nonmetal",
        insideBond: true,
      },
    ],
    expect: { element: "light", outcome: "meets" },
  },
  {
    name: "none in it",
    source: "NEC 680.23(B)(2)(b), from memory",
    edition: "nec-2020",
    elements: [
      concretePool(),
      {
        id: "light",
        kind: "underwater-light",
        at: [100, 0],
        pool: "pool",
        formingShell: "metal",
        conduit: "nonmetal",
        insideBond: false,
      },
    ],
    expect: { element: "light", outcome: "conflict" },
  },
  {
    name: "a conduit that nobody describes",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [
      concretePool(),
      { id: "light", kind: "underwater-light", at: [100, 0], pool: "pool", formingShell: "metal" },
    ],
    expect: { element: "light", outcome: "review" },
  },
];
