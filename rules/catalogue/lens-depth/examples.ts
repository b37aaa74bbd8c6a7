import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

function example(name: string, changes: object, outcome: RuleExample["expect"]["outcome"]): RuleExample {
  const light = { id: "light", kind: "underwater-light", at: [200, 0], pool: "pool", formingShell: "metal" };
  return {
    name,
    source: "NEC 680.23(A)(5), restated",
    edition: "nec-2020",
    elements: [concretePool(), { ...light, ...changes }],
    expect: { element: "light", outcome, section: "680.23(A)(5)" },
  };
}

export const examples: readonly RuleExample[] = [
  example("exactly 18 in.", { lensTopDepth: 18 }, "meets"),
  example("a hundredth less", { lensTopDepth: 17.99 }, "conflict"),
  example("listed for less", { lensTopDepth: 8, listedMinDepth: 6 }, "meets"),
  example("never under 4 in.", { lensTopDepth: 3.99, listedMinDepth: 2 }, "conflict"),
  example("nobody says how deep", {}, "review"),
  example("listed for 4 in., exactly there", { lensTopDepth: 4, listedMinDepth: 4 }, "meets"),
];
