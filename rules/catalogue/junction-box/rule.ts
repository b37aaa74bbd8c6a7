import type { Body, Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { clearanceVerdict, worstOver } from "../common/clearance-verdict.ts";
import { lowestOf } from "../common/heights.ts";
import { isPoolOpen } from "../common/named-pool.ts";
import { ON_BARRIERS, ON_SURFACES, restsOnBoth } from "../common/rests-on.ts";
import { separated } from "../common/separation.ts";
import { servedBy, servedElements } from "../common/serves.ts";
import { bodyOf, bondedBodies } from "../common/storable.ts";
import { all, any, atLeast, notGiven, open, type Truth, YES } from "../common/truth.ts";
import { BARE, speakerOf, subjectName, witnessLine } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "junction-box",
  title: "Junction boxes of underwater lights",
  part: "junction-boxes",
  sections: everyEdition("680.24(A)(2)"),
  subjects: "Each junction box that serves an underwater light, or may.",
  measure:
    "How high the inside of its bottom lies above the deck and above the maximum water level, and its straight distance to the inside wall.",
  parameters: ["junctionBox.aboveDeck", "junctionBox.aboveWater", "junctionBox.distance"],
  protects: "The conduit to a light is full of pool water: a box below the water line floods, and its splices with it.",
  judge: (yard) => yard.each(rule.id, "device", (box) => (box.device === "junction-box" ? judgeBox(yard, box) : [])),
};

function judgeBox(yard: Yard, box: DeviceElement): Verdict[] {
  const lights = servedElements(yard, box).filter((served) => served.kind === "underwater-light");
  const named = servedBy(box);
  const elsewhere = named !== undefined && named.length > 0 && servedElements(yard, box).length === named.length;
  const placed = lights.filter((light) => !isPoolOpen(yard, light));
  const own = new Set(placed.map((light) => bodyOf(yard, light)?.id));
  if (lights.length === 0) own.add(yard.nearestBody(box, bondedBodies(yard))?.id);
  return worstOver(yard, box, (body) => {
    if (lights.length === 0 && elsewhere) {
      const why = `${subjectName(box)} serves no underwater light.`;
      return { ...BARE, element: box.id, body: body.id, outcome: "exempt", why };
    }
    return judgeAt(
      yard,
      body,
      box,
      own.has(body.id) ? "yes" : lights.length === 0 || placed.length < lights.length ? "perhaps" : "no",
    );
  });
}

/** A box of a low-voltage circuit: it says so itself, or every light that it names is a listed low-voltage one. */
function servesLowVoltage(yard: Yard, box: DeviceElement): boolean {
  if (box.lowVoltage === true) return true;
  const served = servedElements(yard, box);
  return served.length > 0 && served.every((e) => e.kind === "underwater-light" && e.listedLowVoltage === true);
}

/**
 * `conduit`: whether the water of this body is in the box's conduit, so that its level counts. Where the box names no light
 * it counts for the nearest body, and may for any other.
 */
function judgeAt(yard: Yard, body: Body, box: DeviceElement, conduit: "yes" | "perhaps" | "no"): Verdict {
  const say = speakerOf(yard);
  const own = conduit === "yes";
  const aboveDeck = yard.edition.value("junctionBox.aboveDeck");
  const aboveWater = yard.edition.value("junctionBox.aboveWater");
  const distance = yard.edition.value("junctionBox.distance");
  const straight = yard.straight(box, body);
  const bottom = lowestOf(box.z);
  const deck = yard.levelAt(box.at);
  const height = heightOf();
  const far = atLeast(yard, straight.length, distance, "its distance to the inside wall");
  const place = far.state === "yes" ? far : any(far, separated(yard, body, straight));
  const flush = height.state === "no" && servesLowVoltage(yard, box);
  const truth = flush ? open(FLUSH) : all(height, place);
  const low =
    bottom === undefined
      ? null
      : Math.min(bottom - deck.z - aboveDeck, own ? bottom - body.waterLevel - aboveWater : Number.POSITIVE_INFINITY);
  const near = straight.length - distance;
  const heights =
    bottom === undefined
      ? ""
      : `, with its bottom ${overWords(bottom - deck.z, aboveDeck, "the deck")}${own ? ` and ${overWords(bottom - body.waterLevel, aboveWater, "the maximum water level")}` : ""}`;
  const about = {
    element: box.id,
    body: body.id,
    measured: {
      horizontal: straight.length,
      ...(bottom === undefined ? {} : { vertical: bottom - body.waterLevel, aboveDeck: bottom - deck.z }),
    },
    required: { horizontal: distance, ...(own ? { vertical: aboveWater } : {}), aboveDeck },
    margin: low === null ? near : Math.min(low, near),
    witness: witnessLine(straight),
    limits: ["junctionBox.aboveDeck", "junctionBox.aboveWater", "junctionBox.distance"] as const,
  };
  const asked = `${say.length(aboveDeck)} above the deck and ${say.length(aboveWater)} above the maximum water level, and ${say.length(distance)} from the inside wall`;
  return clearanceVerdict(yard, about, truth, {
    question: "junction-box-place",
    restsOn: restsOnBoth(ON_BARRIERS, ON_SURFACES),
    is: `${subjectName(box)} is ${say.length(straight.length, distance)} from the inside wall${heights}`,
    wanted: `it keeps at least ${asked}`,
    breaks: `at least ${asked} are asked for, unless a solid barrier separates it`,
    remedy: `Set it so that the inside of its bottom is at least ${asked}.`,
  });

  function overWords(height: number, limit: number, what: string): string {
    return height < 0 ? `${say.length(-height)} below ${what}` : `${say.length(height, limit)} above ${what}`;
  }

  function heightOf(): Truth {
    if (bottom === undefined) return open(NO_HEIGHT);
    const enough = atLeast(yard, bottom - body.waterLevel, aboveWater, "its height above the water");
    const overWater = own || enough.state === "yes" ? enough : conduit === "no" ? YES : open(WHOSE);
    const overDeck = atLeast(yard, bottom - deck.z, aboveDeck, "its height above the deck");
    const level = notGiven(`level of ${deck.surface}`, "The level of the deck", "Is it high enough above the deck?");
    return all(overWater, deck.given ? overDeck : open(level));
  }
}

const NO_HEIGHT = notGiven("z", "How high the inside of its bottom lies", "Is it high enough above deck and water?");

const WHOSE = {
  says: "It is too low for the water of this body, and whose light it serves (`serves`, and the light's `pool`) is not known.",
  asks: "Does it serve a light of another body of water (`serves`)?",
  remedy: "Give `serves`, and the `pool` of its light",
};

const FLUSH = {
  says: "It lies low, as a flush deck box of a low-voltage light may, filled with potting compound and listed for it.",
  asks: "Is it a flush deck box, allowed here for this low-voltage light by its listing and place?",
  remedy: "Look for the listing of the box and ask the authority having jurisdiction",
};
