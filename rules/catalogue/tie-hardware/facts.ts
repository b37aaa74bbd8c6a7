/** What a recorded tie is judged by. Sources: NEC 680.26(B), 250.8, 110.3(B). */
import type { Yard } from "../../measures/yard.ts";
import { deadEndFact } from "../../recorded/dead-end.ts";
import { bad, badUnlessAnswered, type Fact, good, open } from "../../recorded/fact.ts";
import { PERIMETER } from "../../recorded/perimeter-name.ts";
import type { TieReading } from "../../recorded/tie-reading.ts";

export function tieFacts(yard: Yard, reading: TieReading): Fact[] {
  return [
    reading.hardware,
    wiresFact(yard, reading),
    burialFact(yard, reading),
    joinsFact(yard, reading),
    deadEndFact(yard, reading),
  ];
}

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
  const count = joins.length + (perimeterUnrecorded ? 1 : 0);
  if (count >= 2) return good("joins");
  const only = tie.joins.length === 0 ? "It joins nothing" : "It joins one thing only";
  return open("joins", `${only}, and a connection takes two.`, remedy, question);
}
