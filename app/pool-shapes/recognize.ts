/**
 * The shape and the dimensions that an outline could have been drawn by, however it was drawn, moved, turned or mirrored.
 *
 * Terms. An outline stands in its own frame when one of its vertices is the origin and the next lies to the right: what is
 * left are numbers that do not depend on where it lies. A pattern of a shape fixes some of its dimensions at a limit where
 * vertices fall together (a radius of zero, an arc as wide as the pool); the others are free.
 *
 * Stages, shape by shape. 1. Patterns whose outline has as many vertices as the given one. 2. Ways to begin the given
 * outline, mirrored or not, that have arcs where the pattern has them. 3. Least squares for the free dimensions. 4. Taken
 * only when every vertex then lies where it lay; dimensions that were plainly meant round become so. 5. Of several ways
 * the one with its length the long way, unmirrored and least turned.
 */
import { pathFrom, signedArea } from "../../geometry/outline.ts";
import { distanceBetween } from "../../geometry/points.ts";
import { SAME_SHAPE } from "../../geometry/tolerances.ts";
import type { PathData, Point, Vertex } from "../../geometry/types.ts";
import { leastSquares } from "./least-squares.ts";
import { mirrored, type Placing, walkedBack } from "./placing.ts";
import { readOff } from "./readings.ts";
import { type Dimensions, fullDimensions, type PoolShape } from "./shape.ts";
import type { PoolShapeId } from "./shape-names.ts";
import { SHAPES } from "./shapes.ts";

export interface Recognized {
  readonly shape: PoolShapeId;
  readonly sizes: Dimensions;
  /** About the shape's middle. */
  readonly placing: Placing;
  /** Number of the given outline's vertex that the shape begins with. */
  readonly first: number;
  /** The given outline is walked the other way round. */
  readonly isClockwise: boolean;
}

/** The plainest first: a rectangle is also an L without a leg's difference, and a rectangle with four radii. */
const ORDER: readonly PoolShapeId[] = [
  "rectangle",
  "round",
  "oval",
  "grecian",
  "true-l",
  "lazy-l",
  "roman-end",
  "double-roman-end",
  "kidney",
  "figure-8",
  "rectangle-corners",
];

/** A dimension that stands at its limit: a share of another one. */
interface Tie {
  readonly field: string;
  readonly to: string;
  readonly share: number;
}

const ROMAN_TIES: readonly Tie[] = [
  { field: "arcDepth", to: "arcWidth", share: 1 / 2 },
  { field: "arcWidth", to: "width", share: 1 },
];
const SAME_ENDS: readonly Tie[] = [{ field: "small", to: "large", share: 1 }];

/** Limits at which vertices fall together, or beyond which nothing can be tried. */
const TIES: Partial<Readonly<Record<PoolShapeId, readonly Tie[]>>> = {
  "roman-end": ROMAN_TIES,
  "double-roman-end": ROMAN_TIES,
  rectangle: [{ field: "radius", to: "width", share: 1 / 2 }],
  grecian: [
    { field: "cut", to: "length", share: 1 / 2 },
    { field: "cutAcross", to: "width", share: 1 / 2 },
  ],
  oval: [{ field: "length", to: "width", share: 1 }],
  kidney: SAME_ENDS,
  "figure-8": SAME_ENDS,
};
/** A tied dimension that is free begins this far inside of its limit. */
const INSIDE = 0.8;

/** A radius to begin with, as a share of the outline's length. */
const SOME_RADIUS = 1 / 60;

/** Null when no shape gives this outline. */
export function recognized(outline: PathData): Recognized | null {
  if (!outline.closed || outline.vertices.length < 2) return null;
  const isClockwise = signedArea(pathFrom(outline)) < 0;
  const upright = isClockwise ? walkedBack(outline) : outline;
  for (const id of ORDER) {
    const ways = [false, true].flatMap((isMirrored) => fitsOf(SHAPES[id], upright, isMirrored));
    const [best] = ways.sort((a, b) => rank(a) - rank(b));
    if (!best) continue;
    const count = upright.vertices.length;
    const first = isClockwise ? (count - best.first) % count : best.first;
    return { ...best, first, isClockwise };
  }
  return null;
}

type Way = Omit<Recognized, "isClockwise">;

