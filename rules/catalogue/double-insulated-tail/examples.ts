import { clampTie, ringCopper } from "../common/example-copper.ts";
import { concretePool, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const motor = { id: "unit", kind: "equipment", at: [600, 100], unit: "pump", doubleInsulated: true };
const tail = ringCopper({ id: "tail", role: "tail", path: line(384, 100, 600, 100), joint: "none" });
const tailTies = (hardware: string | undefined) => [
  clampTie("to-shell", [384, 100], ["tail", "pool"], { hardware }),
  clampTie("to-motor", [600, 100], ["tail", "unit"], { hardware }),
];

export const examples: readonly RuleExample[] = [
  {
    name: "a tail for the next motor",
    source: "NEC 680.26(B)(6)(a), restated",
    edition: "nec-2020",
    elements: [concretePool(), { id: "unit", kind: "equipment", at: [600, 100], unit: "pump", doubleInsulated: true }],
    expect: { element: "unit", outcome: "bond" },
  },
  {
    name: "a recorded tail that reaches it",
    source: "NEC 680.26(B)(6)(a), restated",
    edition: "nec-2020",
    elements: [concretePool(), motor, tail, ...tailTies("listed-clamp")],
    expect: { element: "unit", outcome: "meets" },
  },
  {
    name: "a recorded tail on hardware that nobody gave",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool(), motor, tail, ...tailTies(undefined)],
    expect: { element: "unit", outcome: "review" },
  },
];
