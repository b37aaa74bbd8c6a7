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

/** Ties at distances along the inside wall from its first corner. Source: arithmetic, 384 by 192 in. */
function alongTies(distances: readonly number[]) {
  return distances.map((along, i) => {
    const at: [number, number] =
      along <= 384
        ? [along, 0]
        : along <= 576
          ? [384, along - 384]
          : along <= 960
            ? [960 - along, 192]
            : [0, 1152 - along];
    return clampTie(`tie-${i}`, at, ["perimeter", "pool"]);
  });
}

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
  example(
    "three ties, evenly round the pool",
    four,
    [concretePool(), ringCopper(), ...alongTies([0, 384, 768])],
    "missing",
  ),
  example(
    "a widest gap of exactly 1 1/4 quarters of the perimeter",
    "common practice, no source",
    [concretePool(), ringCopper(), ...alongTies([0, 264, 528, 792])],
    "meets",
  ),
  example(
    "a widest gap a hundredth over 1 1/4 quarters of the perimeter",
    "common practice, no source",
    [concretePool(), ringCopper(), ...alongTies([0, 264, 528, 791.99])],
    "review",
  ),
];
