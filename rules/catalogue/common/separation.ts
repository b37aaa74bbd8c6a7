/**
 * Whether something solid stands between a thing and the water, in a straight line: a building (open passages cut out), a
 * permanent wall high enough, or a solid permanent fence. A solid barrier makes a near thing a question, never a pass.
 */
import { flattenPath, pathFrom } from "../../../geometry/outline.ts";
import { sightLine } from "../../../geometry/paths-around-barriers.ts";
import { boundsOfPoints, grownBounds, segmentMeetsBox } from "../../../geometry/points.ts";
import { FINE_FLATTEN_TOLERANCE } from "../../../geometry/tolerances.ts";
import type { Barrier, Bounds, Point, Witness } from "../../../geometry/types.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { FenceElement } from "../../site/elements.ts";
import { capitalized, elementName } from "../../words/element-names.ts";
import { NO, open, type Truth } from "./truth.ts";

interface Between {
  readonly id: string;
  readonly barriers: readonly Barrier[];
  readonly boxes: readonly Bounds[];
  /** Fields that are not given and on which it hangs whether this counts. */
  readonly openFields: readonly string[];
}

/** Open where something solid stands across the witness, or may; no where nothing does. */
export function separated(yard: Yard, body: Body, straight: Witness): Truth {
  if (straight.length === 0) return NO;
  const found = standingBetween(yard, body).filter(
    ({ barriers, boxes }) =>
      boxes.some((box) => segmentMeetsBox(straight.from, straight.to, box)) &&
      !sightLine(straight.from, straight.to, barriers),
  );
  if (found.length === 0) return NO;
  const names = found.map(({ id }) => nameOf(yard, id)).join(", ");
  const fields = found.flatMap(({ id, openFields }) =>
    openFields.map((field) => `\`${field}\` of ${nameOf(yard, id)}`),
  );
  const missing = fields.length === 0 ? "" : ` Not given: ${fields.join(", ")}.`;
  return open({
    says: `${capitalized(names)} stands in between; whether that is a solid, permanent barrier is for a person to say.${missing}`,
    asks: `Does what stands between it and the water (${names}) separate them as a solid, permanent barrier?`,
    remedy: "Look whether what stands in between separates it from the water",
  });
}

function nameOf(yard: Yard, id: string): string {
  const element = yard.get(id);
  return element ? elementName(element) : id;
}

/** Everything solid, or perhaps solid, of the yard as seen from a body. */
function standingBetween(yard: Yard, body: Body): readonly Between[] {
  return yard.kept(`standing between ${body.id}`, () => {
    const { counted, possible } = yard.barriers("cord", body);
    const built = [...counted, ...possible].map(({ id, barriers, openFacts }) => ({
      id,
      barriers,
      boxes: barriers.map(boxOf),
      openFields: openFacts,
    }));
    return [...built, ...yard.all("fence").flatMap(fenceBetween)];
  });
}

function fenceBetween(fence: FenceElement): Between[] {
  const { id, solid, permanent } = fence;
  if (solid === false || permanent === false) return [];
  const openFields = [...(solid === undefined ? ["solid"] : []), ...(permanent === undefined ? ["permanent"] : [])];
  const barrier: Barrier = { id, shape: "thin", points: lineOf(fence) };
  return [{ id, barriers: [barrier], boxes: [boxOf(barrier)], openFields }];
}

/** With room round it, so that a line along its edge counts as near. */
export function boxOf({ points }: Barrier): Bounds {
  return grownBounds(boundsOfPoints(points), ROOM);
}

/** Inches: more than any gap that a line of sight treats as closed. */
const ROOM = 1;

function lineOf(fence: FenceElement): Point[] {
  const points = flattenPath(pathFrom(fence.path), FINE_FLATTEN_TOLERANCE);
  return fence.path.closed && points[0] ? [...points, points[0]] : points;
}
