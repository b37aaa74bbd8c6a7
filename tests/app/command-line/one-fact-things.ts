/** What the yards of one fact are put together from. What is judged has the id `it`. */

export const box = (x0: number, y0: number, x1: number, y1: number) => ({
  vertices: [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ],
  closed: true,
});
export const line = (...vertices: number[][]) => ({ vertices, closed: false });
/** 32 by 16 ft, its upper long side at y = 192. */
export const concrete = (changes: object = {}) => ({
  id: "p",
  kind: "pool",
  outline: box(0, 0, 384, 192),
  body: "pool",
  shell: "sprayed-concrete",
  steel: "bare",
  finish: "plaster",
  installation: "in-ground",
  ...changes,
});
export const liner = (changes: object = {}) =>
  concrete({ shell: "vinyl-liner", steel: undefined, finish: undefined, wallFrame: "nonmetal", ...changes });
export const own = { id: "it" };
export const off = (distance: number) => [192, 192 + distance];
export const part = (distance: number, changes: object = {}) => ({
  id: "it",
  kind: "metal",
  shape: { point: off(distance) },
  part: "pole",
  z: [0, 96],
  ...changes,
});
export const device = (kind: string, distance: number, changes: object = {}) => ({
  id: "it",
  kind: "device",
  device: kind,
  at: off(distance),
  indoor: false,
  ...changes,
});
export const unit = (kind: string, distance: number, changes: object = {}) => ({
  id: "it",
  kind: "equipment",
  unit: kind,
  at: off(distance),
  electric: true,
  ...changes,
});
export const light = (changes: object = {}) => ({
  id: "it",
  kind: "underwater-light",
  at: [0, 96],
  pool: "p",
  formingShell: "metal",
  ...changes,
});
