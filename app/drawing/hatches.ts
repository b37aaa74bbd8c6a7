/**
 * Hatches by material: small tiles that repeat without a seam, in points of paper, y down.
 * Each differs from every other by its figure, so that a black-and-white print still tells the materials apart.
 */

export type HatchName =
  | "concrete"
  | "pavers"
  | "stone"
  | "tile"
  | "wood"
  | "composite"
  | "plastic"
  | "gravel"
  | "soil"
  | "lawn"
  | "artificial-turf"
  | "building"
  | "wall"
  | "band"
  | "keep-out";

export interface Hatch {
  readonly width: number;
  readonly height: number;
  /** Turned by this many degrees as a whole, clockwise on the page. */
  readonly turn: number;
  /** Line weight, points. */
  readonly weight: number;
  /** Polylines: [x, y] pairs in a row. */
  readonly lines: readonly (readonly number[])[];
  /** Filled dots: x, y, radius. */
  readonly dots: readonly (readonly [number, number, number])[];
  /** Open circles: x, y, radius. */
  readonly rings: readonly (readonly [number, number, number])[];
}

function hatch(part: Partial<Hatch> & { readonly width: number; readonly height: number }): Hatch {
  return { turn: 0, weight: 0.35, lines: [], dots: [], rings: [], ...part };
}

export const HATCHES: Readonly<Record<HatchName, Hatch>> = {
  concrete: hatch({
    width: 26,
    height: 22,
    dots: [
      [3, 4, 0.4],
      [9, 13, 0.35],
      [15, 3, 0.35],
      [21, 9, 0.4],
      [5, 19, 0.35],
      [18, 18, 0.35],
      [24, 16, 0.3],
      [12, 8, 0.3],
    ],
    lines: [[17, 12.5, 19.4, 12.5, 18.2, 10.6, 17, 12.5]],
  }),
  pavers: hatch({
    width: 12,
    height: 8,
    lines: [
      [0, 0, 12, 0],
      [0, 4, 12, 4],
      [3, 0, 3, 4],
      [9, 4, 9, 8],
    ],
  }),
  stone: hatch({
    width: 24,
    height: 18,
    lines: [
      [0, 5, 7, 6, 13, 3, 24, 5],
      [7, 6, 9, 12, 4, 18],
      [9, 12, 17, 13, 20, 4.3],
      [17, 13, 19, 18],
      [4, 0, 3.3, 5.4],
      [19, 0, 20, 4.3],
      [0, 13, 6.2, 15.4],
      [18, 15.5, 24, 13],
    ],
  }),
  tile: hatch({
    width: 6,
    height: 6,
    lines: [
      [0, 0, 6, 0],
      [0, 0, 0, 6],
    ],
  }),
  wood: hatch({
    width: 30,
    height: 4.5,
    lines: [
      [0, 0, 30, 0],
      [14, 0, 14, 4.5],
    ],
  }),
  composite: hatch({
    width: 16,
    height: 7,
    lines: [
      [0, 0, 16, 0],
      [0, 3.5, 5, 3.5],
      [9, 3.5, 13, 3.5],
    ],
  }),
  plastic: hatch({
    width: 10,
    height: 10,
    lines: [
      [1, 1, 3, 3],
      [3, 1, 1, 3],
      [6, 6, 8, 8],
      [8, 6, 6, 8],
    ],
  }),
  gravel: hatch({
    width: 16,
    height: 14,
    rings: [
      [3, 3, 1.2],
      [9, 5, 0.9],
      [13, 2.5, 1.3],
      [5, 10, 1.4],
      [12, 10.5, 1],
    ],
  }),
  soil: hatch({
    width: 22,
    height: 16,
    lines: [
      [2, 6, 5, 3],
      [4.5, 6, 7.5, 3],
      [7, 6, 10, 3],
      [13, 14, 16, 11],
      [15.5, 14, 18.5, 11],
      [18, 14, 21, 11],
    ],
  }),
  lawn: hatch({
    width: 22,
    height: 16,
    lines: [
      [3, 6, 3.8, 3.4],
      [5, 6, 4.8, 3],
      [7, 6, 5.9, 3.6],
      [14, 14, 14.8, 11.4],
      [16, 14, 15.8, 11],
      [18, 14, 16.9, 11.6],
    ],
  }),
  "artificial-turf": hatch({
    width: 12,
    height: 10,
    lines: [
      [2, 4, 2, 1.6],
      [3.6, 4, 3.6, 1.6],
      [8, 9, 8, 6.6],
      [9.6, 9, 9.6, 6.6],
      [1.2, 4, 4.4, 4],
      [7.2, 9, 10.4, 9],
    ],
  }),
  building: hatch({ width: 5, height: 5, turn: 45, weight: 0.3, lines: [[0, 0, 0, 5]] }),
  wall: hatch({ width: 1.8, height: 1.8, turn: -45, weight: 0.7, lines: [[0, 0, 0, 1.8]] }),
  band: hatch({ width: 6.5, height: 6.5, turn: 45, weight: 0.4, lines: [[0, 0, 0, 6.5]] }),
  "keep-out": hatch({
    width: 6,
    height: 6,
    turn: 45,
    lines: [
      [0, 0, 6, 0],
      [0, 0, 0, 6],
    ],
  }),
};
