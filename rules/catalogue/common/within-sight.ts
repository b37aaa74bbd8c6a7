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
import type { Level } from "../../measures/levels.ts";
import { withoutOpenings } from "../../measures/openings.ts";
import type { Yard } from "../../measures/yard.ts";
import { capitalized, elementName } from "../../words/element-names.ts";
import { MOUNTING_DEPTH } from "./cord-path.ts";
import { boxOf } from "./separation.ts";
import { NO, type OpenFact, open, type Truth, YES } from "./truth.ts";
import { speakerOf } from "./verdicts.ts";

interface Screen {
  readonly id: string;
  readonly lines: readonly Barrier[];
  readonly boxes: readonly Bounds[];
  /** Why nobody can tell from the drawing whether it hides anything. */
  readonly doubt?: Doubt;
  /** Surely lower than a person: it hides nothing. */
  readonly isLow?: true;
  /** Of a building: what is drawn just inside its face may hang on the outside. */
  readonly area?: Area;
}

interface Doubt {
  /** Goes on after "it stands in between, and". */
  readonly says: string;
  readonly remedy: string;
  /** The field that is not given, if that is it. */
  readonly field?: string;
}

const AT_FACE: Doubt = { says: "", remedy: "" };

/** Yes, no, or open where the height of what stands between is not known. */
export function inView(yard: Yard, a: Point, b: Point): Truth {
  const facts: OpenFact[] = [];
  for (const { name, doubt } of screensBetween(yard, a, b)) {
    if (doubt === undefined) return NO;
    const field = doubt.field === undefined ? "" : ` (\`${doubt.field}\`)`;
    const asks = `Is it in plain view past ${name}${field}?`;
    if (doubt === AT_FACE) {
      const says = `One of them is drawn just inside ${name}, perhaps on its outer face.`;
      facts.push({ says, asks, remedy: `Draw it on the side of ${name} that it is on` });
    } else
      facts.push({ says: `${capitalized(name)} stands in between, and ${doubt.says}.`, asks, remedy: doubt.remedy });
  }
  return facts.length === 0 ? YES : open(...facts);
}

/** The name of the first thing that surely hides one from the other; null where nothing does. */
export function hiddenBy(yard: Yard, a: Point, b: Point): string | null {
  return screensBetween(yard, a, b).find(({ doubt }) => doubt === undefined)?.name ?? null;
}

/** Whether anything stands between that hides one from the other or would if it were higher. */
export function isCrossed(yard: Yard, a: Point, b: Point): boolean {
  return screensOf(yard).some((screen) => crosses(screen, a, b));
}

function crosses({ boxes, lines }: Screen, a: Point, b: Point): boolean {
  return boxes.some((box) => segmentMeetsBox(a, b, box)) && !sightLine(a, b, lines);
}

function screensBetween(yard: Yard, a: Point, b: Point) {
  return screensOf(yard)
    .filter((screen) => screen.isLow !== true && crosses(screen, a, b))
    .map(({ id, area, doubt, lines }) => {
      const element = yard.get(id);
      const onFace = area !== undefined && sightLine(outerFace(area, a), outerFace(area, b), lines);
      return { name: element ? elementName(element) : id, doubt: doubt ?? (onFace ? AT_FACE : undefined) };
    });
}

/** Where a thing drawn just inside a building would hang on its outside; anything else where it is drawn. */
function outerFace(area: Area, p: Point): Point {
  if (!contains(area, p)) return p;
  const face = pointToPath(p, area.outer);
  return face.length <= MOUNTING_DEPTH ? face.from : p;
}

function screensOf(yard: Yard): readonly Screen[] {
  return yard.kept("screens", () => {
    const tall = yard.edition.value("disconnect.personHeight");
    const screens: Screen[] = [];
    const add = (id: string, path: Path, thickness: number, top: number | undefined, own?: Doubt, area?: Area) => {
      const [at] = path.edges;
      const level = at ? yard.levelAt(at.from) : { z: yard.grade, given: true, surface: null };
      const high = top === undefined ? "yes" : reaches(top - level.z, tall, yard.accuracy);
      const isLow = high === "no" && level.given;
      const doubt = own ?? (area !== undefined && top === undefined ? undefined : heightDoubt(id, top, level, high));
      const lines = linesOf(yard, id, path, thickness);
      screens.push({
        id,
        lines,
        boxes: lines.map(boxOf),
        ...(isLow ? { isLow } : {}),
        ...(doubt === undefined ? {} : { doubt }),
        ...(area === undefined ? {} : { area }),
      });
    };
    const heightDoubt = (id: string, top: number | undefined, level: Level, high: string): Doubt | undefined => {
      if (top === undefined) return notGiven("its", "top", id);
      if (!level.given) return notGiven("the", "level", level.surface ?? id);
      if (high !== "doubtful") return undefined;
      const limit = speakerOf(yard).length(tall);
      const says = `the drawing may be off by as much as its height above the ground is from ${limit}`;
      return { says, remedy: "Measure its height on site" };
    };
    for (const { element, area } of yard.buildings) add(element.id, area.outer, 0, element.top, undefined, area);
    for (const { element, path, thickness } of yard.walls) add(element.id, path, thickness, element.top);
    for (const { id, path, top, solid } of yard.all("fence"))
      if (solid !== false) add(id, pathFrom(path), 0, top, solid ? SOLID_FENCE : notGiven("its", "solid", id));
    return screens;
  });
}

const SOLID_FENCE: Doubt = {
  says: "whether a fence hides as a wall does is for a person to say",
  remedy: "Look from one to the other",
};

function notGiven(whose: string, field: string, id: string): Doubt {
  const of = whose === "its" ? "" : ` of ${id}`;
  return {
    says: `${whose} \`${field}\`${of} is not given`,
    remedy: `Give \`${field}\` of ${id}`,
    field: `${field}${of}`,
  };
}

function linesOf(yard: Yard, id: string, path: Path, thickness: number): Barrier[] {
  const passages = yard.all("opening").filter(({ opening }) => opening === "passage");
  const pieces = withoutOpenings(path, thickness / 2, passages);
  if (pieces !== null) return pieces.lines.map((points) => ({ id, shape: "thin", points }));
  const points = flattenPath(path, FINE_FLATTEN_TOLERANCE);
  return [{ id, shape: "thin", points: path.closed && points[0] ? [...points, points[0]] : points }];
}
