import type { Body, Yard } from "../../measures/yard.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { capitalized, elementName } from "../../words/element-names.ts";
import { type CordReach, cordReach } from "../common/cord-reach.ts";
import { highestOf } from "../common/heights.ts";
import { ON_BARRIERS, restsOnBoth } from "../common/rests-on.ts";
import { bondedBodies } from "../common/storable.ts";
import { all, atMost, flag, NO, notGiven, open, type Truth, YES } from "../common/truth.ts";
import { BARE, marginOfConflict, settle, speakerOf, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "required-receptacle",
  title: "The receptacle every pool has",
  part: "receptacles",
  sections: everyEdition("680.22(A)(1)"),
  subjects: "Each body of water.",
  measure:
    "Whether a receptacle for general use lies near enough and far enough by the way of a cord, of the right rating and not too high.",
  parameters: [
    "receptacle.requiredFrom",
    "receptacle.requiredTo",
    "receptacle.requiredHeight",
    "receptacle.requiredVolts",
    "receptacle.requiredAmps",
  ],
  protects:
    "Where there is no receptacle at the right distance, extension cords are laid across the deck to the water.",
  judge: (yard) => bondedBodies(yard).map((body) => judgeBody(yard, body)),
};

interface Candidate {
  readonly element: DeviceElement;
  readonly reach: CordReach;
  readonly height: number | undefined;
  readonly fits: Truth;
}

function judgeBody(yard: Yard, body: Body): Verdict {
  const wanted = wantedWords(yard);
  const name = elementName(body.element);
  const base = {
    ...BARE,
    element: null,
    body: body.id,
    limits: rule.parameters,
    required: requirements(yard),
  };
  const candidates = yard
    .all("device")
    .filter(({ device }) => device === "receptacle")
    .map((element) => candidateOf(yard, body, element))
    .sort((a, b) => (a.reach.length ?? Number.POSITIVE_INFINITY) - (b.reach.length ?? Number.POSITIVE_INFINITY));
  const sure = candidates.find(({ fits }) => fits.state === "yes");
  if (sure) {
    const why = `${capitalized(elementName(sure.element))} serves ${name}: ${wanted}.`;
    return { ...base, ...seen(yard, sure), outcome: "meets", why };
  }
  if (candidates.length === 0) {
    const question = yesNo("required-receptacle-there", `Is there ${wanted}?`);
    const { choice, trace, note } = settle(yard, question, null, body.id);
    const why = `${capitalized(name)} needs ${wanted}, and no receptacle is drawn.${note}`;
    const remedy = `Draw it, or add ${wanted}.`;
    if (choice === "yes") return { ...base, ...trace, outcome: "meets", why };
    if (choice === "no") return { ...base, ...trace, outcome: "conflict", why, remedy };
    return { ...base, ...trace, outcome: "review", why, remedy, question };
  }
  let notes = "";
  for (const candidate of candidates.filter(({ fits }) => fits.state === "open")) {
    const { element, fits } = candidate;
    const called = elementName(element);
    const open = fits.facts.map(({ asks }) => asks).join(" ");
    const rests = restsOnBoth({ elements: [element.id] }, ON_BARRIERS);
    const question = yesNo(`required-receptacle-fits-${element.id}`, `Is ${called} ${wanted}? Open: ${open}`, rests);
    const { choice, trace, note } = settle(yard, question, null, body.id);
    const why = `${capitalized(name)} needs ${wanted}. ${capitalized(called)} may be it. ${fits.facts.map(({ says }) => says).join(" ")}${note}`;
    if (choice === "yes") return { ...base, ...seen(yard, candidate), ...trace, outcome: "meets", why };
    notes += note;
    if (choice === "no") continue;
    const remedy = `${fits.facts.map((fact) => fact.remedy).join("; ")}.`;
    return { ...base, ...seen(yard, candidate), ...trace, element: null, outcome: "review", why, remedy, question };
  }
  const why = `${capitalized(name)} needs ${wanted}, and none of the receptacles drawn is.${notes}`;
  const remedy = `Add ${wanted}.`;
  const nearest = nearestSeen(yard, candidates[0]);
  return {
    ...base,
    ...nearest,
    margin: marginOfConflict(nearest.margin),
    element: null,
    outcome: "conflict",
    why,
    remedy,
  };
}

