import { concretePool, linerPool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "bare tied steel",
    source: "NEC 680.26(B)(1)(a), restated",
    edition: "nec-2020",
    elements: [concretePool()],
    expect: { element: "pool", outcome: "meets" },
  },
  {
    name: "a liner without metal walls",
    source: "NEC 680.26(B)(1), restated",
    edition: "nec-2020",
    elements: [linerPool()],
    expect: { element: "pool", outcome: "exempt" },
  },
  {
    name: "encapsulated steel",
    source: "NEC 680.26(B)(1)(b), restated",
    edition: "nec-2020",
    elements: [concretePool({ steel: "encapsulated" })],
    expect: { element: "pool", outcome: "bond" },
  },
  {
    name: "concrete without steel",
    source: "NEC 680.26(B)(1)(b), restated",
    edition: "nec-2023",
    elements: [concretePool({ steel: "none" })],
    expect: { element: "pool", outcome: "bond" },
  },
  {
    name: "steel not given",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool({ steel: undefined })],
    expect: { element: "pool", outcome: "review" },
  },
  {
    name: "metal walls behind a liner: argued",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [linerPool({ wallFrame: "metal" })],
    expect: { element: "pool", outcome: "review" },
  },
  ...["cast-concrete", "coated-block"].map(
    (shell): RuleExample => ({
      name: `${shell} with bare steel`,
      source: "NEC 680.26(B)(1), restated",
      edition: "nec-2020",
      elements: [concretePool({ shell })],
      expect: { element: "pool", outcome: "meets" },
    }),
  ),
  {
    name: "fiberglass",
    source: "NEC 680.26(B)(1), restated",
    edition: "nec-2020",
    elements: [linerPool({ shell: "fiberglass", finish: "fiberglass" })],
    expect: { element: "pool", outcome: "exempt" },
  },
];
