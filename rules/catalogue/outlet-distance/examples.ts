import { box, concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "NEC 680.22(D), restated; one published source";
const lamp = { id: "lamp", kind: "device", device: "luminaire", at: [200, 292], z: 150, gfci: true, indoor: false };
const house = { id: "house", kind: "building", outline: box(0, 240, 384, 500), top: 120, metalCladding: false };

function example(
  name: string,
  distance: number,
  outcome: RuleExample["expect"]["outcome"],
  changes: object = {},
  more: readonly object[] = [],
  from = source,
): RuleExample {
  const outlet = { id: "clock", kind: "device", device: "outlet", at: [200, 192 + distance], serves: ["irrigation"] };
  return {
    name,
    source: from,
    edition: "nec-2020",
    elements: [concretePool(), { ...outlet, ...changes }, ...more],
    expect: { element: "clock", outcome, section: "680.22(D)" },
  };
}

export const examples: readonly RuleExample[] = [
  example("exactly 10 ft", 120, "meets"),
  example("a hundredth nearer", 119.99, "conflict"),
  example("for a luminaire", 100, "exempt", { serves: ["lamp"], gfci: true }, [lamp]),
  example("inside a house 6 ft away", 72, "review", {}, [house], "common practice, no source"),
];
