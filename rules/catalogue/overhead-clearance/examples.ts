import { box, concretePool } from "../common/example-yard.ts";
import type { RuleExample } from "../rule.ts";

const source = "NEC 680.9(A), restated";

/** A level line along the pool's long side, at a distance from it (negative: over the water). */
function wire(distance: number, z: number, changes: object = {}) {
  const y = 192 + distance;
  const vertices = [
    [-400, y, z],
    [800, y, z],
  ];
  return {
    id: "wire",
    kind: "overhead-line",
    path: { vertices, closed: false },
    class: "insulated-750",
    sag: 0,
    ...changes,
  };
}

function example(
  name: string,
  line: object,
  outcome: RuleExample["expect"]["outcome"],
  section = "680.9(A)",
  more: readonly object[] = [],
  from = source,
): RuleExample {
  return {
    name,
    source: from,
    edition: "nec-2020",
    elements: [concretePool(), line, ...more],
    expect: { element: "wire", outcome, section },
  };
}

const tower = { id: "tower", kind: "structure", outline: box(100, 300, 160, 360), structure: "tower", top: 120 };

export const examples: readonly RuleExample[] = [
  example("exactly 10 ft out and 22 ft 6 in. clear", wire(120, Math.sqrt(270 ** 2 - 120 ** 2)), "meets"),
  example("the same, half an inch lower", wire(120, Math.sqrt(270 ** 2 - 120 ** 2) - 0.5), "conflict"),
  example("over the water, a hundredth too low", wire(-96, 269.99), "conflict"),
  example(
    "high enough over the water: does the row ban it?",
    wire(-96, 270),
    "review",
    "680.9(A)",
    [],
    "common practice, no source",
  ),
  example("straight it would do, with its sag it does not", wire(-96, 275, { sag: 6 }), "conflict"),
  example("of which nobody says how it sags", wire(-96, 400, { sag: undefined }), "review"),
  example("beyond 10 ft", wire(120.01, 50), "exempt"),
  example("a telephone line 10 ft up", wire(-96, 120, { class: "communications" }), "meets", "680.9(B)"),
  example("a hundredth lower", wire(-96, 119.99, { class: "communications" }), "conflict", "680.9(B)"),
  ...(
    [
      ["to-15kv", 300, "680.9(A)"],
      ["to-50kv", 324, "680.9(A)"],
      ["broadband", 270, "680.9(C)"],
    ] as const
  ).flatMap(([rating, clear, section]) => [
    example(`${rating}: exactly enough over the water`, wire(-96, clear, { class: rating }), "review", section),
    example(`${rating}: a hundredth too low`, wire(-96, clear - 0.01, { class: rating }), "conflict", section),
  ]),
  ...(
    [
      ["insulated-750", 174, "680.9(A)"],
      ["to-15kv", 204, "680.9(A)"],
      ["to-50kv", 216, "680.9(A)"],
      ["broadband", 174, "680.9(C)"],
    ] as const
  ).flatMap(([rating, clear, section]) => [
    example(`${rating}: exactly enough over a tower`, wire(138, 120 + clear, { class: rating }), "meets", section, [
      tower,
    ]),
    example(
      `${rating}: over a tower, a hundredth too low`,
      wire(138, 120 + clear - 0.01, { class: rating }),
      "conflict",
      section,
      [tower],
    ),
  ]),
];
