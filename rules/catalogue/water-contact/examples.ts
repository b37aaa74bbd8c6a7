import { concretePool, linerPool, post } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

/** 9 sq in. as such, as a plate of 2 by 4 1/2 in., and as a tube just long enough. */
const DIMENSIONS = {
  exposedArea: { exposedArea: 9 },
  plate: { width: 2, height: 4.5 },
  tube: { diameter: 1.5, length: 9 / (1.5 * Math.PI) },
};

export const examples: readonly RuleExample[] = [
  {
    name: "a plastered shell with bonded steel",
    source: "NEC 680.26(C), restated",
    edition: "nec-2020",
    elements: [concretePool()],
    expect: { element: null, body: "pool", outcome: "meets" },
  },
  {
    name: "a liner pool with nothing in the water",
    source: "NEC 680.26(C), restated",
    edition: "nec-2020",
    elements: [linerPool()],
    expect: { element: null, body: "pool", outcome: "bond" },
  },
  {
    name: "a concrete shell under a membrane",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool({ finish: "membrane" })],
    expect: { element: null, body: "pool", outcome: "review" },
  },
  {
    name: "a ladder that can be taken out",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [linerPool(), post(0, { part: "ladder", z: [-48, 36], removable: true })],
    expect: { element: null, body: "pool", outcome: "review" },
  },
  ...["epoxy", "fiberglass"].map(
    (finish): RuleExample => ({
      name: `a concrete shell under ${finish}`,
      source: "common practice, no source",
      edition: "nec-2020",
      elements: [concretePool({ finish })],
      expect: { element: null, body: "pool", outcome: "review" },
    }),
  ),
  ...(["exposedArea", "plate", "tube"] as const).map(
    (given): RuleExample => ({
      name: `a liner pool with a bronze fitting, its surface given by ${given}`,
      source: "NEC 680.26(C), restated; the surface: arithmetic",
      edition: "nec-2020",
      elements: [
        linerPool(),
        {
          id: "fitting",
          kind: "water-bond",
          at: [100, 1],
          pool: "pool",
          material: "bronze",
          alwaysSubmerged: true,
          ...DIMENSIONS[given],
        },
      ],
      expect: { element: null, body: "pool", outcome: "bond" },
    }),
  ),
];
