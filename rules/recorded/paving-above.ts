/** A ring that lies alone under paving where the edition in force takes no lone ring. */
import { clipLines, unionRegions } from "../../geometry/clipping.ts";
import { flattenPath } from "../../geometry/outline.ts";
import { distanceBetween } from "../../geometry/points.ts";
import { FINE_FLATTEN_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Point } from "../../geometry/types.ts";
import { bodyOf } from "../catalogue/common/storable.ts";
import { speakerOf } from "../catalogue/common/verdicts.ts";
import type { Yard } from "../measures/yard.ts";
import type { ConductorElement } from "../site/elements.ts";
import { elementName } from "../words/element-names.ts";
import { perimeterPieces } from "./bearers.ts";
import { bad, type Fact, good, open } from "./fact.ts";
import { gridCover } from "./grid-cover.ts";

/** Under a surface for less than this, inches, a ring only passes its edge. */
const PASSING = 1;

/** One fact for each surface whose methods leave the ring out; good where there is none. */
export function pavingAbove(yard: Yard, ring: ConductorElement): Fact[] {
  const shape = yard.shape(ring);
  if (shape.kind !== "path") return [];
  const line = flattenPath(shape.path, FINE_FLATTEN_TOLERANCE);
  if (shape.path.closed && line[0]) line.push(line[0]);
  const covered = unionRegions(gridCover(yard, false).map(({ region }) => region));
  const facts: Fact[] = [];
  for (const [surface, pieces] of barredBySurface(yard)) {
    const under = clipLines([line], unionRegions(pieces.map(({ piece }) => piece.region))).inside;
    const alone = covered.length === 0 ? under : clipLines(under, covered).outside;
    const length = alone.reduce((sum, points) => sum + lengthOf(points), 0);
    if (length < PASSING) continue;
    const far = speakerOf(yard).length(length);
    const limits = ["perimeter.ringUnderPaving"] as const;
    const remedy = "Lay a copper grid there, or tie in bare steel of the paving.";
    if (pieces.every(({ bonding }) => bonding !== "review")) {
      facts.push(
        bad(
          "path",
          `${far} of it lies under ${surface}, which conducts; this edition takes no lone ring there.`,
          remedy,
          limits,
        ),
      );
      continue;
    }
    const ask = {
      yard,
      element: ring.id,
      body: bodyOf(yard, ring)?.id ?? null,
      id: "conductor-under-argued-surface",
      text: `Does the authority having jurisdiction take a lone ring under ${surface}?`,
    };
    facts.push(
      open(
        "path",
        `${far} of it lies under ${surface}, and whether a lone ring serves there is argued.`,
        remedy,
        ask,
        limits,
      ),
    );
  }
  return facts.length > 0 ? facts : [good("path", ["perimeter.ringUnderPaving"])];
}

/** Pieces of the band where a ring is no method and no steel serves, by their surface. */
function barredBySurface(yard: Yard) {
  const barred = new Map<string, ReturnType<typeof perimeterPieces>[number][]>();
  for (const entry of perimeterPieces(yard)) {
    const { piece, allowed, planned } = entry;
    if (planned === "none-needed" || allowed.some((method) => method !== "grid")) continue;
    const element = piece.surface === null ? undefined : yard.get(piece.surface);
    const name = element ? elementName(element) : "ground that nothing covers";
    const list = barred.get(name);
    if (list) list.push(entry);
    else barred.set(name, [entry]);
  }
  return barred;
}

function lengthOf(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) sum += distanceBetween(points[i - 1] as Point, points[i] as Point);
  return sum;
}
