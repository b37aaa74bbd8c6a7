import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "a pump, far away",
    source: "NEC 680.26(B)(6), restated",
    edition: "nec-2020",
    elements: [concretePool(), { id: "unit", kind: "equipment", at: [600, 100], unit: "pump" }],
    expect: { element: "unit", outcome: "bond" },
  },
  {
    name: "a double-insulated pump",
    source: "NEC 680.26(B)(6), restated",
    edition: "nec-2020",
    elements: [concretePool(), { id: "unit", kind: "equipment", at: [600, 100], unit: "pump", doubleInsulated: true }],
    expect: { element: "unit", outcome: "exempt" },
  },
  {
    name: "a tank with nothing electric",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool(), { id: "unit", kind: "equipment", at: [600, 100], unit: "filter", electric: false }],
    expect: { element: "unit", outcome: "review" },
  },
  {
    name: "an irrigation pump beyond 5 ft",
    source: "NEC 680.26(B)(7), restated",
    edition: "nec-2020",
    elements: [concretePool(), { id: "unit", kind: "equipment", at: [600, 100], unit: "pump", servesWater: false }],
    expect: { element: "unit", outcome: "exempt", section: "680.26(B)(7)" },
  },
  ...(
    [
      ["exactly 5 ft off", [444, 100], 0, "bond"],
      ["hung exactly 12 ft up", [400, 100], 144, "bond"],
      ["hung a hundredth higher", [400, 100], 144.01, "exempt"],
    ] as const
  ).map(
    ([where, at, z, outcome]): RuleExample => ({
      name: `an irrigation pump ${where}`,
      source: "NEC 680.26(B)(7), restated",
      edition: "nec-2020",
      elements: [concretePool(), { id: "unit", kind: "equipment", at, z, unit: "pump", servesWater: false }],
      expect: { element: "unit", outcome, section: "680.26(B)(7)" },
    }),
  ),
];
