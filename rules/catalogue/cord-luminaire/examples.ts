import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

function example(
  name: string,
  distance: number,
  outcome: RuleExample["expect"]["outcome"],
  answer?: "yes" | "no",
): RuleExample {
  const lamp = {
    id: "lamp",
    kind: "device",
    device: "luminaire",
    at: [200, 192 + distance],
    z: 40,
    gfci: true,
    indoor: false,
    cordConnected: true,
  };
  const answers = answer === undefined ? [] : [{ question: "cord-of-luminaire", element: "lamp", answer }];
  return {
    name,
    source: "NEC 680.22(B)(5), from memory",
    edition: "nec-2020",
    head: { answers },
    elements: [concretePool(), lamp],
    expect: { element: "lamp", outcome, section: "680.22(B)(5)" },
  };
}

export const examples: readonly RuleExample[] = [
  example("exactly 16 ft away", 192, "review"),
  example("a hundredth farther", 192.01, "exempt"),
  example("on a cord that was looked at", 150, "meets", "yes"),
  example("on a cord that is not as asked", 150, "conflict", "no"),
];