function rank({ sizes, placing }: Way): number {
  const isLong = (sizes.length ?? 0) >= (sizes.width ?? 0) - SAME_SHAPE;
  return (isLong ? 0 : 1000) + (placing.isMirrored ? 500 : 0) + Math.abs(placing.turn);
}

function fitsOf(shape: PoolShape, upright: PathData, isMirrored: boolean): Way[] {
  const given = isMirrored ? mirrored(upright) : upright;
  const { vertices } = given;
  const count = vertices.length;
  const found: Way[] = [];
  for (const pattern of patternsOf(shape, pathFrom(given).edges.length, lengthOf(given))) {
    const usual = pattern.outline(pattern.start);
    if (!usual || usual.vertices.length !== count) continue;
    const size = lengthOf(given) / lengthOf(usual);
    // Angles do not grow with the pool.
    const begun = pattern.start.map((value, i) => (pattern.isAngle[i] ? value : value * size));
    for (let first = 0; first < count; first++) {
      if (!vertices.every((_, i) => bendOf(vertices, first + i) === bendOf(usual.vertices, i))) continue;
      const goal = inOwnFrame(vertices, first);
      const read = readOff(shape.id, vertices, first);
      const start = pattern.names.map((name, i) => read[name] ?? begun[i] ?? 0);
      const fit = leastSquares(start, (values) => {
        const now = pattern.outline(values);
        return now && now.vertices.length === count ? differences(inOwnFrame(now.vertices, 0), goal) : null;
      });
      if (!fit || fit.worst > SAME_SHAPE) continue;
      const sizes = asMeant(shape, pattern.sizes(fit.values), goal);
      const placing = placingOf(shape, sizes, vertices, first, isMirrored);
      // A mirrored outline is walked the other way round; its first vertex stays the first.
      if (placing) found.push({ shape: shape.id, sizes, placing, first: isMirrored ? (count - first) % count : first });
    }
    if (found.length > 0) return found;
  }
  return found;
}

interface Pattern {
  /** Of the free dimensions. */
  readonly start: readonly number[];
  readonly names: readonly string[];
  readonly isAngle: readonly boolean[];
  sizes(values: readonly number[]): Dimensions;
  outline(values: readonly number[]): PathData | null;
}

function patternsOf(shape: PoolShape, edges: number, length: number): Pattern[] {
  const usual = fullDimensions(shape, {});
  const draw = (sizes: Dimensions): PathData | null => {
    const shaped = shape.outline(sizes, "ft-in");
    return shaped.ok ? shaped.outline : null;
  };
  const mayVanish = shape.fields.filter(
    ({ name, type }) => type === "length" && draw({ ...usual, [name]: 0 }) !== null,
  );
  const ties = TIES[shape.id] ?? [];
  const masks = (count: number) => Array.from({ length: 2 ** count }, (_, mask) => mask);
  const taken = <T>(all: readonly T[], mask: number) => all.filter((_, i) => (mask & (2 ** i)) !== 0);
  const patterns: Pattern[] = [];
  for (const gone of masks(mayVanish.length).map((mask) => taken(mayVanish, mask))) {
    // At their limits first: what is free can come near to a limit, never onto it.
    for (const held of masks(ties.length)
      .map((mask) => taken(ties, mask))
      .reverse()) {
      const free = shape.fields.filter(
        (field) => !gone.includes(field) && !held.some((tie) => tie.field === field.name),
      );
      const sizes = (values: readonly number[]): Dimensions => {
        const all: Record<string, number> = {};
        for (const { name } of gone) all[name] = 0;
        for (const [i, { name }] of free.entries()) all[name] = values[i] ?? 0;
        // The last tie stands first: others may follow from it.
        for (const { field, to, share } of [...held].reverse()) all[field] = share * (all[to] ?? 0);
        return all;
      };
      const start = free.map((field) => {
        if (mayVanish.includes(field)) return Math.max(1, length * SOME_RADIUS);
        const isTied = ties.some((tie) => tie.field === field.name && tie.field !== "length");
        return (usual[field.name] ?? 0) * (isTied ? INSIDE : 1);
      });
      const outline = (values: readonly number[]) => draw(sizes(values));
      if (outline(start)?.vertices.length !== edges) continue;
      const names = free.map(({ name }) => name);
      patterns.push({ start, names, isAngle: free.map(({ type }) => type === "angle"), sizes, outline });
    }
  }
  return patterns;
}

