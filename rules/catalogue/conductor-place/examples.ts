import { pathRoundPool, ringCopper } from "../common/example-copper.ts";
import { concretePool, deck } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const place = "NEC 680.26(B)(2), restated";

const gridPlace = "NEC 680.26(B)(2)(c), restated; depth from memory before 2023";

/** A copper grid round the pool, to the edge of the perimeter surface. */
const GRID = { role: "grid", path: pathRoundPool(36) };

function example(
  name: string,
  source: string,
  changes: object,
  outcome: RuleExample["expect"]["outcome"],
  edition: RuleExample["edition"] = "nec-2020",
  more: readonly object[] = [],
): RuleExample {
  const elements = [concretePool(), ...more, ringCopper(changes)];
  return { name, source, edition, elements, expect: { element: "ring", outcome, section: "680.26(B)(2)" } };
}

/** A depth below the subgrade is of no use from 2023 on, where it is told from finished grade; before, the other way round. */
const ASKED_FROM_2023 = { "nec-2023": "review" } as const;
const ASKED_UNTIL_2020 = { "nec-2017": "review", "nec-2020": "review" } as const;

export const examples: readonly RuleExample[] = [
  { ...example("21 in. off, 5 in. below the subgrade", place, {}, "meets"), elsewhere: ASKED_FROM_2023 },
  { ...example("exactly 18 in. off", place, { path: pathRoundPool(18) }, "meets"), elsewhere: ASKED_FROM_2023 },
  { ...example("exactly 24 in. off", place, { path: pathRoundPool(24) }, "meets"), elsewhere: ASKED_FROM_2023 },
  example("17.9 in. off", place, { path: pathRoundPool(17.9) }, "conflict"),
  example("24.1 in. off", place, { path: pathRoundPool(24.1) }, "conflict"),
  { ...example("7 in. below the subgrade", place, { cover: 7 }, "conflict"), elsewhere: ASKED_FROM_2023 },
  { ...example("3 in. below the subgrade", place, { cover: 3 }, "conflict"), elsewhere: ASKED_FROM_2023 },
  example("joined by twisting", "NEC 680.26(B)(2), 250.8, restated", { joint: "twisted" }, "conflict"),
  example("a depth that nobody gave", "common practice, no source", { cover: undefined }, "review"),
  {
    ...example(
      "a depth below grade where the subgrade counts",
      "common practice, no source",
      { coverFrom: "grade" },
      "review",
    ),
    elsewhere: { "nec-2023": "meets" },
  },
  {
    ...example("in soil under the 2023 edition", place, { coverFrom: "grade" }, "meets", "nec-2023"),
    elsewhere: ASKED_UNTIL_2020,
  },
  {
    ...example(
      "alone under a concrete deck under the 2023 edition",
      place,
      { coverFrom: "grade" },
      "conflict",
      "nec-2023",
      [deck()],
    ),
    elsewhere: ASKED_UNTIL_2020,
  },
  {
    ...example("under the same deck before 2023", place, {}, "meets", "nec-2020", [deck()]),
    elsewhere: { "nec-2023": "conflict" },
  },
  ...[4, 6].map((cover) => ({
    ...example(`exactly ${cover} in. below the subgrade`, place, { cover }, "meets"),
    elsewhere: ASKED_FROM_2023,
  })),
  ...[3.99, 6.01].map((cover) => ({
    ...example(`${cover} in. below the subgrade`, place, { cover }, "conflict"),
    elsewhere: ASKED_FROM_2023,
  })),
  ...[4, 6].map((cover) => ({
    ...example(`exactly ${cover} in. below grade`, place, { cover, coverFrom: "grade" }, "meets", "nec-2023"),
    elsewhere: ASKED_UNTIL_2020,
  })),
  ...[3.99, 6.01].map((cover) => ({
    ...example(`${cover} in. below grade`, place, { cover, coverFrom: "grade" }, "conflict", "nec-2023"),
    elsewhere: ASKED_UNTIL_2020,
  })),
  ...["none", "exothermic"].map((joint) => ({
    ...example(`joints: ${joint}`, place, { joint }, "meets"),
    elsewhere: ASKED_FROM_2023,
  })),
  ...["none", "exothermic"].map((joint) => ({
    ...example(`joints: ${joint}, its depth below grade`, place, { joint, coverFrom: "grade" }, "meets", "nec-2023"),
    elsewhere: ASKED_UNTIL_2020,
  })),
  ...[4, 6].map((cover) => ({
    ...example(`a grid exactly ${cover} in. below the subgrade`, gridPlace, { ...GRID, cover }, "meets"),
    elsewhere: ASKED_FROM_2023,
  })),
  ...[3.99, 6.01].map((cover) => ({
    ...example(`a grid ${cover} in. below the subgrade`, gridPlace, { ...GRID, cover }, "conflict"),
    elsewhere: ASKED_FROM_2023,
  })),
  ...[1, 6].map((cover) => ({
    ...example(
      `a grid ${cover} in. below grade`,
      gridPlace,
      { ...GRID, cover, coverFrom: "grade" },
      "meets",
      "nec-2023",
    ),
    elsewhere: ASKED_UNTIL_2020,
  })),
  {
    ...example(
      "a grid too deep below grade",
      gridPlace,
      { ...GRID, cover: 6.01, coverFrom: "grade" },
      "conflict",
      "nec-2023",
    ),
    elsewhere: ASKED_UNTIL_2020,
  },
];
