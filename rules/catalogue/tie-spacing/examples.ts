import { clampTie, fourTies, ringCopper } from "../common/example-copper.ts";
import { concretePool, linerPool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const four = "NEC 680.26(B)(2), restated";

function example(
  name: string,
  source: string,
  elements: readonly object[],
  outcome: RuleExample["expect"]["outcome"],
): RuleExample {
  return {
    name,
    source,
    edition: "nec-2020",
    elements,
    expect: { element: null, body: "pool", outcome, section: "680.26(B)(2)" },
  };
}

/** All four on one long side. */
const bunched = [96, 128, 160, 192].map((x, i) => clampTie(`tie-${i}`, [x, 0], ["perimeter", "pool"]));

export const examples: readonly RuleExample[] = [
  example("four ties, evenly round the pool", four, [concretePool(), ringCopper(), ...fourTies()], "meets"),
  example("nothing recorded yet", four, [concretePool()], "bond"),
  example("one tie in place of four", four, [concretePool(), ringCopper(), ...fourTies().slice(0, 1)], "missing"),
  example(
    "one of four is a screw",
    "NEC 680.26(B)(2), 250.8, restated",
    [
      concretePool(),
      ringCopper(),
      ...fourTies().slice(0, 3),
      clampTie("tie-4", [0, 192], ["perimeter", "pool"], { hardware: "screw" }),
    ],
    "missing",
  ),
  example("four ties on one side", "common practice, no source", [concretePool(), ringCopper(), ...bunched], "review"),
  example(
    "four ties, one of hardware that nobody gave",
    "common practice, no source",
    [
      concretePool(),
      ringCopper(),
      ...fourTies().slice(0, 3),
      clampTie("tie-4", [0, 192], ["perimeter", "pool"], { hardware: undefined }),
    ],
    "review",
  ),
  example("a liner", "NEC 680.26(B)(2), one published restatement", [linerPool(), ringCopper()], "exempt"),
  example(
    "a liner with a metal wall behind it",
    "common practice, no source",
    [linerPool({ wallFrame: "metal" }), ringCopper()],
    "review",
  ),
];
