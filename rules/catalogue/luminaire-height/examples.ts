import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const outdoors = "NEC 680.22(B)(1), restated";
const indoors = "NEC 680.22(B)(2), restated";
const existing = "NEC 680.22(B)(3), restated";
const outer = "NEC 680.22(B)(4), restated";
const lowVoltage = "NEC 680.22(B)(6), restated";

function example(
  name: string,
  source: string,
  distance: number,
  changes: object,
  outcome: RuleExample["expect"]["outcome"],
  section: string,
): RuleExample {
  const lamp = {
    id: "lamp",
    kind: "device",
    device: "luminaire",
    at: [200, 192 + distance],
    z: 144,
    gfci: false,
    indoor: false,
    rigidlyAttached: true,
    totallyEnclosed: true,
    ...changes,
  };
  return {
    name,
    source,
    edition: "nec-2020",
    elements: [concretePool(), lamp],
    expect: { element: "lamp", outcome, section },
  };
}

const garden = { z: 14, lowVoltage: true, volts: 12 };

export const examples: readonly RuleExample[] = [
  example("over the water, exactly 12 ft up", outdoors, -50, {}, "meets", "680.22(B)(1)"),
  example("a hundredth lower", outdoors, -50, { z: 143.99 }, "conflict", "680.22(B)(1)"),
  example("exactly 5 ft off still counts as near", outdoors, 60, { z: 100, gfci: true }, "conflict", "680.22(B)(1)"),
  example("of which nobody says how high", outdoors, 30, { z: undefined }, "review", "680.22(B)(1)"),
  example("indoors, 7 ft 6 in. up", indoors, 0, { indoor: true, z: 90, gfci: true }, "meets", "680.22(B)(2)"),
  example("indoors, without GFCI", indoors, 0, { indoor: true, z: 100 }, "conflict", "680.22(B)(2)"),
  example("there before, 5 ft up", existing, 30, { existing: true, z: 60, gfci: true }, "meets", "680.22(B)(3)"),
  example(
    "there before, a hundredth lower",
    existing,
    30,
    { existing: true, z: 59.99, gfci: true },
    "conflict",
    "680.22(B)(3)",
  ),
  example("just beyond 5 ft, low, with GFCI", outer, 60.01, { z: 20, gfci: true }, "meets", "680.22(B)(4)"),
  example("beyond 5 ft, 5 ft up and rigid", outer, 120, { z: 60 }, "meets", "680.22(B)(4)"),
  example("beyond 5 ft, low, without GFCI", outer, 90, { z: 59.99 }, "conflict", "680.22(B)(4)"),
  example("beyond 10 ft", outer, 120.01, { z: 20 }, "exempt", "680.22(B)(4)"),
  example(
    "low voltage, listed for it",
    lowVoltage,
    20,
    { ...garden, listedNearWater: true, needsGrounding: false },
    "meets",
    "680.22(B)(6)",
  ),
  example("a plain garden light", lowVoltage, 20, { ...garden, listedNearWater: false }, "conflict", "680.22(B)(1)"),
  example(
    "low voltage, burning gas, listed for it",
    "NEC 680.22(B)(7), from memory",
    20,
    { ...garden, gasFired: true, listedNearWater: true, needsGrounding: false },
    "meets",
    "680.22(B)(7)",
  ),
  example(
    "burning gas, and no word of its listing",
    "NEC 680.22(B)(7), from memory",
    20,
    { ...garden, gasFired: true, needsGrounding: false },
    "review",
    "680.22(B)(7)",
  ),
  example(
    "burning gas, lit by house current",
    "NEC 680.22(B)(7), from memory",
    20,
    { z: 14, volts: 120, gasFired: true, listedNearWater: true, needsGrounding: false },
    "conflict",
    "680.22(B)(1)",
  ),
  example(
    "low voltage, and no word of its listing",
    lowVoltage,
    20,
    { ...garden, needsGrounding: false },
    "review",
    "680.22(B)(6)",
  ),
  example("indoors, a hundredth lower", indoors, 0, { indoor: true, z: 89.99, gfci: true }, "conflict", "680.22(B)(2)"),
  example(
    "exactly at the contact limit, listed for it",
    "NEC 680.22(B)(6), restated; the limit from memory",
    20,
    { ...garden, volts: 15, listedNearWater: true, needsGrounding: false },
    "meets",
    "680.22(B)(6)",
  ),
  example(
    "low voltage, yet a hundredth over the contact limit",
    "NEC 680.22(B)(6), restated; the limit from memory",
    20,
    { ...garden, volts: 15.01, listedNearWater: true, needsGrounding: false },
    "review",
    "680.22(B)(6)",
  ),
];
