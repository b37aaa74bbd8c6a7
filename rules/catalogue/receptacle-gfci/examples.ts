import { concretePool, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "NEC 680.22(A)(4), restated";

function example(
  name: string,
  distance: number,
  changes: object,
  outcome: RuleExample["expect"]["outcome"],
  more: readonly object[] = [],
  edition: RuleExample["edition"] = "nec-2020",
): RuleExample {
  const outlet = {
    id: "outlet",
    kind: "device",
    device: "receptacle",
    at: [200, 192 + distance],
    z: 24,
    volts: 120,
    amps: 20,
    generalPurpose: true,
    indoor: false,
    ...changes,
  };
  return {
    name,
    source,
    edition,
    elements: [concretePool(), outlet, ...more],
    expect: { element: "outlet", outcome, section: "680.22(A)(4)" },
  };
}

const wall = { id: "wall", kind: "wall", path: line(-2000, 212, 2000, 212), thickness: 6, top: 72, reinforced: false };

export const examples: readonly RuleExample[] = [
  example("with GFCI", 120, { gfci: true }, "meets"),
  example("exactly 20 ft, without", 240, { gfci: false }, "conflict"),
  example("a hundredth beyond", 240.01, { gfci: false }, "exempt"),
  example("nobody says", 120, {}, "review"),
  {
    ...example("240 V, without", 120, { gfci: false, volts: 240, amps: 30 }, "exempt"),
    elsewhere: { "nec-2023": "conflict" },
  },
  example("behind a wall of which nobody says that it stays", 120, { gfci: false }, "review", [wall]),
  example("exactly 125 V and 15 A, without", 120, { gfci: false, volts: 125, amps: 15 }, "conflict"),
  {
    ...example("126 V, without", 120, { gfci: false, volts: 126, amps: 20 }, "exempt"),
    elsewhere: { "nec-2023": "conflict" },
  },
  {
    ...example("exactly 250 V, without", 120, { gfci: false, volts: 250, amps: 50 }, "conflict", [], "nec-2023"),
    elsewhere: { "nec-2017": "exempt", "nec-2020": "exempt" },
  },
  example("251 V, without", 120, { gfci: false, volts: 251, amps: 50 }, "exempt"),
];
