import { box, concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const shed = { id: "shed", kind: "building", outline: box(560, 60, 640, 140), top: 96, metalCladding: false };
const pump = { id: "pump", kind: "equipment", unit: "pump", at: [600, 100], electric: true, volts: 240, gfci: true };

function example(name: string, outcome: RuleExample["expect"]["outcome"], more: readonly object[]): RuleExample {
  return {
    name,
    source: "NEC 680.22(A)(5), restated",
    edition: "nec-2020",
    elements: [concretePool(), shed, pump, ...more],
    expect: { element: "shed", outcome, section: "680.22(A)(5)" },
    elsewhere: { "nec-2017": "none" },
  };
}

const outlet = (changes: object) => ({
  id: "outlet",
  kind: "device",
  device: "receptacle",
  at: [620, 100],
  z: 48,
  indoor: true,
  ...changes,
});

export const examples: readonly RuleExample[] = [
  example("with GFCI", "meets", [outlet({ gfci: true })]),
  example("without GFCI", "conflict", [outlet({ gfci: false })]),
  example("no word of GFCI", "review", [outlet({})]),
  example("no receptacle drawn", "review", []),
];
