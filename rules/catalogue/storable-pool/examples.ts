import { concretePool, linerPool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "a storable pool",
    source: "NEC 680.2 and 680.30, restated",
    edition: "nec-2020",
    elements: [linerPool({ installation: "on-ground", storable: true })],
    expect: { element: "pool", outcome: "exempt" },
  },
  {
    name: "above the ground, and nobody says whether it stays",
    source: "NEC 680.2, restated",
    edition: "nec-2020",
    elements: [linerPool({ installation: "on-ground", storable: undefined })],
    expect: { element: "pool", outcome: "review" },
  },
  {
    name: "storable, yet of concrete",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool({ storable: true })],
    expect: { element: "pool", outcome: "review" },
  },
];
