import { box, concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "NEC 680.26(B)(2), restated: 18 to 24 in. and 3 ft; that it is asked: common practice, no source";
const island = (width: number) => concretePool({ islands: [box(180, 70, 180 + width, 130)] });
const head = (answer: string) => ({ answers: [{ question: "island-ground", body: "pool", answer }] });

export const examples: readonly RuleExample[] = [
  {
    name: "an island 24 in. wide: no place on it lies 18 in. from the water",
    source,
    edition: "nec-2020",
    elements: [island(24)],
    expect: { element: null, body: "pool", outcome: "review" },
  },
  {
    name: "settled: it is bonded",
    source,
    edition: "nec-2020",
    head: head("yes"),
    elements: [island(24)],
    expect: { element: null, body: "pool", outcome: "meets" },
  },
  {
    name: "settled: it is not bonded",
    source,
    edition: "nec-2020",
    head: head("no"),
    elements: [island(24)],
    expect: { element: null, body: "pool", outcome: "conflict" },
  },
];