/** Which way the side that leaves a vertex bends. */
function bendOf(vertices: readonly Vertex[], index: number): number {
  return Math.sign(vertices[index % vertices.length]?.[2] ?? 0);
}

/** Places and bulges, bulges as inches of a side of the outline's size, in the frame of one of its vertices. */
function inOwnFrame(vertices: readonly Vertex[], first: number): number[] {
  const count = vertices.length;
  const at = (i: number) => vertices[(first + i) % count] as Vertex;
  const [[x, y], [nx, ny]] = [at(0), at(1)];
  const far = Math.hypot(nx - x, ny - y);
  const [cos, sin] = [(nx - x) / far, (ny - y) / far];
  return vertices.flatMap((_, i) => {
    const [px, py, bulge = 0] = at(i);
    const [dx, dy] = [px - x, py - y];
    const [next] = [at(i + 1)];
    return [dx * cos + dy * sin, dy * cos - dx * sin, (bulge * distanceBetween([px, py], [next[0], next[1]])) / 2];
  });
}

function differences(a: readonly number[], b: readonly number[]): number[] {
  return a.map((one, i) => one - (b[i] ?? 0));
}

/** Steps that people measure in, inches or degrees: sixteenths, millimeters, hundredths. */
const STEPS = [1 / 16, 1 / 25.4, 1 / 100];
/** Nearer to such a step than this, a dimension was meant to be it. */
const ROUND = 1e-4;

/** The dimensions on the steps that they were meant on, where the outline is the same by them. */
function asMeant(shape: PoolShape, sizes: Dimensions, goal: readonly number[]): Dimensions {
  const meant = Object.fromEntries(
    Object.entries(sizes).map(([name, value]) => {
      const rounded = STEPS.map((step) => Math.round(value / step) * step).find(
        (one) => Math.abs(one - value) <= ROUND,
      );
      return [name, rounded ?? value];
    }),
  );
  const shaped = shape.outline(meant, "ft-in");
  if (!shaped.ok || shaped.outline.vertices.length * 3 !== goal.length) return sizes;
  const worst = Math.max(...differences(inOwnFrame(shaped.outline.vertices, 0), goal).map(Math.abs));
  return worst <= SAME_SHAPE ? meant : sizes;
}

/** Where the shape's middle lies and how it is turned. `vertices`: of the outline, turned over when it is mirrored. */
function placingOf(
  shape: PoolShape,
  sizes: Dimensions,
  vertices: readonly Vertex[],
  first: number,
  isMirrored: boolean,
): Placing | null {
  const shaped = shape.outline(sizes, "ft-in");
  if (!shaped.ok) return null;
  const count = vertices.length;
  const ends = (all: readonly Vertex[], i: number) => [all[i % count], all[(i + 1) % count]] as [Vertex, Vertex];
  const [[sx, sy], [tx, ty]] = ends(shaped.outline.vertices, 0);
  const [[gx, gy], [hx, hy]] = ends(vertices, first);
  const angle = Math.atan2(hy - gy, hx - gx) - Math.atan2(ty - sy, tx - sx);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const middle: Point = [gx - (sx * cos - sy * sin), gy - (sx * sin + sy * cos)];
  const degrees = inHalfTurns((angle * 180) / Math.PI);
  const [x, y] = middle.map((one) => Math.round(one * 1e6) / 1e6 + 0) as [number, number];
  // Turned, then turned over: the same as turned over, then turned the other way.
  return isMirrored
    ? { at: [x, -y], turn: inHalfTurns(-degrees), isMirrored, hold: [0, 0] }
    : { at: [x, y], turn: degrees, isMirrored, hold: [0, 0] };
}

/** Between -180 (exclusive) and 180 degrees, on a ten thousandth where it is that near to one. */
function inHalfTurns(degrees: number): number {
  const turn = ((degrees % 360) + 360) % 360;
  const half = turn > 180 ? turn - 360 : turn;
  const rounded = Math.round(half * 1e4) / 1e4;
  return (Math.abs(rounded - half) < 1e-7 ? rounded : half) + 0;
}

function lengthOf(outline: PathData): number {
  const { vertices } = outline;
  return vertices.reduce((sum, [x, y], i) => {
    const [nx, ny] = vertices[(i + 1) % vertices.length] as Vertex;
    return sum + Math.hypot(nx - x, ny - y);
  }, 0);
}
