/** Plain things that the rules' examples are put together from: a 32 by 16 ft pool whose inside wall starts at 0, 0. */

/** Length and width of the examples' pool, inches. */
export const POOL_LENGTH = 384;
export const POOL_WIDTH = 192;

/** A closed rectangle. */
export function box(x0: number, y0: number, x1: number, y1: number) {
  return {
    vertices: [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ],
    closed: true,
  };
}

/** A straight line. */
export function line(x0: number, y0: number, x1: number, y1: number) {
  return {
    vertices: [
      [x0, y0],
      [x1, y1],
    ],
    closed: false,
  };
}

/** A plastered concrete pool with bare steel, everything about it given. */
export function concretePool(changes: object = {}) {
  return {
    id: "pool",
    kind: "pool",
    outline: box(0, 0, POOL_LENGTH, POOL_WIDTH),
    body: "pool",
    shell: "sprayed-concrete",
    steel: "bare",
    finish: "plaster",
    installation: "in-ground",
    waterLevel: 0,
    depth: 60,
    ...changes,
  };
}

/** A liner pool without metal walls, everything about it given. */
export function linerPool(changes: object = {}) {
  return concretePool({
    shell: "vinyl-liner",
    steel: "none",
    wallFrame: "nonmetal",
    finish: "liner",
    storable: false,
    ...changes,
  });
}

/** A deck of one material round the whole pool, 10 ft wide. */
export function deck(changes: object = {}) {
  return {
    id: "deck",
    kind: "surface",
    outline: box(-120, -120, POOL_LENGTH + 120, POOL_WIDTH + 120),
    material: "concrete",
    steel: "none",
    level: 0,
    support: "grade",
    ...changes,
  };
}

/** A metal post `distance` inches off the pool's long side, standing on the ground. */
export function post(distance: number, changes: object = {}) {
  return {
    id: "post",
    kind: "metal",
    shape: { point: [200, POOL_WIDTH + distance] },
    part: "light pole",
    z: [0, 120],
    fixed: true,
    ...changes,
  };
}
