import { box, concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "exactly 6 ft",
    source: "NEC 680.22(A)(3), restated",
    edition: "nec-2020",
    elements: [concretePool(), { id: "outlet", kind: "device", device: "receptacle", at: [200, 264] }],
    expect: { element: "outlet", outcome: "meets", section: "680.22(A)(3)" },
  },
  {
    name: "a hundredth nearer",
    source: "NEC 680.22(A)(3), restated",
    edition: "nec-2020",
    elements: [concretePool(), { id: "outlet", kind: "device", device: "receptacle", at: [200, 263.99] }],
    expect: { element: "outlet", outcome: "conflict" },
  },
  {
    name: "for the pump",
    source: "NEC 680.22(A)(2), restated",
    edition: "nec-2020",
    elements: [
      concretePool(),
      { id: "pump", kind: "equipment", unit: "pump", at: [600, 100] },
      { id: "outlet", kind: "device", device: "receptacle", at: [200, 250], serves: "pump" },
    ],
    expect: { element: "outlet", outcome: "conflict", section: "680.22(A)(2)" },
  },
  {
    name: "drawn just inside a house: which side?",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [
      concretePool(),
      { id: "house", kind: "building", outline: box(0, 240, 384, 500), top: 120, metalCladding: false },
      { id: "outlet", kind: "device", device: "receptacle", at: [200, 244] },
    ],
    expect: { element: "outlet", outcome: "review" },
  },
];
