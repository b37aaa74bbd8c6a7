/** Recorded copper that the rules' examples are put together from, right in everything for the pool of example-yard.ts. */
import type { PathData } from "../../../geometry/types.ts";
import { POOL_LENGTH, POOL_WIDTH } from "./example-yard.ts";

/** Bulge of a quarter circle. Source: arithmetic, tan(90 / 4 degrees). */
const QUARTER = Math.tan(Math.PI / 8);

/** The closed path `offset` inches off the pool, round its corners. */
export function pathRoundPool(offset: number): PathData {
  const [x, y] = [POOL_LENGTH, POOL_WIDTH];
  return {
    vertices: [
      [0, -offset],
      [x, -offset, QUARTER],
      [x + offset, 0],
      [x + offset, y, QUARTER],
      [x, y + offset],
      [0, y + offset, QUARTER],
      [-offset, y],
      [-offset, 0, QUARTER],
    ],
    closed: true,
  };
}

/** A ring as the code before 2023 wants it, 21 in. off; fields that are undefined are absent. */
export function ringCopper(changes: object = {}) {
  return {
    id: "ring",
    kind: "conductor",
    path: pathRoundPool(21),
    role: "ring",
    awg: 8,
    solid: true,
    material: "copper",
    covering: "bare",
    cover: 5,
    coverFrom: "subgrade",
    joint: "listed-splice",
    ...changes,
  };
}

/** A listed clamp that may be buried and holds one wire. */
export function clampTie(id: string, at: readonly [number, number], joins: readonly string[], changes: object = {}) {
  return {
    id,
    kind: "tie",
    at,
    joins,
    hardware: "listed-clamp",
    listedForBurial: true,
    conductorsInClamp: 1,
    ...changes,
  };
}

/** Four ties of ring and shell, a quarter of the inside wall apart: at its corners and the middles that fit. Perimeter 1,152 in. */
export function fourTies() {
  return [
    clampTie("tie-1", [96, 0], ["perimeter", "pool"]),
    clampTie("tie-2", [POOL_LENGTH, 0], ["perimeter", "pool"]),
    clampTie("tie-3", [288, POOL_WIDTH], ["perimeter", "pool"]),
    clampTie("tie-4", [0, POOL_WIDTH], ["perimeter", "pool"]),
  ];
}
