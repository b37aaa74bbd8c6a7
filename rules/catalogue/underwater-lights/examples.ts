import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "a metal forming shell",
    source: "NEC 680.26(B)(4), restated",
    edition: "nec-2020",
    elements: [
      concretePool(),
      {
        id: "light",
        kind: "underwater-light",
        at: [100, 0],
        pool: "pool",
        formingShell: "metal",
        listedLowVoltage: true,
      },
    ],
    expect: { element: "light", outcome: "bond" },
  },
  {
    name: "a listed low-voltage light in a nonmetallic shell",
    source: "NEC 680.26(B)(4), from memory",
    edition: "nec-2020",
    elements: [
      concretePool(),
      {
        id: "light",
        kind: "underwater-light",
        at: [100, 0],
        pool: "pool",
        formingShell: "nonmetal",
        listedLowVoltage: true,
      },
    ],
    expect: { element: "light", outcome: "exempt" },
  },
  {
    name: "a bracket that nobody describes",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [
      concretePool(),
      { id: "light", kind: "underwater-light", at: [100, 0], pool: "pool", formingShell: "nonmetal" },
    ],
    expect: { element: "light", outcome: "review" },
  },
];
