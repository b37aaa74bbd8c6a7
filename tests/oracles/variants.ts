/** The same outline turned, mirrored, walked backwards and started at every vertex. */
import type { PathData, Point, Vertex } from "../../geometry/types.ts";

export interface Variant {
  readonly name: string;
  readonly data: PathData;
  /** Moves a position of the original along with it. */
  readonly place: (p: Point) => Point;
}

const same = (p: Point): Point => p;

export function turnedBy(degrees: number): (p: Point) => Point {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return ([x, y]) => [x * cos - y * sin, x * sin + y * cos];
}

/** The outline with every position moved by `place`; `flips` for a mirroring, which turns every bulge over. */
export function placed(data: PathData, place: (p: Point) => Point, flips = false): PathData {
  const vertices = data.vertices.map(([x, y, bulge = 0]): Vertex => {
    const [px, py] = place([x, y]);
    return [px, py, flips ? -bulge : bulge];
  });
  return { ...data, vertices };
}

/** The same curve from its other end; a bulge moves to the vertex at the other end of its edge and changes sign. */
export function backwards(data: PathData): PathData {
  const { vertices, closed } = data;
  const count = vertices.length;
  return {
    closed,
    vertices: vertices.map((_, i): Vertex => {
      const [x, y] = vertices[count - 1 - i] as Vertex;
      const edge = count - 2 - i;
      const owner = edge >= 0 ? vertices[edge] : closed ? vertices[count - 1] : undefined;
      return [x, y, -(owner?.[2] ?? 0)];
    }),
  };
}

export function startedAt(data: PathData, index: number): PathData {
  return { ...data, vertices: [...data.vertices.slice(index), ...data.vertices.slice(0, index)] };
}

export function variantsOf(data: PathData): Variant[] {
  const list: Variant[] = [{ name: "as drawn", data, place: same }];
  for (const degrees of [30, 90, 180, 211.7]) {
    const place = turnedBy(degrees);
    list.push({ name: `turned ${degrees}`, data: placed(data, place), place });
  }
  const mirror = ([x, y]: Point): Point => [-x, y];
  list.push({ name: "mirrored", data: placed(data, mirror, true), place: mirror });
  const across = ([x, y]: Point): Point => [y, x];
  list.push({ name: "mirrored across", data: placed(data, across, true), place: across });
  const far = ([x, y]: Point): Point => [x + 9000.25, y - 7000.5];
  list.push({ name: "moved far", data: placed(data, far), place: far });
  list.push({ name: "backwards", data: backwards(data), place: same });
  if (data.closed) {
    for (let i = 1; i < data.vertices.length; i++) {
      list.push({ name: `from vertex ${i}`, data: startedAt(data, i), place: same });
    }
  }
  return list;
}
