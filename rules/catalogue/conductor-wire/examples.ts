import { ringCopper } from "../common/example-copper.ts";
import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const wire = "NEC 680.26(B), restated";

const bare = "NEC 680.26(B)(1)(b), (B)(2)(b), restated: ring and grid are bare";

const INSULATED_BRANCH = { role: "branch", covering: "insulated" };

function example(
  name: string,
  source: string,
  changes: object,
  outcome: RuleExample["expect"]["outcome"],
): RuleExample {
  const elements = [concretePool(), ringCopper(changes)];
  return { name, source, edition: "nec-2020", elements, expect: { element: "ring", outcome, section: "680.26(B)" } };
}

export const examples: readonly RuleExample[] = [
  example("solid copper of 8 AWG", wire, {}, "meets"),
  example(
    "larger copper, written as 1/0",
    "NEC 680.26(B), restated; 1/0 is larger than 8 (ASTM B258)",
    { awg: "1/0" },
    "meets",
  ),
  example("an insulated branch", wire, INSULATED_BRANCH, "meets"),
  example("a branch of which nobody gave the covering", wire, { ...INSULATED_BRANCH, covering: undefined }, "meets"),
  example("an insulated ring", bare, { covering: "insulated" }, "conflict"),
  example("a covered ring", bare, { covering: "covered" }, "conflict"),
  example("a ring that nobody says is bare", "common practice, no source", { covering: undefined }, "review"),
  example(
    "brass conduit in place of the wire",
    wire,
    { material: "brass-conduit", awg: undefined, solid: undefined },
    "meets",
  ),
  example("10 AWG", wire, { awg: 10 }, "conflict"),
  example("stranded copper", wire, { solid: false }, "conflict"),
  example("aluminum", wire, { material: "aluminum" }, "conflict"),
  example("copper-clad steel, taken from 2026 on only", wire, { material: "copper-clad-steel" }, "conflict"),
  example("a size that nobody gave", "common practice, no source", { awg: undefined }, "review"),
  example("solid or stranded: not given", "common practice, no source", { solid: undefined }, "review"),
  example("a metal that nobody gave", "common practice, no source", { material: undefined }, "review"),
  example("a size thinner, 9 AWG", wire, { awg: 9 }, "conflict"),
  example("a covered branch", wire, { ...INSULATED_BRANCH, covering: "covered" }, "meets"),
];
