/** Whether the hardware of a recorded tie joins what it names. Sources: NEC 680.26(B), 250.8. */
import type { Yard } from "../measures/yard.ts";
import type { TieElement } from "../site/elements.ts";
import { bad, type Fact, good, open } from "./fact.ts";
import { plain } from "./wire.ts";

/** Holds bars of steel together and nothing else. */
const STEEL_ONLY = "tie-wire";

/**
 * The fact of a tie's hardware. `onlySteel`: everything it joins is the steel of a shell or a paving. `body` is the body
 * that its question is about.
 */
export function hardwareFact(yard: Yard, tie: TieElement, onlySteel: boolean, body: string | null): Fact {
  const { hardware } = tie;
  const limits = ["connection.hardware", "connection.refusedHardware"] as const;
  const remedy = "Use a listed clamp, pressure connector or lug, or an exothermic weld.";
  if (hardware !== undefined && yard.edition.value("connection.refusedHardware").includes(hardware)) {
    return bad(
      "hardware",
      `It is made by ${refusedText(hardware)}, which does not count as a connection.`,
      remedy,
      limits,
    );
  }
  if (hardware === STEEL_ONLY && !onlySteel) {
    return bad(
      "hardware",
      "It is made by steel tie wire, which joins bars of steel to each other but not copper or parts to them.",
      remedy,
      limits,
    );
  }
  if (hardware !== undefined && yard.edition.value("connection.hardware").includes(hardware))
    return good("hardware", limits);
  const says =
    hardware === undefined
      ? "Its hardware (`hardware`) is not given."
      : `Its hardware is "${plain(hardware)}", of no kind that can be judged.`;
  const ask = {
    yard,
    element: tie.id,
    body,
    id: "tie-hardware",
    text: "Is this connection a listed clamp, pressure connector or lug, or an exothermic weld?",
  };
  return open("hardware", says, "Look at the connection and record its hardware.", ask, limits);
}

function refusedText(hardware: string): string {
  switch (hardware) {
    case "screw":
      return "a sheet-metal screw";
    case "solder":
      return "solder alone";
    case "twisted":
      return "twisting alone";
    default:
      return plain(hardware);
  }
}
