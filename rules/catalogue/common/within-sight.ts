/**
 * Whether one position is in view of another on the plan: a straight line that no building and no wall as high as a
 * person crosses. Open passages are cut out of walls and buildings; a solid fence that high is a question.
 */
import { pointToPath } from "../../../geometry/distance.ts";
import { contains, flattenPath, pathFrom } from "../../../geometry/outline.ts";
import { sightLine } from "../../../geometry/paths-around-barriers.ts";
import { segmentMeetsBox } from "../../../geometry/points.ts";
import { FINE_FLATTEN_TOLERANCE } from "../../../geometry/tolerances.ts";
import type { Area, Barrier, Bounds, Path, Point } from "../../../geometry/types.ts";
import { reaches } from "../../measures/compare.ts";
import { withoutOpenings } from "../../measures/openings.ts";
import type { Yard } from "../../measures/yard.ts";
import { elementName } from "../../words/element-names.ts";
import { MOUNTING_DEPTH } from "./cord-path.ts";
import { boxOf } from "./separation.ts";
import { NO, type OpenFact, open, type Truth, YES } from "./truth.ts";

interface Screen {
  readonly id: string;
  readonly lines: readonly Barrier[];
  readonly boxes: readonly Bounds[];
  /** A field that is not given, on which it hangs whether it hides anything. */
  readonly openField?: string;
  /** Of a building: what is drawn just inside its face may hang on the outside. */
  readonly area?: Area;
}

/** Yes, no, or open where the height of what stands between is not known. */
export function inView(yard: Yard, a: Point, b: Point): Truth {
  const facts: OpenFact[] = [];
  for (const { name, field, hides } of screensBetween(yard, a, b)) {
    if (hides) return NO;
    const says =
      field === undefined
        ? `One of them is drawn just inside ${name}, perhaps on its outer face.`
        : `${name} stands in between, and its \`${field}\` is not given.`;
    facts.push({
      says,
      asks: `Is it in plain view past ${name}${field === undefined ? "" : ` (\`${field}\`)`}?`,
      remedy: field === undefined ? `Draw it on the side of ${name} that it is on` : `Give \`${field}\` of ${name}`,
    });
  }
  return facts.length === 0 ? YES : open(...facts);
}

/** The name of the first thing that surely hides one from the other; null where nothing does. */
export function hiddenBy(yard: Yard, a: Point, b: Point): string | null {
  return screensBetween(yard, a, b).find(({ hides }) => hides)?.name ?? null;
}

function screensBetween(yard: Yard, a: Point, b: Point) {
  return screensOf(yard)
    .filter((screen) => screen.boxes.some((box) => segmentMeetsBox(a, b, box)) && !sightLine(a, b, screen.lines))
    .map(({ id, area, openField }) => {
      const element = yard.get(id);
      const onFace = area !== undefined && [a, b].some((p) => isAtFace(area, p));
      return {
        name: element ? elementName(element) : id,
        field: openField,
        hides: openField === undefined && !onFace,
      };
    });
}

function isAtFace(area: Area, p: Point): boolean {
  return contains(area, p) && pointToPath(p, area.outer).length <= MOUNTING_DEPTH;
}

function screensOf(yard: Yard): readonly Screen[] {
  return yard.kept("screens", () => {
    const tall = yard.edition.value("disconnect.personHeight");
    const screens: Screen[] = [];
    const add = (id: string, path: Path, thickness: number, top: number | undefined, solid: string[], area?: Area) => {
      const [at] = path.edges;
      const level = at ? yard.levelAt(at.from) : { z: yard.grade, given: true };
      const high = top === undefined ? "yes" : reaches(top - level.z, tall, yard.accuracy);
      if (high === "no") return;
      const openHeight =
        high === "doubtful" ? "measured height" : top === undefined && area === undefined ? "top" : undefined;
      const openField = solid[0] ?? openHeight;
      const lines = linesOf(yard, id, path, thickness);
      screens.push({
        id,
        lines,
        boxes: lines.map(boxOf),
        ...(openField === undefined ? {} : { openField }),
        ...(area === undefined ? {} : { area }),
      });
    };
    for (const { element, area } of yard.buildings) add(element.id, area.outer, 0, element.top, [], area);
    for (const { element, path, thickness } of yard.walls) add(element.id, path, thickness, element.top, []);
    for (const fence of yard.all("fence")) {
      if (fence.solid !== false) add(fence.id, pathFrom(fence.path), 0, fence.top, ["solid"]);
    }
    return screens;
  });
}

function linesOf(yard: Yard, id: string, path: Path, thickness: number): Barrier[] {
  const passages = yard.all("opening").filter(({ opening }) => opening === "passage");
  const pieces = withoutOpenings(path, thickness / 2, passages);
  if (pieces !== null) return pieces.lines.map((points) => ({ id, shape: "thin", points }));
  const points = flattenPath(path, FINE_FLATTEN_TOLERANCE);
  return [{ id, shape: "thin", points: path.closed && points[0] ? [...points, points[0]] : points }];
}
