import { box, concretePool, line } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

/** A wall whose face stands `away` from the long side of the pool. */
const wall = (away: number) => ({
  id: "wall",
  kind: "wall",
  path: line(-200, -away - 3, 600, -away - 3),
  thickness: 6,
  top: 72,
  permanent: true,
  reinforced: false,
});
const source = "NEC 680.26(B)(2), restated: 18 in.; that it is asked: common practice, no source";
const head = (answer: string) => ({ answers: [{ question: "ring-too-near", element: "wall", answer }] });

export const examples: readonly RuleExample[] = [
  {
    name: "a wall 14 in. from the water",
    source,
    edition: "nec-2020",
    elements: [concretePool(), wall(14)],
    expect: { element: "wall", outcome: "review" },
  },
  {
    name: "a hundredth short of the least distance",
    source,
    edition: "nec-2020",
    elements: [concretePool(), wall(17.99)],
    expect: { element: "wall", outcome: "review" },
  },
  {
    name: "a keep-out over all the ground of a ring",
    source,
    edition: "nec-2020",
    elements: [concretePool(), { id: "wall", kind: "keep-out", outline: box(100, 202, 200, 216) }],
    expect: { element: "wall", outcome: "review" },
  },
  {
    name: "settled: the authority takes it",
    source,
    edition: "nec-2020",
    head: head("yes"),
    elements: [concretePool(), wall(14)],
    expect: { element: "wall", outcome: "meets" },
  },
  {
    name: "settled: the authority does not take it",
    source,
    edition: "nec-2020",
    head: head("no"),
    elements: [concretePool(), wall(14)],
    expect: { element: "wall", outcome: "conflict" },
  },
];
