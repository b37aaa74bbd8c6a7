import { concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

export const examples: readonly RuleExample[] = [
  {
    name: "an amendment that names nothing",
    source: "common practice, no source",
    edition: "nec-2020",
    head: { amendments: [{ parameter: "perimeter.ringUnderPavng", value: false, reason: "invented ordinance" }] },
    elements: [concretePool()],
    expect: { element: null, outcome: "review" },
  },
  {
    name: "an amendment of another type",
    source: "common practice, no source",
    edition: "nec-2020",
    head: { amendments: [{ parameter: "fixedMetal.distance", value: "far" }] },
    elements: [concretePool()],
    expect: { element: null, outcome: "review" },
  },
  {
    name: "an amendment without a reason",
    source: "common practice, no source",
    edition: "nec-2020",
    head: { amendments: [{ parameter: "fixedMetal.distance", value: 72, reason: " " }] },
    elements: [concretePool()],
    expect: { element: null, outcome: "review" },
  },
  {
    name: "two that give one parameter different values",
    source: "common practice, no source",
    edition: "nec-2020",
    head: {
      amendments: [
        { parameter: "switch.distance", value: 72, reason: "invented ordinance" },
        { parameter: "switch.distance", value: 50, reason: "an older one" },
      ],
    },
    elements: [concretePool()],
    expect: { element: null, outcome: "review" },
  },
];
