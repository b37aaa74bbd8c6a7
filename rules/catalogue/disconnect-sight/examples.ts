import { box, concretePool, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

function example(
  name: string,
  away: number,
  outcome: RuleExample["expect"]["outcome"],
  more: readonly object[] = [],
  changes: object = {},
): RuleExample {
  const pump = { id: "pump", kind: "equipment", unit: "pump", at: [600, 100], electric: true, volts: 240, gfci: true };
  const disconnect = { id: "off", kind: "device", device: "disconnect", at: [600, 100 + away], serves: ["pump"] };
  return {
    name,
    source: "NEC 680.13 and article 100, restated",
    edition: "nec-2020",
    elements: [concretePool(), pump, { ...disconnect, ...changes }, ...more],
    expect: { element: "pump", outcome, section: "680.13" },
  };
}

const wall = {
  id: "wall",
  kind: "wall",
  path: line(550, 130, 650, 130),
  thickness: 6,
  permanent: true,
  reinforced: false,
};
const shed = { id: "shed", kind: "building", outline: box(560, 120, 640, 180), top: 96, metalCladding: false };

export const examples: readonly RuleExample[] = [
  example("exactly 50 ft away", 600, "meets"),
  example("a hundredth farther", 600.01, "conflict"),
  example("behind a low wall", 60, "meets", [{ ...wall, top: 48 }]),
  example("behind a high wall", 60, "conflict", [{ ...wall, top: 72 }]),
  example("behind a wall of which nobody says how high", 60, "review", [wall]),
  example("behind a shed", 100, "conflict", [shed]),
  example("that nobody says it serves", 60, "review", [], { serves: undefined }),
  example("behind a wall exactly as high as a person", 60, "conflict", [{ ...wall, top: 66 }]),
  example("behind a wall a hundredth lower", 60, "meets", [{ ...wall, top: 65.99 }]),
];
