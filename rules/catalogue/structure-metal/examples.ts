import { concretePool, linerPool, post } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "a metal wall behind a liner",
    source: "NEC 680.26(B)(3), restated",
    edition: "nec-2020",
    elements: [linerPool({ wallFrame: "metal" })],
    expect: { element: "pool", outcome: "bond" },
  },
  {
    name: "a beam of the structure, however far out",
    source: "NEC 680.26(B)(3), restated",
    edition: "nec-2020",
    elements: [concretePool(), post(80, { part: "beam", inPoolStructure: true })],
    expect: { element: "post", outcome: "bond" },
  },
  {
    name: "encapsulated bars",
    source: "NEC 680.26(B)(3), restated",
    edition: "nec-2020",
    elements: [concretePool(), post(2, { part: "encapsulated rebar", inPoolStructure: true })],
    expect: { element: "post", outcome: "exempt" },
  },
  {
    name: "what stands behind the liner is not given",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [linerPool({ wallFrame: undefined })],
    expect: { element: "pool", outcome: "review" },
  },
];
