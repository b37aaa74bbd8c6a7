/** Moves of a whole outline: about its middle, mirrored, turned and put in its place. */
import { pathFrom } from "../../geometry/outline.ts";
import type { PathData, Point, Vertex } from "../../geometry/types.ts";

/** The outline with the middle of its length and width at 0, 0. */
export function aboutMiddle(outline: PathData): PathData {
  const { minX, minY, maxX, maxY } = pathFrom(outline).bounds;
  return moved(outline, [-(minX + maxX) / 2, -(minY + maxY) / 2]);
}

export interface Placing {
  /** Where the held point of the outline comes to lie. */
  readonly at: Point;
  /** Degrees counter-clockwise. */
  readonly turn: number;
  /** Swapped top for bottom before it is turned. */
  readonly isMirrored: boolean;
  /** The held point before any move. */
  readonly hold: Point;
}

/** The outline in its place; it stays counter-clockwise. Its vertices keep their order, turned round when mirrored. */
export function placed(outline: PathData, placing: Placing): PathData {
  const upright = placing.isMirrored ? mirrored(outline) : outline;
  const turned = turnedBy(upright, placing.turn);
  const held = heldPoint(placing);
  return moved(turned, [placing.at[0] - held[0], placing.at[1] - held[1]]);
}

/** Turned and mirrored about 0, 0 as the outline is. */
function heldPoint({ hold, turn, isMirrored }: Placing): Point {
  const [cos, sin] = cosSin(turn);
  const [x, y] = [hold[0], isMirrored ? -hold[1] : hold[1]];
  return [x * cos - y * sin, x * sin + y * cos];
}

/** Where a point of the unmoved outline comes to lie, when its middle is the held point. */
export function placedPoint(point: Point, placing: Placing): Point {
  const [x, y] = heldPoint({ ...placing, hold: point });
  return [placing.at[0] + x, placing.at[1] + y];
}

/** The same outline from its first vertex the other way round. */
export function walkedBack({ vertices, closed }: PathData): PathData {
  const count = vertices.length;
  const walked = vertices.map((_, i): Vertex => {
    const [x, y] = vertices[(count - i) % count] as Vertex;
    // The side that leaves a vertex on the way back is the one that led to it.
    const bulge = (vertices[(2 * count - i - 1) % count] as Vertex)[2];
    return bulge === undefined ? [x, y] : [x, y, -bulge];
  });
  return { vertices: walked, closed };
}

/** Top for bottom. Walked the other way round, so that it stays counter-clockwise: its bulges stay as they are. */
export function mirrored({ vertices, closed }: PathData): PathData {
  const count = vertices.length;
  const walked = vertices.map((_, i): Vertex => {
    const vertex = vertices[(count - i) % count] as Vertex;
    // The side that leaves a vertex on the way back is the one that led to it.
    const bulge = (vertices[(2 * count - i - 1) % count] as Vertex)[2];
    return bulge === undefined ? [vertex[0], -vertex[1]] : [vertex[0], -vertex[1], bulge];
  });
  return { vertices: walked, closed };
}

function turnedBy(outline: PathData, degrees: number): PathData {
  const [cos, sin] = cosSin(degrees);
  return mapped(outline, ([x, y]) => [x * cos - y * sin, x * sin + y * cos]);
}

function moved(outline: PathData, [dx, dy]: Point): PathData {
  return mapped(outline, ([x, y]) => [x + dx, y + dy]);
}

function mapped({ vertices, closed }: PathData, move: (at: Point) => Point): PathData {
  return {
    vertices: vertices.map((vertex): Vertex => {
      const [x, y] = move([vertex[0], vertex[1]]);
      return vertex[2] === undefined ? [x, y] : [x, y, vertex[2]];
    }),
    closed,
  };
}

/** Exact at quarter turns, so that square pools stay square. */
function cosSin(degrees: number): Point {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) {
    const turn = ((quarters % 4) + 4) % 4;
    return [turn === 0 ? 1 : turn === 2 ? -1 : 0, turn === 1 ? 1 : turn === 3 ? -1 : 0];
  }
  const angle = (degrees * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
}
