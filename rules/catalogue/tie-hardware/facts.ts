/** What a recorded tie is judged by. Sources: NEC 680.26(B), 250.8, 110.3(B). */
import { pointToArea, pointToPath } from "../../../geometry/distance.ts";
import { distanceBetween } from "../../../geometry/points.ts";
import type { Point } from "../../../geometry/types.ts";
import { exceeds } from "../../measures/compare.ts";
import type { Shape } from "../../measures/shapes.ts";
import type { Yard } from "../../measures/yard.ts";
import { deadEndFact } from "../../recorded/dead-end.ts";
import { bad, badUnlessAnswered, type Fact, good, open } from "../../recorded/fact.ts";
import { PERIMETER } from "../../recorded/perimeter-name.ts";
import type { TieReading } from "../../recorded/tie-reading.ts";
import { elementName } from "../../words/element-names.ts";
import { speakerOf } from "../common/verdicts.ts";

export function tieFacts(yard: Yard, reading: TieReading): Fact[] {
  return [
    reading.hardware,
    wiresFact(yard, reading),
    burialFact(yard, reading),
    joinsFact(yard, reading),
    deadEndFact(yard, reading),
    placeFact(yard, reading),
  ];
}

/** Kinds of elements that are no thing a wire could be connected to. */
const NOTHING_TO_JOIN: readonly string[] = ["tie", "keep-out", "inset", "overhead-line"];
/** Kinds that ties join to each other where they lie side by side: copper, and what holds steel. */
const BEARERS: readonly string[] = ["conductor", "pool", "surface"];
/** Hardware with a jaw or a barrel that holds one wire unless it is listed for more. */
const HOLDS_ONE_WIRE = ["listed-clamp", "lug"];
/** A weld is no listed product, and steel tie wire holds bars inside the concrete. */
const NEEDS_NO_BURIAL_LISTING = ["exothermic", "tie-wire"];

function ask(yard: Yard, { tie, body }: TieReading, id: string, text: string) {
  return { yard, element: tie.id, body: body?.id ?? null, id, text };
}

function wiresFact(yard: Yard, reading: TieReading): Fact {
  const limits = ["connection.wiresPerClamp"] as const;
  const most = yard.edition.value("connection.wiresPerClamp");
  const { hardware, conductorsInClamp: wires } = reading.tie;
  const field = "conductorsInClamp";
  if (
    hardware !== undefined &&
    !HOLDS_ONE_WIRE.includes(hardware) &&
    yard.edition.value("connection.hardware").includes(hardware)
  ) {
    return good(field, limits);
  }
  const wanted = `${most} wire${most === 1 ? "" : "s"}`;
  if (wires === undefined) {
    const text = `Does the clamp hold no more than ${wanted}, or is it listed for what it holds?`;
    const remedy = `Look into the clamp and record how many wires it holds.`;
    return open(
      field,
      "How many wires are in the clamp (`conductorsInClamp`) is not given.",
      remedy,
      ask(yard, reading, "tie-wires-in-clamp", text),
      limits,
    );
  }
  if (wires < 1) {
    const text = `Does the clamp hold one wire at least and no more than ${wanted}?`;
    return open(
      field,
      "No wire is said to be in it, and a connection holds one at least.",
      "Look into the clamp and record how many wires it holds.",
      ask(yard, reading, "tie-wires-in-clamp", text),
      limits,
    );
  }
  if (wires <= most) return good(field, limits);
  const says = `${wires} wires are in one clamp; it holds ${wanted} unless it is listed for more.`;
  const remedy = "Give each wire its own clamp, or use one that is listed for that many.";
  return badUnlessAnswered(
    field,
    says,
    remedy,
    ask(yard, reading, "tie-clamp-listed", `Is the clamp listed for ${wires} wires of this size?`),
    limits,
  );
}

