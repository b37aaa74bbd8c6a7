import { box, concretePool, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "NEC 680.22(C), restated";
const at = (distance: number, changes: object = {}) => ({
  id: "switch",
  kind: "device",
  device: "switch",
  at: [200, 192 + distance],
  indoor: false,
  ...changes,
});
const fence = {
  id: "fence",
  kind: "fence",
  path: line(0, 212, 384, 212),
  top: 72,
  solid: true,
  permanent: true,
  metal: false,
};
const house = { id: "house", kind: "building", outline: box(0, 222, 384, 500), top: 120, metalCladding: false };

function example(
  name: string,
  elements: readonly object[],
  outcome: RuleExample["expect"]["outcome"],
  from = source,
): RuleExample {
  return {
    name,
    source: from,
    edition: "nec-2020",
    elements: [concretePool(), ...elements],
    expect: { element: "switch", outcome, section: "680.22(C)" },
  };
}

export const examples: readonly RuleExample[] = [
  example("exactly 5 ft", [at(60)], "meets"),
  example("a hundredth nearer", [at(59.99)], "conflict"),
  example("nearer, and listed for it", [at(40, { listedNearWater: true })], "meets"),
  example("behind a solid fence", [at(40), fence], "review"),
  example("behind a fence that is not solid", [at(40), { ...fence, solid: false }], "conflict"),
  example("inside a house 3 ft away", [at(36, { indoor: true }), house], "review", "common practice, no source"),
];
