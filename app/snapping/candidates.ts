/** What a pointer can snap to on a site: corners, ends, middles and sides of everything that is drawn. */
import { edgeFromVertices, edgeLength, pointAt } from "../../geometry/edge.ts";
import { edgeBounds } from "../../geometry/edge-boxes.ts";
import { boundsOfPoints, distanceBetween, grownBounds } from "../../geometry/points.ts";
import { type BoxIndex, boxIndex } from "../../geometry/spatial-index.ts";
import type { Bounds, PathData, Point } from "../../geometry/types.ts";
import type { AnyElement } from "../edits/edit.ts";
import { calledAs } from "../edits/element-words.ts";
import { hasHeights, pathOf, pathRefs, pointOf } from "../edits/path-ref.ts";
import type { SnapCandidates, SnapEdge, SnapLine, SnapPoint } from "./snap.ts";

interface Feature {
  readonly id: string;
  readonly bounds: Bounds;
  readonly point?: SnapPoint;
  readonly edge?: SnapEdge;
}

const features = new WeakMap<AnyElement, readonly Feature[]>();
const indexes = new WeakMap<readonly AnyElement[], { readonly all: readonly Feature[]; readonly boxes: BoxIndex }>();

/** The candidates within `reach` inches of a place. `without`: ids of elements that are being drawn or moved themselves. */
export function candidatesNear(
  elements: readonly AnyElement[],
  at: Point,
  reach: number,
  without: ReadonlySet<string> = new Set(),
): SnapCandidates {
  const { all, boxes } = indexOf(elements);
  const points: SnapPoint[] = [];
  const edges: SnapEdge[] = [];
  for (const i of boxes.search(grownBounds(boundsOfPoints([at]), reach))) {
    const feature = all[i];
    if (!feature || without.has(feature.id)) continue;
    if (feature.point) points.push(feature.point);
    if (feature.edge) edges.push(feature.edge);
  }
  return { points, edges };
}

/**
 * Corners and ends in line with a place: straight up or down from it, or level with it, within `reach` inches; the
 * nearest first. `tolerance`: how far off the line.
 */
export function cornersInLine(
  elements: readonly AnyElement[],
  at: Point,
  tolerance: number,
  reach: number,
  without: ReadonlySet<string> = new Set(),
): SnapLine[] {
  const { all, boxes } = indexOf(elements);
  const [x, y] = at;
  const strips: Bounds[] = [
    { minX: x - tolerance, maxX: x + tolerance, minY: y - reach, maxY: y + reach },
    { minX: x - reach, maxX: x + reach, minY: y - tolerance, maxY: y + tolerance },
  ];
  return strips
    .flatMap((strip) => boxes.search(strip))
    .flatMap((i): SnapLine[] => {
      const feature = all[i];
      const point = feature?.point;
      if (!feature || !point || point.isMiddle || without.has(feature.id)) return [];
      return [{ with: point.at, name: point.words, isOther: true }];
    })
    .sort((a, b) => distanceBetween(a.with, at) - distanceBetween(b.with, at))
    .slice(0, MOST_IN_LINE);
}

const MOST_IN_LINE = 16;

/** The same place, for keys that go from one to the next, inches. */
const STANDS = 0.01;

/**
 * The next corner, end, middle or part from a place on one of the four ways: the nearest of those that lie more that way
 * than aside, what lies aside counted double; null where none does.
 */
export function nextPlace(
  elements: readonly AnyElement[],
  [x, y]: Point,
  [dx, dy]: Point,
  without: ReadonlySet<string> = new Set(),
): SnapPoint | null {
  let best: SnapPoint | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const { id, point } of indexOf(elements).all) {
    if (!point || without.has(id)) continue;
    const [px, py] = [point.at[0] - x, point.at[1] - y];
    const along = px * dx + py * dy;
    const aside = Math.abs(px * dy - py * dx);
    if (along <= STANDS || aside > along) continue;
    const far = along + 2 * aside;
    if (far >= least) continue;
    best = point;
    least = far;
  }
  return best;
}

function indexOf(elements: readonly AnyElement[]) {
  const known = indexes.get(elements);
  if (known) return known;
  const all = elements.flatMap(featuresOf);
  const index = { all, boxes: boxIndex(all.map(({ bounds }) => bounds)) };
  indexes.set(elements, index);
  return index;
}

function featuresOf(element: AnyElement): readonly Feature[] {
  const known = features.get(element);
  if (known) return known;
  const words = calledAs(element);
  const at = pointOf(element);
  const found = at
    ? [pointFeature(element.id, { at, words })]
    : pathRefs(element).flatMap((ref) => {
        const path = pathOf(element, ref);
        return path ? pathFeatures(element, path, words) : [];
      });
  features.set(element, found);
  return found;
}

function pathFeatures(element: AnyElement, path: PathData, words: string): Feature[] {
  const { vertices, closed } = path;
  const { id } = element;
  const found: Feature[] = [];
  vertices.forEach((vertex, i) => {
    const at: Point = [vertex[0], vertex[1]];
    const isEnd = !closed && (i === 0 || i === vertices.length - 1);
    found.push(pointFeature(id, { at, words: `${isEnd ? "end" : "corner"} of ${words}` }));
    const next = vertices[closed ? (i + 1) % vertices.length : i + 1];
    if (!next) return;
    const edge = edgeFromVertices(hasHeights(element) ? at : vertex, next);
    if (edgeLength(edge) === 0) return;
    found.push({ id, bounds: edgeBounds(edge), edge: { edge, words: `side of ${words}` } });
    found.push(pointFeature(id, { at: pointAt(edge, 0.5), words: `middle of a side of ${words}`, isMiddle: true }));
  });
  return found;
}

function pointFeature(id: string, point: SnapPoint): Feature {
  return { id, bounds: boundsOfPoints([point.at]), point };
}