function nearestSeen(yard: Yard, candidate: Candidate | undefined) {
  return candidate === undefined ? { margin: null } : seen(yard, candidate);
}

/** What is measured at a receptacle. */
function seen(yard: Yard, { element, reach, height }: Candidate) {
  const { length, horizontal, witness } = reach;
  const [from, to] = [yard.edition.value("receptacle.requiredFrom"), yard.edition.value("receptacle.requiredTo")];
  const below = height === undefined ? [] : [yard.edition.value("receptacle.requiredHeight") - height];
  return {
    element: element.id,
    measured: { horizontal, path: length, ...(height === undefined ? {} : { aboveFloor: height }) },
    margin: length === null ? null : Math.min(length - from, to - length, ...below),
    witness,
  };
}

function candidateOf(yard: Yard, body: Body, element: DeviceElement): Candidate {
  const { edition } = yard;
  const reach = cordReach(yard, body, element);
  const top = highestOf(element.z);
  const floor = yard.levelAt(element.at);
  const height = top === undefined ? undefined : top - floor.z;
  const place = reach.between(edition.value("receptacle.requiredFrom"), edition.value("receptacle.requiredTo"));
  // One at the wrong distance is not it, whatever else it is.
  return { element, reach, height, fits: place.state === "no" ? NO : all(place, low(), rating(), general()) };

  function low(): Truth {
    if (height === undefined) return open(notGiven("z", "How high it is", "Is it low enough?"));
    if (!floor.given)
      return open(notGiven(`level of ${floor.surface}`, "The level of the floor there", "Is it low enough?"));
    return atMost(yard, height, edition.value("receptacle.requiredHeight"), "its height above the floor");
  }

  function rating(): Truth {
    const { volts, amps } = element;
    const voltsFit =
      volts === undefined
        ? open(notGiven("volts", "Its voltage", `Is it for ${edition.value("receptacle.requiredVolts")} V?`))
        : volts <= edition.value("receptacle.requiredVolts") && volts > edition.value("contactLimit.volts")
          ? YES
          : NO;
    const ratings = edition.value("receptacle.requiredAmps");
    const ampsFit =
      amps === undefined
        ? open(notGiven("amps", "Its rating", `Is it rated ${ratings.join(" or ")} A?`))
        : ratings.includes(String(amps))
          ? YES
          : NO;
    return all(voltsFit, ampsFit);
  }

  function general(): Truth {
    const asks = "Is it for general use, on a circuit of that kind?";
    return flag(element.generalPurpose, notGiven("generalPurpose", "Whether it is for general use", asks));
  }
}

function requirements(yard: Yard) {
  const { edition } = yard;
  return {
    pathFrom: edition.value("receptacle.requiredFrom"),
    pathTo: edition.value("receptacle.requiredTo"),
    aboveFloor: edition.value("receptacle.requiredHeight"),
  };
}

/** The receptacle that is asked for, as a thing. */
function wantedWords(yard: Yard): string {
  const say = speakerOf(yard);
  const { edition } = yard;
  const length = (id: "receptacle.requiredFrom" | "receptacle.requiredTo" | "receptacle.requiredHeight") =>
    say.length(edition.value(id));
  const rating = `${edition.value("receptacle.requiredVolts")} V, ${edition.value("receptacle.requiredAmps").join(" or ")} A`;
  return `a receptacle (${rating}) for general use, ${length("receptacle.requiredFrom")} to ${length("receptacle.requiredTo")} from the inside wall as a cord lies and at most ${length("receptacle.requiredHeight")} above the floor`;
}
