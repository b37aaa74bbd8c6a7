import { concretePool, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "exactly 5 ft away",
    source: "NEC 680.27(B), from memory",
    edition: "nec-2020",
    elements: [concretePool(), { id: "motor", kind: "equipment", unit: "cover-motor", at: [444, 96] }],
    expect: { element: "motor", outcome: "meets" },
  },
  {
    name: "nearer, with nothing between",
    source: "NEC 680.27(B), from memory",
    edition: "nec-2020",
    elements: [concretePool(), { id: "motor", kind: "equipment", unit: "cover-motor", at: [443.99, 96] }],
    expect: { element: "motor", outcome: "conflict" },
  },
  {
    name: "nearer, behind a wall",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [
      concretePool(),
      { id: "motor", kind: "equipment", unit: "cover-motor", at: [430, 96] },
      {
        id: "wall",
        kind: "wall",
        path: line(410, 0, 410, 192),
        thickness: 6,
        top: 72,
        permanent: true,
        reinforced: false,
      },
    ],
    expect: { element: "motor", outcome: "review" },
  },
  {
    name: "nearer, behind a solid fence",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [
      concretePool(),
      { id: "motor", kind: "equipment", unit: "cover-motor", at: [430, 96] },
      { id: "fence", kind: "fence", path: line(410, 0, 410, 192), solid: true, permanent: true, metal: false, top: 72 },
    ],
    expect: { element: "motor", outcome: "review" },
  },
];
