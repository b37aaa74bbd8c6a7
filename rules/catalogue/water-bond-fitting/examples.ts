import { clampTie, ringCopper } from "../common/example-copper.ts";
import { linerPool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "exactly 9 sq in.",
    source: "NEC 680.26(C), restated",
    edition: "nec-2020",
    elements: [
      linerPool(),
      {
        id: "plate",
        kind: "water-bond",
        at: [100, 1],
        pool: "pool",
        exposedArea: 9,
        material: "bronze",
        alwaysSubmerged: true,
      },
    ],
    expect: { element: "plate", outcome: "bond" },
  },
  {
    name: "a hundredth less",
    source: "NEC 680.26(C), restated",
    edition: "nec-2020",
    elements: [
      linerPool(),
      {
        id: "plate",
        kind: "water-bond",
        at: [100, 1],
        pool: "pool",
        exposedArea: 8.99,
        material: "bronze",
        alwaysSubmerged: true,
      },
    ],
    expect: { element: "plate", outcome: "conflict" },
  },
  {
    name: "two halves of what is asked",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [
      linerPool(),
      {
        id: "plate",
        kind: "water-bond",
        at: [100, 1],
        pool: "pool",
        exposedArea: 5,
        material: "bronze",
        alwaysSubmerged: true,
      },
      {
        id: "second",
        kind: "water-bond",
        at: [200, 1],
        pool: "pool",
        exposedArea: 4,
        material: "bronze",
        alwaysSubmerged: true,
      },
    ],
    expect: { element: "plate", outcome: "review" },
  },
  ...["copper", "brass", "stainless steel", "titanium"].map(
    (material): RuleExample => ({
      name: `a plate of ${material}`,
      source: "NEC 680.26(C), restated; which metals resist corrosion is a judgement, no source",
      edition: "nec-2020",
      elements: [
        linerPool(),
        {
          id: "plate",
          kind: "water-bond",
          at: [100, 1],
          pool: "pool",
          exposedArea: 9,
          material,
          alwaysSubmerged: true,
        },
      ],
      expect: { element: "plate", outcome: "bond" },
    }),
  ),
  {
    name: "a plate tied to the ring",
    source: "NEC 680.26(C), restated",
    edition: "nec-2020",
    elements: [
      linerPool(),
      ringCopper(),
      clampTie("tie", [100, -21], ["plate", "perimeter"]),
      {
        id: "plate",
        kind: "water-bond",
        at: [100, 1],
        pool: "pool",
        exposedArea: 9,
        material: "bronze",
        alwaysSubmerged: true,
      },
    ],
    expect: { element: "plate", outcome: "meets" },
  },
];
