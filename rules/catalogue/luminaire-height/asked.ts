/**
 * What 680.22(B) asks of a luminaire, a fan or a lighting outlet, by how near to the water it hangs.
 *
 * Zones. `near`: over the water or up to the near distance, both included. `outer`: beyond it, up to the outer distance,
 * included. Farther nothing is asked. Source: NEC 680.22(B)(1) to (4) and (6), restated.
 */
import type { Body, Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { lowestOf } from "../common/heights.ts";
import {
  all,
  any,
  atLeast,
  eitherWay,
  flag,
  NO,
  notGiven,
  type OpenFact,
  open,
  type Truth,
  YES,
} from "../common/truth.ts";

/** The paragraph that was asked, in the edition's numbering, with its answer. */
export interface Asked {
  readonly section: string;
  readonly truth: Truth;
  /** The height that was asked for, inches above the maximum water level. */
  readonly height: number | null;
  /** What is asked for, a clause. */
  readonly wanted: "high" | "indoors" | "existing" | "outer";
}

const gfci = (device: DeviceElement) =>
  flag(device.gfci, notGiven("gfci", "Whether GFCI protects it", "Does GFCI protect it?"));

const rigid = (device: DeviceElement) =>
  flag(
    device.rigidlyAttached,
    notGiven("rigidlyAttached", "Whether it is rigidly attached", "Is it rigidly attached?"),
  );

/** A fan suits the place by its listing; anything else by being totally enclosed. */
function suited(device: DeviceElement): Truth {
  const { totallyEnclosed, listedNearWater } = device;
  if (device.device === "fan") {
    if (listedNearWater === true) return YES;
    const listing = "Whether the fan is listed for the place,";
    if (totallyEnclosed === false)
      return flag(listedNearWater, notGiven("listedNearWater", listing, "Is it a fan suited to the place?"));
  }
  const what = "Whether it is totally enclosed, or a fan suited to the place,";
  return flag(
    totallyEnclosed,
    notGiven("totallyEnclosed", what, "Is it totally enclosed, or a fan suited to the place?"),
  );
}

function above(yard: Yard, body: Body, device: DeviceElement, limit: number): Truth {
  const lowest = lowestOf(device.z);
  if (lowest === undefined) return open(notGiven("z", "How high it hangs", "Does it hang high enough?"));
  return atLeast(yard, lowest - body.waterLevel, limit, "its height above the maximum water level");
}

const AS_HIGH_AS_NEW: OpenFact = {
  says: "It hangs as high as a new one has to, yet what is asked of an existing one names GFCI and the fastening too.",
  asks: "Does the authority having jurisdiction accept it at that height without them?",
  remedy: "Ask the authority having jurisdiction",
};

/** What is asked over the water and near it. */
export function askedNear(yard: Yard, body: Body, device: DeviceElement): Asked {
  const { edition } = yard;
  const [full, indoor, old] = [
    edition.value("luminaire.newHeight"),
    edition.value("luminaire.indoorHeight"),
    edition.value("luminaire.existingHeight"),
  ];
  const high = above(yard, body, device, full);
  const existing = yard.fact(device, "existing") === true;
  const asExisting = existing ? all(above(yard, body, device, old), rigid(device), gfci(device)) : NO;
  // The paragraph for existing ones names GFCI and the fastening whatever the height.
  const outdoors = existing ? any(asExisting, all(high, open(AS_HIGH_AS_NEW))) : high;
  const indoors = any(outdoors, all(above(yard, body, device, indoor), gfci(device), suited(device)));
  const asOutdoors: Asked = existing
    ? { section: "680.22(B)(3)", truth: outdoors, height: old, wanted: "existing" }
    : { section: "680.22(B)(1)", truth: outdoors, height: full, wanted: "high" };
  const asIndoors: Asked = existing
    ? { ...asOutdoors, truth: indoors }
    : { section: "680.22(B)(2)", truth: indoors, height: indoor, wanted: "indoors" };
  if (device.indoor === true) return asIndoors;
  if (device.indoor === false || !mayBeIndoors(yard, body, device)) return asOutdoors;
  const fact = notGiven("indoor", "Whether it is indoors", "Is it indoors?");
  return { ...asIndoors, truth: eitherWay(outdoors, indoors, fact) };
}

/** Outdoors is the careful side: nothing passes there that does not indoors. */
function mayBeIndoors(yard: Yard, body: Body, device: DeviceElement): boolean {
  return body.element.installation === "indoor" || yard.buildings.some(({ area }) => inside(device, area.outer.bounds));
}

/** In the box of a building: enough to ask. */
function inside({ at }: DeviceElement, box: { minX: number; minY: number; maxX: number; maxY: number }): boolean {
  return at[0] > box.minX && at[0] < box.maxX && at[1] > box.minY && at[1] < box.maxY;
}

/** What is asked farther out: GFCI, or high and rigidly attached. */
export function askedOuter(yard: Yard, body: Body, device: DeviceElement): Asked {
  const height = yard.edition.value("luminaire.outerHeight");
  const truth = any(gfci(device), all(above(yard, body, device, height), rigid(device)));
  return { section: "680.22(B)(4)", truth, height, wanted: "outer" };
}

/** Whether a low-voltage luminaire may hang anywhere: listed, in need of no grounding, at or below the contact limit. */
export function freeByLowVoltage(yard: Yard, device: DeviceElement): Truth {
  if (yard.fact(device, "lowVoltage") !== true) return NO;
  const limit = yard.edition.value("contactLimit.volts");
  const { volts, needsGrounding, listedNearWater } = device;
  const listing = notGiven(
    "listedNearWater",
    "Its listing for use this near to the water, on the supply that the listing names,",
    "Is it listed for this place, on the supply that its listing names?",
  );
  const grounding = notGiven("needsGrounding", "Whether it needs grounding", "Is it without need of grounding?");
  const contact = notGiven(
    "volts",
    "Its voltage, which the low-voltage contact limit bounds,",
    "Does it work at or below the low-voltage contact limit?",
  );
  const over = {
    says: `It is said to be low voltage, yet works at ${volts} V; the contact limit is ${limit} V, and another for direct current.`,
    asks: "Does it work at or below the low-voltage contact limit (`volts`)?",
    remedy: "Read its voltage on the label",
  };
  return all(
    volts === undefined ? open(contact) : volts > limit ? open(over) : YES,
    flag(listedNearWater, listing),
    flag(needsGrounding === undefined ? undefined : !needsGrounding, grounding),
  );
}
