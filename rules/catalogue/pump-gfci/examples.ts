import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

function example(name: string, changes: object, outcome: RuleExample["expect"]["outcome"]): RuleExample {
  const pump = { id: "pump", kind: "equipment", unit: "pump", at: [600, 100], electric: true, volts: 240, gfci: true };
  return {
    name,
    source: "NEC 680.21(C), from memory",
    edition: "nec-2020",
    elements: [concretePool(), { ...pump, ...changes }],
    expect: { element: "pump", outcome, section: "680.21(C)" },
  };
}

export const examples: readonly RuleExample[] = [
  example("with GFCI", {}, "meets"),
  example("without", { gfci: false }, "conflict"),
  example("nobody says", { gfci: undefined }, "review"),
  example("of an irrigation system", { gfci: false, servesWater: false }, "exempt"),
];
