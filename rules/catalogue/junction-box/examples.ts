import { concretePool, deck } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "NEC 680.24(A)(2), restated";
const light = {
  id: "light",
  kind: "underwater-light",
  at: [200, 192],
  pool: "pool",
  formingShell: "metal",
  lensTopDepth: 18,
  conduit: "metal",
};

function example(
  name: string,
  changes: object,
  outcome: RuleExample["expect"]["outcome"],
  more: readonly object[] = [],
): RuleExample {
  const box = { id: "box", kind: "device", device: "junction-box", at: [200, 252], z: 8, serves: "light", volts: 120 };
  return {
    name,
    source,
    edition: "nec-2020",
    elements: [concretePool(), ...more, light, { ...box, ...changes }],
    expect: { element: "box", outcome, section: "680.24(A)(2)" },
  };
}

export const examples: readonly RuleExample[] = [
  example("exactly 8 in. above the water, on the ground", {}, "meets"),
  example("a hundredth lower", { z: 7.99 }, "conflict"),
  example("on a deck 6 in. up, 2 in. above it", {}, "conflict", [deck({ level: 6 })]),
  example("exactly 4 ft off", { at: [200, 240] }, "meets"),
  example("a hundredth nearer", { at: [200, 239.99] }, "conflict"),
  example("flush in the deck, for a low-voltage light", { z: 0, lowVoltage: true, volts: 12 }, "review"),
  example("nobody says how high", { z: undefined }, "review"),
  example("of something else", { z: 2, serves: "pool" }, "exempt"),
  example("on a deck 6 in. up, exactly 4 in. above it", { z: 10 }, "meets", [deck({ level: 6 })]),
  example("on that deck, a hundredth lower", { z: 9.99 }, "conflict", [deck({ level: 6 })]),
];
