/** Sheets of paper, and the scales that people have rulers for. Points are 1/72 in. */
import type { Units } from "../../rules/words/lengths.ts";

export type PaperName = "letter" | "tabloid" | "arch-c" | "arch-d";
export const PAPER_NAMES: readonly PaperName[] = ["letter", "tabloid", "arch-c", "arch-d"];

export interface Paper {
  readonly name: PaperName;
  /** As it is written in the title block. */
  readonly words: string;
  /** Landscape, points. */
  readonly width: number;
  readonly height: number;
}

export const PAPERS: Readonly<Record<PaperName, Paper>> = {
  letter: { name: "letter", words: 'Letter, 11 x 8 1/2"', width: 792, height: 612 },
  tabloid: { name: "tabloid", words: 'Tabloid, 17 x 11"', width: 1224, height: 792 },
  "arch-c": { name: "arch-c", words: 'Arch C, 24 x 18"', width: 1728, height: 1296 },
  "arch-d": { name: "arch-d", words: 'Arch D, 36 x 24"', width: 2592, height: 1728 },
};

export interface Scale {
  readonly words: string;
  readonly pointsPerInch: number;
}

const POINTS = 72;

/** Inches of paper to a foot, as on an architect's rule. */
const ARCHITECT: readonly (readonly [string, number])[] = [
  ["1", 1],
  ["3/4", 3 / 4],
  ["1/2", 1 / 2],
  ["3/8", 3 / 8],
  ["1/4", 1 / 4],
  ["3/16", 3 / 16],
  ["1/8", 1 / 8],
  ["3/32", 3 / 32],
  ["1/16", 1 / 16],
];
/** Feet to an inch of paper, as on an engineer's rule, and from there in the same steps. */
const ENGINEER: readonly number[] = [20, 30, 40, 50, 60, 80, 100, 150];
const METRIC: readonly number[] = [10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750];

/** The usual scales, largest first, down to one that holds anything a site file can hold. */
function usualScales(units: Units): Scale[] {
  const scales: Scale[] = [];
  if (units === "m") {
    for (const decade of [1, 100, 10_000]) {
      for (const ratio of METRIC) scales.push({ words: `1 : ${ratio * decade}`, pointsPerInch: 1 / (ratio * decade) });
    }
    return scales.map((scale) => ({ ...scale, pointsPerInch: scale.pointsPerInch * POINTS }));
  }
  for (const [words, inches] of ARCHITECT)
    scales.push({ words: `${words}" = 1'`, pointsPerInch: (inches * POINTS) / 12 });
  for (const decade of [1, 10, 100, 1000]) {
    for (const feet of ENGINEER) {
      scales.push({ words: `1" = ${feet * decade}'`, pointsPerInch: POINTS / (12 * feet * decade) });
    }
  }
  return scales;
}

/** The largest usual scale at which `width` x `height` inches fit into the room, points. */
export function fittingScale(
  width: number,
  height: number,
  roomWidth: number,
  roomHeight: number,
  units: Units,
): Scale {
  const scales = usualScales(units).sort((a, b) => b.pointsPerInch - a.pointsPerInch);
  const found = scales.find(
    (scale) => width * scale.pointsPerInch <= roomWidth && height * scale.pointsPerInch <= roomHeight,
  );
  if (!found) throw new RangeError(`No scale shows ${width} x ${height} in. on ${roomWidth} x ${roomHeight} points.`);
  return found;
}
