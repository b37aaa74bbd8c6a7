import { concretePool, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "NEC 680.22(E), restated; one published source";

function example(
  name: string,
  distance: number,
  outcome: RuleExample["expect"]["outcome"],
  changes: object = {},
  more: readonly object[] = [],
): RuleExample {
  const unit = { id: "unit", kind: "equipment", unit: "heater", at: [200, 192 + distance], electric: true, volts: 240 };
  return {
    name,
    source,
    edition: "nec-2020",
    elements: [concretePool(), { ...unit, ...changes }, ...more],
    expect: { element: "unit", outcome, section: "680.22(E)" },
    elsewhere: { "nec-2017": "none" },
  };
}

const wall = {
  id: "wall",
  kind: "wall",
  path: line(0, 212, 384, 212),
  thickness: 6,
  top: 72,
  permanent: true,
  reinforced: false,
};

export const examples: readonly RuleExample[] = [
  example("exactly 5 ft", 60, "meets"),
  example("a hundredth nearer", 59.99, "conflict"),
  example("at 12 V", 36, "exempt", { volts: 12 }),
  example("a tank with nothing electric", 36, "exempt", { unit: "filter", electric: false }),
  example("a tank of which nobody says so", 36, "review", { unit: "filter", electric: undefined }),
  example("behind a wall", 40, "review", {}, [wall]),
  example("exactly at the contact limit", 36, "exempt", { volts: 15 }),
  example("a hundredth over the contact limit", 36, "conflict", { volts: 15.01 }),
];
