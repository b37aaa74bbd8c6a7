/**
 * Whether recorded perimeter copper lies where the code wants it: offset from the inside walls, depth, joints, and
 * what lies above it. Source: NEC 680.26(B)(2) of the edition in force.
 */
import { speakerOf } from "../catalogue/common/verdicts.ts";
import { exceeds, reaches } from "../measures/compare.ts";
import type { Yard } from "../measures/yard.ts";
import type { ConductorElement } from "../site/elements.ts";
import { perimeterBodies } from "./bearers.ts";
import { behindFact } from "./behind-walls.ts";
import { bad, type Fact, good, open } from "./fact.ts";
import { askAbout, layingFacts } from "./laying.ts";
import { type OffsetRange, offsetRange } from "./offset-range.ts";
import { pavingAbove } from "./paving-above.ts";
import { noRoomFor } from "./room.ts";

export interface Place {
  /** Facts of the copper as a whole: depth, joints. */
  readonly laying: readonly Fact[];
  /** Facts of its course: offset, what lies above. */
  readonly course: readonly Fact[];
  /** Of a ring with water to measure from. */
  readonly range: OffsetRange | null;
}

/** The place of recorded perimeter copper or of a shell's grid; null for branches and tails. */
export function placeOf(yard: Yard, conductor: ConductorElement): Place | null {
  const { role } = conductor;
  if (role !== "ring" && role !== "grid") return null;
  return yard.kept(`place ${conductor.id}`, () => {
    const laying = layingFacts(yard, conductor);
    if (role === "grid") return { laying, course: [], range: null };
    const shape = yard.shape(conductor);
    const range = shape.kind === "path" ? offsetRange(shape.path, watersFor(yard)) : null;
    const course =
      range === null
        ? [noWater(yard, conductor)]
        : [...offsetFacts(yard, conductor, range), behindFact(yard, conductor), ...pavingAbove(yard, conductor)];
    return { laying, course, range };
  }, [conductor]);
}

/** The waters that a ring is measured from: of the bodies that need perimeter bonding, else of all. */
export function watersFor(yard: Yard) {
  const bodies = perimeterBodies(yard);
  return (bodies.length > 0 ? bodies : yard.bodies).map(({ water }) => water);
}

function noWater(yard: Yard, conductor: ConductorElement): Fact {
  const ask = askAbout(
    yard,
    conductor,
    "conductor-offset",
    "Measured on site, does the ring keep within its limits from the inside walls all along?",
  );
  return open("path", "No body of water is drawn to measure it from.", "Draw the inside walls of the pool.", ask, [
    "ring.min",
    "ring.max",
  ]);
}

function offsetFacts(yard: Yard, conductor: ConductorElement, range: OffsetRange): Fact[] {
  const { length } = speakerOf(yard);
  const min = yard.edition.value("ring.min");
  const max = yard.edition.value("ring.max");
  const within = `${length(min)} to ${length(max)}`;
  const remedy = `Lay it ${within} from the inside walls all along.`;
  const measure = "Measure its distance from the inside walls on site and record it.";
  const ask = askAbout(
    yard,
    conductor,
    "conductor-offset",
    `Measured on site, does the ring keep ${within} from the inside walls all along?`,
  );
  const facts: Fact[] = [];
  const near = length(range.min.length, min);
  const far = length(range.max.length, max);
  const reach = reaches(range.min.length, min, yard.accuracy);
  if (reach === "yes") facts.push(good("path", ["ring.min"]));
  else if (reach === "doubtful")
    facts.push(
      open(
        "path",
        `It comes within ${near} of the inside wall, and the drawing may be off by more than that differs from ${length(min)}.`,
        measure,
        ask,
        ["ring.min"],
      ),
    );
  else if (noRoomFor(yard, conductor)) {
    const room = askAbout(
      yard,
      conductor,
      "conductor-no-room",
      "Does the authority having jurisdiction accept the ring nearer to the inside wall where nothing else leaves room for it?",
    );
    facts.push(
      open(
        "path",
        `It comes within ${near} of the inside wall where a wall, building or keep-out leaves no room at ${length(min)}.`,
        "Ask the authority having jurisdiction about this stretch.",
        room,
        ["ring.min"],
      ),
    );
  } else
    facts.push(
      bad("path", `It comes within ${near} of the inside wall; the least is ${length(min)}.`, remedy, ["ring.min"]),
    );
  const over = exceeds(range.max.length, max, yard.accuracy);
  if (over === "no") facts.push(good("path", ["ring.max"]));
  else if (over === "doubtful")
    facts.push(
      open(
        "path",
        `It gets ${far} off the inside wall, and the drawing may be off by more than that differs from ${length(max)}.`,
        measure,
        ask,
        ["ring.max"],
      ),
    );
  else facts.push(bad("path", `It gets ${far} off the inside wall; the most is ${length(max)}.`, remedy, ["ring.max"]));
  return facts;
}
