import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "a tail for the next motor",
    source: "NEC 680.26(B)(6)(a), restated",
    edition: "nec-2020",
    elements: [concretePool(), { id: "unit", kind: "equipment", at: [600, 100], unit: "pump", doubleInsulated: true }],
    expect: { element: "unit", outcome: "bond" },
  },
];