function burialFact(yard: Yard, reading: TieReading): Fact {
  const limits = ["connection.hardware"] as const;
  const { hardware, listedForBurial } = reading.tie;
  const field = "listedForBurial";
  if (!isBuried(reading) || (hardware !== undefined && NEEDS_NO_BURIAL_LISTING.includes(hardware)))
    return good(field, limits);
  if (listedForBurial === true) return good(field, limits);
  const remedy = "Use hardware that is listed for direct burial.";
  if (listedForBurial === false)
    return bad(field, "It lies in earth or concrete and is not listed for direct burial.", remedy, limits);
  const text = "Is this connector marked as listed for direct burial in earth or concrete?";
  const says =
    "It lies in earth or concrete, and whether it is listed for direct burial (`listedForBurial`) is not given.";
  return open(
    field,
    says,
    "Read the marking on the connector and record it.",
    ask(yard, reading, "tie-listed-for-burial", text),
    limits,
  );
}

/** At perimeter copper, at steel in concrete, or between wires only, a connection lies in earth or concrete. */
function isBuried({ tie, joins }: TieReading): boolean {
  if (tie.joins.includes(PERIMETER)) return true;
  if (
    joins.some(
      (e) =>
        e.kind === "pool" ||
        e.kind === "surface" ||
        (e.kind === "conductor" && (e.role === "ring" || e.role === "grid")),
    )
  )
    return true;
  return joins.length > 0 && joins.every(({ kind }) => kind === "conductor");
}

function joinsFact(yard: Yard, reading: TieReading): Fact {
  const { tie, joins, unknownNames, perimeterUnrecorded } = reading;
  const remedy = "Name in `joins` every thing that the tie connects.";
  const text = "Looked at on site, does this tie connect what it is meant to?";
  const question = ask(yard, reading, "tie-joins", text);
  if (unknownNames.length > 0)
    return open(
      "joins",
      `It names ${unknownNames.map((name) => `"${name}"`).join(", ")}, which no element of this site is called.`,
      remedy,
      question,
    );
  if (perimeterUnrecorded && joins.length > 0) {
    return open(
      "joins",
      "It names the perimeter, and no perimeter copper or steel is recorded there.",
      "Record the perimeter copper or steel that it joins.",
      question,
    );
  }
  const bare = joins.filter(({ kind }) => NOTHING_TO_JOIN.includes(kind));
  if (bare.length > 0) {
    const says = `It names ${bare.map(elementName).join(", ")}, where there is nothing to connect.`;
    return open("joins", says, remedy, question);
  }
  const count = joins.length + (perimeterUnrecorded ? 1 : 0);
  if (count >= 2 || reading.closes !== null) return good("joins");
  const only = tie.joins.length === 0 ? "It joins nothing" : "It joins one thing only";
  return open("joins", `${only}, and a connection takes two.`, remedy, question);
}

/**
 * A tie far from what it names: the place, the names, or a conductor between them is not as it is recorded. A part is often
 * recorded as joined to the network by one tie, made at the part or at the copper, its branch not drawn: there one end is
 * enough.
 */
function placeFact(yard: Yard, reading: TieReading): Fact {
  const { tie, joins } = reading;
  const ownWire = yard.edition.value("connection.ownWire");
  const far = joins
    .map((element) => ({ element, away: distanceTo(yard.shape(element), tie.at) }))
    .filter(({ away }) => exceeds(away, ownWire, yard.accuracy) === "yes");
  if (far.length === 0) return good("at");
  const wiresPart = joins.some(({ kind }) => !BEARERS.includes(kind));
  if (wiresPart && far.length < joins.length) return good("at");
  const { length } = speakerOf(yard);
  const which = far.map(({ element, away }) => `${length(away, ownWire)} from ${elementName(element)}`).join(", ");
  const names = far.map(({ element }) => elementName(element)).join(", ");
  return open(
    "at",
    `It is recorded ${which}, which it is said to join; no tie reaches that far by itself.`,
    "Record the tie where it is made, or the conductor that runs from it.",
    ask(yard, reading, "tie-place", `Looked at on site, does this tie join ${names}?`),
    ["connection.ownWire"],
  );
}

function distanceTo(shape: Shape, at: Point): number {
  switch (shape.kind) {
    case "point":
      return distanceBetween(shape.at, at);
    case "path":
      return pointToPath(at, shape.path).length;
    case "area":
      return pointToArea(at, shape.area).length;
  }
}
