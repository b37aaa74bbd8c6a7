/**
 * How high fixed metal hangs: its lowest point above the maximum water level and above every stand there is, the least of
 * them deciding. A stand is there when it comes near to the water, or near enough to the metal for a hand.
 * Source: NEC 680.26(B)(7), restated; how near a stand has to be: a judgement, no figure is published.
 */
import { areaToArea, pathToArea, pointToArea } from "../../../geometry/distance.ts";
import type { ParameterId } from "../../editions/parameter-types.ts";
import { exceeds } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { KnownElement, StructureElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { speakerOf } from "./verdicts.ts";

export type Height =
  | { readonly state: "low"; readonly under?: { readonly clear: number; readonly above: string } }
  | {
      readonly state: "high";
      readonly clear: number;
      readonly above: string;
      /** A sentence on stands that are too far off to count, though they stand too high; empty where there are none. */
      readonly note: string;
      readonly limits: readonly ParameterId[];
    }
  | { readonly state: "open"; readonly says: string };

/** Structures that people stand on above the water. */
const STANDS: ReadonlySet<string> = new Set(["diving-board", "platform", "tower", "stand"]);

/** `lowest`: level of the lowest point; `ground`: it reaches the ground; null: not given. */
export function heightOf(yard: Yard, body: Body, element: KnownElement, lowest: number | "ground" | null): Height {
  if (lowest === "ground") return { state: "low" };
  const limit = yard.edition.value("fixedMetal.height");
  if (lowest === null)
    return {
      state: "open",
      says: "The height of its lowest point is not given, and far enough up it would be exempt.",
    };
  const against: Above[] = [{ name: "the maximum water level", top: body.waterLevel, here: "yes" }];
  for (const stand of yard.all("structure")) {
    if (!STANDS.has(stand.structure)) continue;
    against.push({ name: elementName(stand), top: stand.top, here: standsThere(yard, body, element, stand) });
  }
  let clear = Number.POSITIVE_INFINITY;
  let above = "";
  let open = "";
  const far: string[] = [];
  for (const { name, top, here } of against) {
    const standing = top === undefined ? "unknown" : exceeds(lowest - top, limit, yard.accuracy);
    if (here === "no") {
      if (standing !== "yes") far.push(name);
      continue;
    }
    if (top === undefined) {
      open = `It is high above the water, but the top of ${name} is not given.`;
      continue;
    }
    if (standing === "no" && here === "yes") return { state: "low", under: { clear: lowest - top, above: name } };
    if (standing === "no")
      open = `Whether ${name} stands near enough to count is within what the drawing may be off by.`;
    if (standing === "doubtful") open = `Its height above ${name} is as near to the limit as the drawing may be off.`;
    if (lowest - top < clear) {
      clear = lowest - top;
      above = name;
    }
  }
  if (open !== "") return { state: "open", says: open };
  const limits: ParameterId[] = ["fixedMetal.distance", "fixedMetal.height"];
  if (far.length === 0) return { state: "high", clear, above, note: "", limits };
  const within = speakerOf(yard).length(yard.edition.value("fixedMetal.standWithin"));
  const note = ` Farther than ${within} from the inside wall, and so not counted: ${far.join(", ")}.`;
  return { state: "high", clear, above, note, limits: [...limits, "fixedMetal.standWithin"] };
}

interface Above {
  readonly name: string;
  /** Undefined: not given. */
  readonly top: number | undefined;
  /** Whether it stands where it counts. */
  readonly here: "yes" | "no" | "doubtful";
}

function standsThere(yard: Yard, body: Body, metal: KnownElement, stand: StructureElement): Above["here"] {
  const beyondWater = exceeds(
    yard.straight(stand, body).length,
    yard.edition.value("fixedMetal.standWithin"),
    yard.accuracy,
  );
  if (beyondWater === "no") return "yes";
  const beyondHand = exceeds(apart(yard, metal, stand), yard.edition.value("fixedMetal.distance"), yard.accuracy);
  if (beyondHand === "no") return "yes";
  return beyondWater === "yes" && beyondHand === "yes" ? "no" : "doubtful";
}

/** Straight distance in plan between a piece of metal and a stand. */
function apart(yard: Yard, metal: KnownElement, stand: StructureElement): number {
  const [shape, place] = [yard.shape(metal), yard.shape(stand)];
  if (place.kind !== "area") return Number.POSITIVE_INFINITY;
  switch (shape.kind) {
    case "point":
      return pointToArea(shape.at, place.area).length;
    case "path":
      return pathToArea(shape.path, place.area).length;
    case "area":
      return areaToArea(shape.area, place.area).length;
  }
}
