import { clampTie, ringCopper } from "../common/example-copper.ts";
import { concretePool, deck, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const joins = "NEC 680.26(B), 250.8, restated";
const tail = ringCopper({ id: "tail", role: "tail", path: line(405, 100, 600, 100), joint: "none" });
const pump = { id: "pump", kind: "equipment", at: [600, 100], unit: "pump" };

function example(
  name: string,
  source: string,
  changes: object,
  outcome: RuleExample["expect"]["outcome"],
  ends: readonly string[] = ["perimeter", "pool"],
  at: readonly [number, number] = [96, -21],
): RuleExample {
  const elements = [concretePool(), pump, tail, ringCopper(), clampTie("tie", at, ends, changes)];
  return { name, source, edition: "nec-2020", elements, expect: { element: "tie", outcome, section: "680.26(B)" } };
}

export const examples: readonly RuleExample[] = [
  example("a listed clamp that may be buried", joins, {}, "meets"),
  example(
    "an exothermic weld",
    joins,
    { hardware: "exothermic", listedForBurial: undefined, conductorsInClamp: undefined },
    "meets",
  ),
  example(
    "a lug at the pump, above ground",
    joins,
    { hardware: "lug", listedForBurial: undefined },
    "meets",
    ["tail", "pump"],
    [600, 100],
  ),
  example("at the ring, joining the pump that is wired to it", "common practice, no source", {}, "meets", [
    "perimeter",
    "pump",
  ]),
  example("60 in. from the shell that it names", "judgement, no source", {}, "meets", ["ring", "pool"], [100, 252]),
  example("a hundredth farther", "judgement, no source", {}, "review", ["ring", "pool"], [100, 252.01]),
  example("far from all that it names", "common practice, no source", {}, "review", ["ring", "pump"], [300, 500]),
  example("a sheet-metal screw", joins, { hardware: "screw" }, "conflict"),
  example("solder alone", joins, { hardware: "solder" }, "conflict"),
  example("steel tie wire on copper", joins, { hardware: "tie-wire" }, "conflict"),
  example(
    "two wires in one clamp",
    "NEC 110.3(B), restated; one published source",
    { conductorsInClamp: 2 },
    "conflict",
  ),
  example("buried, and not listed for it", "NEC 680.26(B), restated", { listedForBurial: false }, "conflict"),
  example("hardware that nobody gave", "common practice, no source", { hardware: undefined }, "review"),
  example("buried, and no word of its listing", "common practice, no source", { listedForBurial: undefined }, "review"),
  example(
    "no word of how many wires it holds",
    "common practice, no source",
    { conductorsInClamp: undefined },
    "review",
  ),
  example("a name that nothing has", "common practice, no source", {}, "review", ["perimeter", "slide"]),
  example("a listed pressure connector", joins, { hardware: "pressure-connector" }, "meets"),
  {
    ...example("steel tie wire between bars", joins, {}, "meets"),
    elements: [
      concretePool(),
      deck({ steel: "rebar" }),
      clampTie("tie", [96, -6], ["deck", "pool"], { hardware: "tie-wire", conductorsInClamp: undefined }),
    ],
  },
];
