/** A recorded tie as read: which things it joins, and whether its hardware holds. */
import { bondedBodies } from "../catalogue/common/storable.ts";
import type { Body, Yard } from "../measures/yard.ts";
import type { KnownElement, TieElement } from "../site/elements.ts";
import type { Fact } from "./fact.ts";
import { hardwareFact } from "./hardware.ts";
import { joinsOwnEnds } from "./joints.ts";
import { PERIMETER, perimeterAt } from "./perimeter-name.ts";
import type { Standing } from "./standing.ts";

export interface TieReading {
  readonly tie: TieElement;
  /** Elements that it joins, "perimeter" put in words of an element; no repeats. */
  readonly joins: readonly KnownElement[];
  /** It names one conductor alone and joins the two ends of that, which meet there: its id. */
  readonly closes: string | null;
  /** It names the perimeter, and no perimeter copper or steel is recorded there. */
  readonly perimeterUnrecorded: boolean;
  /** Names that no element of a known kind has. */
  readonly unknownNames: readonly string[];
  readonly hardware: Fact;
  readonly standing: Standing;
  /** The body that findings about it name: one it joins, else the nearest. */
  readonly body: Body | null;
}

/** Every recorded tie, in file order. */
export function tieReadings(yard: Yard): readonly TieReading[] {
  return yard.kept("tie readings", () => yard.all("tie").map((tie) => readTie(yard, tie)));
}

function readTie(yard: Yard, tie: TieElement): TieReading {
  const joins: KnownElement[] = [];
  const unknownNames: string[] = [];
  let perimeterUnrecorded = false;
  for (const name of tie.joins) {
    const id = name === PERIMETER ? perimeterAt(yard, tie.at) : name;
    if (id === null) {
      perimeterUnrecorded = true;
      continue;
    }
    const element = yard.get(id);
    if (!element) unknownNames.push(name);
    else if (!joins.includes(element)) joins.push(element);
  }
  const bodies = bondedBodies(yard);
  const body = bodies.find(({ id }) => joins.some((element) => element.id === id)) ?? yard.nearestBody(tie, bodies);
  const onlySteel = joins.length > 0 && joins.every(({ kind }) => kind === "pool" || kind === "surface");
  const hardware = hardwareFact(yard, tie, onlySteel, body?.id ?? null);
  const [only] = joins;
  const alone = joins.length === 1 && unknownNames.length === 0 && !perimeterUnrecorded;
  const closes = alone && only?.kind === "conductor" && joinsOwnEnds(yard, only, tie.at) ? only.id : null;
  return { tie, joins, closes, perimeterUnrecorded, unknownNames, hardware, standing: hardware.standing, body };
}
