/**
 * A string pulled tight round some holes of a polygon: the shortest closed curve that goes round them and stays inside.
 *
 * Stages. 1. A walk of triangles round the holes (taut-mesh.ts). 2. Its lowest hole corner is surely on the string: the
 * lowest point of a tight string is a corner that it bends round from inside. The walk is opened there. 3. The funnel
 * runs once through the sides that the walk crosses, from that corner to itself.
 *
 * Terms. Funnel: the two tight strings from the last certain corner (apex) to both ends of the side reached.
 */
import { turnOf } from "./orientation.ts";
import { distanceBetween } from "./points.ts";
import { fromCorner, joinWalks, type TautMesh, toCorner, walkRound } from "./taut-mesh.ts";

/** Corner numbers of the tight string round the holes (ring numbers of the mesh), counter-clockwise; null where the mesh does not join them. */
export function tautLoop(mesh: TautMesh, holes: readonly number[]): number[] | null {
  let walk: number[] | null = null;
  for (const hole of holes) {
    const round = walkRound(mesh, hole);
    if (round.length === 0) return null;
    walk = walk === null ? round : joinWalks(mesh, walk, round);
    if (walk === null) return null;
  }
  if (walk === null || walk.length === 0) return null;
  const start = lowestCorner(mesh, new Set(holes));
  const opened = openedAt(mesh, walk, start);
  if (!opened) return null;
  const coordinates = Float64Array.from(mesh.points.flat());
  const lefts = Int32Array.from(opened, (h) => toCorner(mesh, h));
  const rights = Int32Array.from(opened, (h) => fromCorner(mesh, h));
  return funnel(coordinates, lefts, rights, start).reverse();
}

/** Length of a closed string through corners, inches. */
export function loopLength(mesh: TautMesh, loop: readonly number[]): number {
  let sum = 0;
  loop.forEach((corner, i) => {
    const a = mesh.points[corner];
    const b = mesh.points[loop[(i + 1) % loop.length] as number];
    if (a && b) sum += distanceBetween(a, b);
  });
  return sum;
}

function lowestCorner(mesh: TautMesh, holes: ReadonlySet<number>): number {
  let best = -1;
  mesh.points.forEach((p, i) => {
    if (!holes.has(mesh.ringOf[i] as number)) return;
    const known = mesh.points[best];
    if (!known || p[1] < known[1] || (p[1] === known[1] && p[0] < known[0])) best = i;
  });
  return best;
}

/** The steps of the walk between leaving the fan of sides round `corner` and coming back to it. */
function openedAt(mesh: TautMesh, walk: readonly number[], corner: number): number[] | null {
  const touches = walk.map((h) => fromCorner(mesh, h) === corner);
  const leaves = touches.flatMap((touch, i) => (touch && !touches[(i + 1) % walk.length] ? [i] : []));
  const last = leaves[0];
  if (last === undefined || leaves.length > 1) return null;
  const rotated = [...walk.slice(last + 1), ...walk.slice(0, last + 1)];
  return rotated.filter((h) => fromCorner(mesh, h) !== corner);
}

/**
 * The tight string from corner `start` back to itself through sides of triangles, by the corner numbers of their left and
 * right ends in the order of the walk. `coordinates`: x, y of each corner.
 */
export function funnel(coordinates: Float64Array, lefts: Int32Array, rights: Int32Array, start: number): number[] {
  const size = 2 * lefts.length + 6;
  // Corner numbers of the funnel from its left end over the apex to its right end, and the corner before each on its string.
  const chain = new Int32Array(2 * size).fill(-1);
  const entry = new Int32Array(2 * size).fill(-1);
  const corners = new Int32Array(size);
  const before = new Int32Array(size);
  let count = 1;
  corners[0] = start;
  before[0] = -1;
  let left = size;
  let right = size;
  let apex = size;
  chain[size] = start;
  entry[size] = 0;
  const x = (corner: number): number => coordinates[2 * corner] as number;
  const y = (corner: number): number => coordinates[2 * corner + 1] as number;
  const at = (k: number): number => chain[k] as number;
  const side = (a: number, b: number, c: number): number => turnOf(x(a), y(a), x(b), y(b), x(c), y(c));
  /** Adds a corner at the left (way 1) or right (way -1) end. */
  const add = (corner: number, way: 1 | -1): void => {
    let end = way === 1 ? left : right;
    while (end !== apex && side(at(end + way), at(end), corner) * way <= 0) end += way;
    const far = way === 1 ? right : left;
    if (end === apex) {
      while (apex !== far && side(at(apex), at(apex + way), corner) * way < 0) apex += way;
      end = apex;
    }
    corners[count] = corner;
    before[count] = entry[end] as number;
    end -= way;
    chain[end] = corner;
    entry[end] = count;
    count += 1;
    if (way === 1) left = end;
    else right = end;
  };
  for (let i = 0; i < lefts.length; i++) {
    if (chain[left] !== lefts[i]) add(lefts[i] as number, 1);
    if (chain[right] !== rights[i]) add(rights[i] as number, -1);
  }
  add(start, 1);
  const path: number[] = [];
  for (let k = before[count - 1] as number; k > 0; k = before[k] as number) path.push(corners[k] as number);
  return [start, ...path.reverse()];
}
