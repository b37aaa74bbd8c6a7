import { concretePool, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "NEC 680.11 and Table 300.5, restated";

function example(name: string, changes: object, outcome: RuleExample["expect"]["outcome"]): RuleExample {
  const run = {
    id: "run",
    kind: "underground-run",
    path: line(-100, 260, 500, 260),
    method: "pvc",
    cover: 18,
    servesPool: false,
  };
  return {
    name,
    source,
    edition: "nec-2020",
    elements: [concretePool(), { ...run, ...changes }],
    expect: { element: "run", outcome, section: "680.11" },
  };
}

const under = { path: line(-100, 100, 500, 100) };

export const examples: readonly RuleExample[] = [
  example("nonmetallic conduit 18 in. down", {}, "meets"),
  example("a hundredth less", { cover: 17.99 }, "conflict"),
  example("rigid metal conduit 6 in. down", { method: "rmc", cover: 6 }, "meets"),
  example("a hundredth less of it", { method: "rmc", cover: 5.99 }, "conflict"),
  example("buried without conduit", { method: "direct-burial", cover: 24 }, "review"),
  example("nobody says how deep", { cover: undefined }, "review"),
  example("under a pool that it does not serve", under, "conflict"),
  example("under a pool that it serves", { ...under, servesPool: true }, "meets"),
  example("intermediate metal conduit 6 in. down", { method: "imc", cover: 6 }, "meets"),
  example("reinforced resin conduit 18 in. down", { method: "rtrc", cover: 18 }, "meets"),
  example("metal-clad cable 24 in. down", { method: "mc", cover: 24 }, "meets"),
  example("metal-clad cable a hundredth less", { method: "mc", cover: 23.99 }, "review"),
];
