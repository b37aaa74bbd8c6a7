/** Yards whose figures hang on a number of the code, each figure with its source: lengths, counts and areas of the report. */
import { clampTie, fourTies, ringCopper } from "../../rules/catalogue/common/example-copper.ts";
import { concretePool, deck } from "../../rules/catalogue/common/example-yard.ts";
import { EDITION_IDS, type EditionId } from "../../rules/editions/edition.ts";
import type { ParameterId } from "../../rules/editions/parameter-types.ts";
import type { Finding, Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import { siteOf } from "./catalogue/yards.ts";

export interface FigureYard {
  readonly name: string;
  readonly source: string;
  readonly editions: readonly EditionId[];
  /** The numbers of the code that the figure hangs on. */
  readonly parameters: readonly ParameterId[];
  readonly elements: readonly object[];
  readonly head?: object;
  /** Whether the report says what the source says. */
  readonly holds: (report: Report) => boolean;
}

export function figureSite({ elements, head }: FigureYard, edition: EditionId): Site {
  return siteOf(elements, { edition, ...head });
}

function found(report: Report, rule: string, element: string | null): Finding | undefined {
  return report.findings.find((finding) => finding.rule === rule && finding.element === element);
}

/** A local amendment that lets no lone ring serve under paving, so that earlier editions plan a grid as well. */
const NO_RING = {
  amendments: [{ parameter: "perimeter.ringUnderPaving", value: false, reason: "invented ordinance" }],
};

const GRID_ALLOWED = { amendments: [{ parameter: "perimeter.grid", value: true, reason: "invented ordinance" }] };

const heater = (ratedAmps: number) => ({
  id: "heater",
  kind: "equipment",
  unit: "heater",
  at: [600, 100],
  electric: true,
  volts: 240,
  ratedAmps,
  bondingInstructions: true,
});

/** An open grid `offset` in. off each side of the pool, its roll reaching over the corners. */
function rollsAt(offset: number, coverFrom: string) {
  const [x, y, past] = [384, 192, 60];
  const paths = [
    [-past, -offset, x + past, -offset],
    [-past, y + offset, x + past, y + offset],
    [-offset, -past, -offset, y + past],
    [x + offset, -past, x + offset, y + past],
  ] as const;
  const rolls = paths.map(([x0, y0, x1, y1], i) =>
    ringCopper({
      id: `roll-${i}`,
      role: "grid",
      cover: 5,
      coverFrom,
      path: {
        vertices: [
          [x0, y0],
          [x1, y1],
        ],
        closed: false,
      },
    }),
  );
  const corners = [
    [0, 2, -offset, -offset],
    [0, 3, x + offset, -offset],
    [1, 2, -offset, y + offset],
    [1, 3, x + offset, y + offset],
  ] as const;
  const joints = corners.map(([a, b, cx, cy]) => clampTie(`corner-${a}-${b}`, [cx, cy], [`roll-${a}`, `roll-${b}`]));
  return [...rolls, ...joints];
}

const coverFrom = (edition: EditionId) => (edition === "nec-2023" ? "grade" : "subgrade");

export const FIGURE_YARDS: readonly FigureYard[] = [
  {
    name: "a shell with encapsulated steel: its grid is 12 in. both ways, 4 in. give or take, at most 6 in. off",
    source: "NEC 680.26(B)(1)(b), restated; tolerance one published source, contour from memory",
    editions: EDITION_IDS,
    parameters: ["shell.gridSpacing", "shell.gridTolerance", "shell.gridFromContour"],
    elements: [concretePool({ steel: "encapsulated" })],
    holds(report) {
      const shell = found(report, "shell", "pool");
      const { gridSpacing, gridFromContour } = shell?.required ?? {};
      return gridSpacing === 12 && gridFromContour === 6 && /give or take 4"\)/.test(shell?.remedy ?? "");
    },
  },
  {
    name: "a deck without steel where a lone ring is barred: a grid 12 in. both ways, 4 in. give or take, 6 in. down",
    source: "NEC 680.26(B)(2)(c), restated; tolerance one published source; the amendment is invented",
    editions: EDITION_IDS,
    parameters: ["grid.spacing", "grid.tolerance", "grid.coverMax"],
    elements: [concretePool(), deck()],
    head: NO_RING,
    holds: (report) =>
      /1' 0" both ways \(give or take 4"\), at most 6" below/.test(
        found(report, "perimeter-surfaces", "deck")?.remedy ?? "",
      ),
  },
  {
    name: "a deck with bare steel: from 2023 at most 6 in. below finished grade, before it no depth is written",
    source: "NEC 680.26(B)(2)(a), restated",
    editions: EDITION_IDS,
    parameters: ["perimeter.pavedCoverMax"],
    elements: [concretePool(), deck({ steel: "rebar" })],
    holds(report) {
      const depth = /Tie the steel together(, at most 6" below finished grade)?, carry/.exec(
        found(report, "perimeter-surfaces", "deck")?.remedy ?? "",
      );
      return depth !== null && (depth[1] !== undefined) === (report.edition === "nec-2023");
    },
  },
  {
    name: "welded wire in the paving serves from 2023 on",
    source: "NEC 2023 680.26(B)(2)(a), restated",
    editions: ["nec-2023"],
    parameters: ["perimeter.meshCounts"],
    elements: [concretePool(), deck({ steel: "mesh" })],
    holds: (report) => report.band[0]?.bySurface.every(({ bonding }) => bonding === "steel") === true,
  },
  {
    name: "soil takes a ring or, from 2020 on, a grid",
    source: "NEC 680.26(B)(2), restated; before 2020 from memory",
    editions: EDITION_IDS,
    parameters: ["perimeter.grid"],
    elements: [concretePool(), deck({ material: "soil" })],
    holds: (report) =>
      /by a copper ring or a copper grid\./.test(found(report, "perimeter-surfaces", "deck")?.remedy ?? "") ===
      (report.edition !== "nec-2017"),
  },
  {
    name: "the conductor inside a conduit to a niche is 8 AWG",
    source: "NEC 680.23(B)(2)(b), from memory",
    editions: EDITION_IDS,
    parameters: ["lights.insideBondSize"],
    elements: [
      concretePool(),
      { id: "light", kind: "underwater-light", at: [100, 0], pool: "pool", formingShell: "metal", conduit: "nonmetal" },
    ],
    holds: (report) => found(report, "niche-inside-bond", "light")?.required.insideBondSize === 8,
  },
  {
    name: "a heater of exactly 50 A with instructions: all of its metal parts",
    source: "NEC 680.26(B)(6), restated: over 50 A",
    editions: EDITION_IDS,
    parameters: ["equipment.heaterAmps"],
    elements: [concretePool(), heater(50)],
    holds: (report) => found(report, "equipment", "heater")?.measured.ratedAmps === undefined,
  },
  {
    name: "a heater of 50.01 A with instructions: the parts marked",
    source: "NEC 680.26(B)(6), restated: over 50 A",
    editions: EDITION_IDS,
    parameters: ["equipment.heaterAmps"],
    elements: [concretePool(), heater(50.01)],
    holds: (report) => found(report, "equipment", "heater")?.measured.ratedAmps === 50.01,
  },
  {
    name: "a tail of 3 ft at a double-insulated pump is counted",
    source: "common practice, no source",
    editions: EDITION_IDS,
    parameters: ["equipment.tailLength"],
    elements: [concretePool(), { id: "pump", kind: "equipment", at: [600, 100], unit: "pump", doubleInsulated: true }],
    holds: (report) => report.takeoff.conductor.tails === 36,
  },
  ...(
    [
      [11.2, "nec-2020"],
      [11.2, "nec-2023"],
      [10.8, "nec-2020"],
      [10.8, "nec-2023"],
      [11.2, "nec-2017"],
      [10.8, "nec-2017"],
    ] as const
  ).map(
    ([offset, edition]): FigureYard => ({
      name: `rolls of copper grid 3 ft wide, their middle ${offset} in. off: with half a mesh they reach to within an inch of 36, or not`,
      source:
        "NEC 680.26(B)(2)(c), restated; width of the rolls: trade, several published; half a mesh beyond, looked at every 2 in.: common practice, no source",
      editions: [edition],
      parameters: ["grid.rollWidth"],
      // The first of these editions writes no grid as a method: a local amendment, invented here, does.
      head: edition === "nec-2017" ? GRID_ALLOWED : {},
      elements: [concretePool(), ...rollsAt(offset, coverFrom(edition)), ...fourTies()],
      holds: (report) => found(report, "perimeter-surfaces", null)?.outcome === (offset > 11 ? "meets" : "missing"),
    }),
  ),
];
