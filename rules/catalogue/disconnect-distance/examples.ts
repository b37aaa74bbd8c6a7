import { concretePool, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

function example(
  name: string,
  distance: number,
  outcome: RuleExample["expect"]["outcome"],
  more: readonly object[] = [],
): RuleExample {
  const disconnect = { id: "off", kind: "device", device: "disconnect", at: [200, 192 + distance], volts: 240 };
  return {
    name,
    source: "NEC 680.13, restated",
    edition: "nec-2020",
    elements: [concretePool(), disconnect, ...more],
    expect: { element: "off", outcome, section: "680.13" },
  };
}

const wall = (halfLength: number) => ({
  id: "wall",
  kind: "wall",
  path: line(200 - halfLength, 212, 200 + halfLength, 212),
  thickness: 6,
  top: 72,
  permanent: true,
  reinforced: false,
});

export const examples: readonly RuleExample[] = [
  example("exactly 5 ft", 60, "meets"),
  example("a hundredth nearer", 59.99, "conflict"),
  example("behind a long wall", 40, "review", [wall(200)]),
  example("behind a wall that is soon walked round", 40, "conflict", [wall(5)]),
];
