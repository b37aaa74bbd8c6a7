import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

type Outcome = RuleExample["expect"]["outcome"];

function example(
  name: string,
  distance: number,
  outcome: Outcome,
  changes: object,
  answer?: string,
  head: object = {},
): RuleExample {
  const bowl = {
    id: "bowl",
    kind: "device",
    device: "luminaire",
    at: [200, 192 + distance],
    z: 24,
    gasFired: true,
    lowVoltage: true,
    volts: 12,
    listedNearWater: true,
    needsGrounding: false,
    indoor: false,
    ...changes,
  };
  const answers = answer === undefined ? [] : [{ question: "gas-piping", element: "bowl", answer }];
  return {
    name,
    source: "NEC 680.22(B)(7), from memory",
    edition: "nec-2020",
    head: { answers, ...head },
    elements: [concretePool(), bowl],
    expect: { element: "bowl", outcome, section: "680.22(B)(7)" },
  };
}

export const examples: readonly RuleExample[] = [
  example("a fire bowl on metal piping, exactly 5 ft off", 60, "bond", { gasPiping: "metal" }),
  example("a hundredth farther", 60.01, "exempt", { gasPiping: "metal" }),
  example("on plastic piping", 24, "exempt", { gasPiping: "nonmetal" }),
  example("on piping of which nothing is given", 24, "review", {}),
  example("on piping that somebody has looked at", 24, "bond", {}, "metal"),
  example("as near to 5 ft as the drawing may be off", 60.01, "review", { gasPiping: "metal" }, undefined, {
    accuracy: 1,
  }),
  example("on piping that is drawn by itself", 24, "exempt", {}, "metal, and drawn as a part of its own"),
];
