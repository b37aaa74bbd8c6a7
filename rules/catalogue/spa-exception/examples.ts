import { box, concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "a listed spa with a high rim",
    source: "NEC 680.42(B), restated",
    edition: "nec-2020",
    elements: [
      concretePool({
        id: "spa",
        body: "spa",
        shell: "fiberglass",
        installation: "on-ground",
        listedSelfContained: true,
        indoorOnly: false,
        rim: 28,
      }),
    ],
    expect: { element: "spa", outcome: "exempt" },
  },
  {
    name: "a rim an inch too low",
    source: "NEC 680.42(B), restated: 28 in.",
    edition: "nec-2020",
    elements: [
      concretePool({
        id: "spa",
        body: "spa",
        shell: "fiberglass",
        installation: "on-ground",
        listedSelfContained: true,
        indoorOnly: false,
        rim: 27,
      }),
    ],
    expect: { element: "spa", outcome: "bond" },
  },
  {
    name: "a step beside it whose level is not given",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [
      concretePool({
        id: "spa",
        body: "spa",
        shell: "fiberglass",
        installation: "on-ground",
        listedSelfContained: true,
        indoorOnly: false,
        rim: 36,
      }),
      { id: "step", kind: "surface", material: "wood", outline: box(0, 200, 40, 220) },
    ],
    expect: { element: "spa", outcome: "review" },
  },
  {
    name: "an indoor spa",
    source: "NEC 680.43, from memory",
    edition: "nec-2020",
    elements: [
      concretePool({
        id: "spa",
        body: "spa",
        shell: "fiberglass",
        installation: "indoor",
        listedSelfContained: true,
        rim: 36,
      }),
    ],
    expect: { element: "spa", outcome: "review", section: "680.43" },
  },
  ...(
    [
      [29.5, "bond"],
      [30.5, "exempt"],
    ] as const
  ).map(
    ([away, outcome]): RuleExample => ({
      name: `a step 10 in. high, ${away} in. from the spa`,
      source: "NEC 680.42(B), restated: within 30 in.; one published source",
      edition: "nec-2020",
      elements: [
        concretePool({
          id: "spa",
          body: "spa",
          shell: "fiberglass",
          installation: "on-ground",
          listedSelfContained: true,
          indoorOnly: false,
          rim: 36,
        }),
        { id: "step", kind: "surface", material: "wood", outline: box(0, 192 + away, 40, 260), level: 10 },
      ],
      expect: { element: "spa", outcome },
    }),
  ),
];
