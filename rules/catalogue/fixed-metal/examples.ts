import { box, concretePool, line, POOL_WIDTH, post } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

/** A tower 56.01 in. high, out from the pool's long side. */
function tower(distance: number) {
  const outline = box(200, POOL_WIDTH + distance, 240, POOL_WIDTH + distance + 40);
  return { id: "tower", kind: "structure", structure: "tower", outline, top: 56.01 };
}

export const examples: readonly RuleExample[] = [
  {
    name: "exactly 5 ft is bonded",
    source: "NEC 680.26(B)(7), restated: more than 5 ft is exempt",
    edition: "nec-2020",
    elements: [concretePool(), post(60)],
    expect: { element: "post", outcome: "bond", section: "680.26(B)(7)" },
  },
  {
    name: "a hundredth more is exempt",
    source: "NEC 680.26(B)(7), restated",
    edition: "nec-2020",
    elements: [concretePool(), post(60.01)],
    expect: { element: "post", outcome: "exempt" },
  },
  {
    name: "exactly 12 ft above the water is bonded",
    source: "NEC 680.26(B)(7), restated: more than 12 ft is exempt",
    edition: "nec-2020",
    elements: [concretePool(), post(10, { z: [144, 150] })],
    expect: { element: "post", outcome: "bond" },
  },
  {
    name: "a hundredth higher is exempt",
    source: "NEC 680.26(B)(7), restated",
    edition: "nec-2020",
    elements: [concretePool(), post(10, { z: [144.01, 150] })],
    expect: { element: "post", outcome: "exempt" },
  },
  {
    name: "not high enough above a tower 10 ft from the water",
    source: "NEC 680.26(B)(7), restated; how near a tower counts is a judgement, no source",
    edition: "nec-2020",
    elements: [concretePool(), post(10, { z: [200, 210] }), tower(120)],
    expect: { element: "post", outcome: "bond" },
  },
  {
    name: "a tower a hundredth farther is not there",
    source: "a judgement, no source",
    edition: "nec-2020",
    elements: [concretePool(), post(10, { z: [200, 210] }), tower(120.01)],
    expect: { element: "post", outcome: "exempt" },
  },
  {
    name: "how high it hangs is not given",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool(), post(10, { z: undefined })],
    expect: { element: "post", outcome: "review" },
  },
  {
    name: "behind a wall: does it prevent contact?",
    source: "NEC 680.26(B)(7), restated; the barrier's wording from memory",
    edition: "nec-2020",
    elements: [
      concretePool(),
      post(48),
      {
        id: "wall",
        kind: "wall",
        path: line(0, 216, 384, 216),
        thickness: 6,
        top: 72,
        permanent: true,
        reinforced: false,
      },
    ],
    expect: { element: "post", outcome: "review" },
  },
  {
    name: "a fence whose material is not given",
    source: "common practice, no source",
    edition: "nec-2020",
    elements: [concretePool(), { id: "fence", kind: "fence", path: line(-80, -55, 464, -55) }],
    expect: { element: "fence", outcome: "review" },
  },
  {
    name: "a metal fence",
    source: "NEC 680.26(B)(7), restated",
    edition: "nec-2020",
    elements: [concretePool(), { id: "fence", kind: "fence", path: line(-80, -55, 464, -55), metal: true }],
    expect: { element: "fence", outcome: "bond" },
  },
];
