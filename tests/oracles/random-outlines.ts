/** fast-check arbitraries: outlines with arcs, outlines full of axis-parallel edges, and paths. */
import fc from "fast-check";
import type { PathData, Point, Vertex } from "../../geometry/types.ts";
import { chordsOf } from "./bulge-chords.ts";
import { isSimpleRing } from "./jsts.ts";

/** Even over the range, in thousandths: fc.double would crowd round 0. */
const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) }).map((thousandths) => thousandths / 1000);
const coordinate = (limit: number): fc.Arbitrary<number> => number(-limit, limit);

export const position = (limit: number): fc.Arbitrary<Point> => fc.tuple(coordinate(limit), coordinate(limit));

/** Closed outlines near the origin, in either direction, with bulges up to half circles; none crosses itself (checked on chords by jsts). */
export const arcOutline: fc.Arbitrary<PathData> = fc
  .array(
    fc.record({
      gap: number(0.3, 1),
      radius: number(20, 200),
      bulge: fc.oneof(fc.constant(0), number(-0.6, 1)),
    }),
    { minLength: 3, maxLength: 9 },
  )
  .map((steps): PathData => {
    const turn = (2 * Math.PI) / steps.reduce((sum, { gap }) => sum + gap, 0);
    let angle = 0;
    const vertices = steps.map(({ gap, radius, bulge }): Vertex => {
      angle += gap * turn;
      return [radius * Math.cos(angle), radius * Math.sin(angle), bulge];
    });
    return { vertices, closed: true };
  })
  .filter((data) => isSimpleRing(chordsOf(data, 0.001)));

/** Stair outlines: whole-inch, axis-parallel edges only, simple, counter-clockwise. */
export const stairOutline: fc.Arbitrary<PathData> = fc
  .array(fc.record({ width: fc.integer({ min: 1, max: 40 }), height: fc.integer({ min: 1, max: 60 }) }), {
    minLength: 1,
    maxLength: 8,
  })
  .map((columns): PathData => {
    const vertices: Vertex[] = [[0, 0]];
    let x = columns.reduce((sum, { width }) => sum + width, 0);
    vertices.push([x, 0]);
    for (const [i, { width, height }] of columns.entries()) {
      // Columns of one height go straight on over a vertex.
      if (height !== columns[i - 1]?.height) vertices.push([x, height]);
      x -= width;
      vertices.push([x, height]);
    }
    return { vertices, closed: true };
  });

/** Open paths of 2 to 6 vertices within `limit`, some edges arcs, edges at least an inch long. */
export const openPath = (limit: number): fc.Arbitrary<PathData> =>
  fc
    .array(fc.tuple(coordinate(limit), coordinate(limit), fc.oneof(fc.constant(0), coordinate(2))), {
      minLength: 2,
      maxLength: 6,
    })
    .map((vertices): PathData => ({ vertices, closed: false }))
    .filter(({ vertices }) =>
      vertices.every(([x, y], i) => {
        const next = vertices[i + 1];
        return !next || Math.hypot(next[0] - x, next[1] - y) >= 1;
      }),
    );
