import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "NEC 680.22(A)(1), restated";

/** A receptacle that serves the pool. */
const outlet = (distance: number, changes: object = {}) => ({
  id: "outlet",
  kind: "device",
  device: "receptacle",
  at: [200, 192 + distance],
  z: 24,
  volts: 125,
  amps: 20,
  gfci: true,
  generalPurpose: true,
  indoor: false,
  ...changes,
});

function example(
  name: string,
  elements: readonly object[],
  element: string | null,
  outcome: RuleExample["expect"]["outcome"],
): RuleExample {
  const expect = { element, body: "pool", outcome, section: "680.22(A)(1)" };
  return { name, source, edition: "nec-2020", elements: [concretePool(), ...elements], expect };
}

export const examples: readonly RuleExample[] = [
  example("exactly 6 ft away", [outlet(72)], "outlet", "meets"),
  example("exactly 20 ft away and 6 ft 6 in. up", [outlet(240, { z: 78 })], "outlet", "meets"),
  example("the only one a hundredth too far", [outlet(240.01)], null, "conflict"),
  example("the only one a hundredth too high", [outlet(120, { z: 78.01 })], null, "conflict"),
  example("the only one for 240 V", [outlet(120, { volts: 240 })], null, "conflict"),
  example("none drawn", [], null, "review"),
  example("one of which the height is not given", [outlet(120, { z: undefined })], null, "review"),
  example("the only one a hundredth too near", [outlet(71.99)], null, "conflict"),
  example("one of 15 A", [outlet(120, { amps: 15 })], "outlet", "meets"),
  example("the only one of another voltage, 126 V", [outlet(120, { volts: 126 })], null, "conflict"),
];
