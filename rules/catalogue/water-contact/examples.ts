import { concretePool, linerPool, post } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "a plastered shell with bonded steel",
    source: "NEC 680.26(C), restated",
    edition: "nec-2020",
    elements: [concretePool()],
    expect: { element: null, body: "pool", outcome: "meets" },
  },
  {
    name: "a liner pool with nothing in the water",
    source: "NEC 680.26(C), restated",
    edition: "nec-2020",
    elements: [linerPool()],
    expect: { element: null, body: "pool", outcome: "bond" },
  },
  {
    name: "a concrete shell under a membrane",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool({ finish: "membrane" })],
    expect: { element: null, body: "pool", outcome: "review" },
  },
  {
    name: "a ladder that can be taken out",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [linerPool(), post(0, { part: "ladder", z: [-48, 36], removable: true })],
    expect: { element: null, body: "pool", outcome: "review" },
  },
];
