/**
 * How recorded perimeter copper is laid: depth and joints. Source: NEC 680.26(B)(2) of the edition in force.
 */
import { bodyOf } from "../catalogue/common/storable.ts";
import { speakerOf } from "../catalogue/common/verdicts.ts";
import type { ParameterId } from "../editions/parameter-types.ts";
import { standingOf } from "../measures/compare.ts";
import type { Yard } from "../measures/yard.ts";
import type { ConductorElement } from "../site/elements.ts";
import { shellOfGrid } from "./bearers.ts";
import { type Ask, bad, type Fact, good, open } from "./fact.ts";
import { jointWord } from "./joints.ts";
import { jointText, wireOf } from "./wire.ts";

/** The facts of a ring's or a grid's laying. A shell's grid follows the shell: it has no depth. */
export function layingFacts(yard: Yard, conductor: ConductorElement): readonly Fact[] {
  return yard.kept(`laying ${conductor.id}`, () => {
    const facts = [jointFact(yard, conductor)];
    if (wireOf(yard, conductor).conduit) facts.push(conduitFact(yard, conductor));
    if (conductor.role === "ring") facts.push(depthFact(yard, conductor, ringDepth(yard)));
    else if (shellOfGrid(yard, conductor) === null) facts.push(depthFact(yard, conductor, gridDepth(yard)));
    return facts;
  }, [conductor]);
}

export function askAbout(yard: Yard, conductor: ConductorElement, id: string, text: string): Ask {
  return { yard, element: conductor.id, body: bodyOf(yard, conductor)?.id ?? null, id, text };
}

interface DepthLimits {
  readonly min: number | null;
  readonly max: number;
  readonly limits: readonly ParameterId[];
}

export function ringDepth(yard: Yard): DepthLimits {
  return {
    min: yard.edition.value("ring.coverMin"),
    max: yard.edition.value("ring.coverMax"),
    limits: ["ring.coverMin", "ring.coverMax", "ring.coverFrom"],
  };
}

export function gridDepth(yard: Yard): DepthLimits {
  return {
    min: yard.edition.value("grid.coverMin"),
    max: yard.edition.value("grid.coverMax"),
    limits: ["grid.coverMin", "grid.coverMax", "ring.coverFrom"],
  };
}

/** What a depth is measured from, in words. */
export function referenceText(coverFrom: string): string {
  return coverFrom === "subgrade" ? "the subgrade" : coverFrom === "grade" ? "finished grade" : coverFrom;
}

function askDepth(yard: Yard, conductor: ConductorElement, wanted: string): Ask {
  return askAbout(yard, conductor, "conductor-depth", `Does this copper lie ${wanted}?`);
}

/** What subgrade means is argued, so whoever says how deep the copper lies below it says which one was meant. */
function askSubgrade(yard: Yard, conductor: ConductorElement, wanted: string): Ask {
  const text = `What counts as the subgrade here, and does this copper lie ${wanted}?`;
  return {
    ...askAbout(yard, conductor, "subgrade-means", text),
    options: ["the top of the base, and it does", "the soil under the base, and it does", "it does not"],
  };
}

function depthFact(yard: Yard, conductor: ConductorElement, { min, max, limits }: DepthLimits): Fact {
  const { length } = speakerOf(yard);
  const from = yard.edition.value("ring.coverFrom");
  const wanted = `${min === null ? "at most" : `${length(min)} to`} ${length(max)} below ${referenceText(from)}`;
  const ask = from === "subgrade" ? askSubgrade(yard, conductor, wanted) : askDepth(yard, conductor, wanted);
  const { cover, coverFrom } = conductor;
  const remedy = `Measure its depth below ${referenceText(from)} before it is covered, and record it.`;
  if (cover === undefined)
    return open("cover", `Its depth (\`cover\`) is not given; this edition wants it ${wanted}.`, remedy, ask, limits);
  if (coverFrom === undefined)
    return open(
      "coverFrom",
      `Its depth is ${length(cover)}, but from what it was measured (\`coverFrom\`) is not given.`,
      remedy,
      ask,
      limits,
    );
  if (coverFrom !== from) {
    return open(
      "coverFrom",
      `Its depth is given as ${length(cover)} below ${referenceText(coverFrom)}; this edition measures from ${referenceText(from)}.`,
      remedy,
      ask,
      limits,
    );
  }
  const tooShallow = min !== null && standingOf(cover, min, 0) === "below";
  const tooDeep = standingOf(cover, max, 0) === "above";
  if (!tooShallow && !tooDeep && yard.edition.named !== "yes") {
    const says = "Editions measure this depth from different places, and the site names none that is held.";
    return open("cover", says, "Name the edition that the permit falls under.", ask, limits);
  }
  if (!tooShallow && !tooDeep) return good("cover", limits);
  const limit = tooShallow ? min : max;
  return bad(
    "cover",
    `It lies ${length(cover, limit)} below ${referenceText(from)}; this edition wants it ${wanted}.`,
    `Lay it ${wanted}.`,
    limits,
  );
}

/** Conduit that serves in place of the wire, where copper is written for the perimeter. */
function conduitFact(yard: Yard, conductor: ConductorElement): Fact {
  const ask = askAbout(
    yard,
    conductor,
    "conductor-conduit-perimeter",
    "Does the authority having jurisdiction accept this conduit as the perimeter conductor?",
  );
  return open(
    "material",
    "It is conduit; the perimeter conductor is written as bare solid copper.",
    "Ask the authority having jurisdiction.",
    ask,
    ["conductor.insteadMaterials"],
  );
}

function jointFact(yard: Yard, conductor: ConductorElement): Fact {
  const limits = ["ring.joints"] as const;
  const word = jointWord(yard, conductor);
  if (word === "refused") {
    return bad(
      "joint",
      `It is joined by ${jointText(conductor.joint ?? "")} alone; its splices are listed or exothermic.`,
      "Remake the joint as a listed splice or an exothermic weld.",
      limits,
    );
  }
  if (word !== "open" && yard.edition.value("ring.joints").includes(conductor.joint ?? ""))
    return good("joint", limits);
  const says =
    conductor.joint === undefined
      ? "Its joints (`joint`) are not given."
      : `Its joint "${conductor.joint}" is of no kind that can be judged.`;
  const ask = askAbout(
    yard,
    conductor,
    "conductor-joint",
    "Is this conductor without joints, or are they listed splices or exothermic welds?",
  );
  return open("joint", says, "Look at its joints and record them.", ask, limits);
}
