/**
 * One surface of the band judged by the edition in force: does it need bonding, and by which methods.
 *
 * Terms. Paved: conducts, and steel may lie in it. Unpaved: soil and what lies loose on it. Nonconductive: wood, plastic,
 * composite. Argued: stone, tile, artificial turf. The lists stand in the edition's data.
 * Source: NEC 680.26(B)(2) of the edition in force, restated.
 */

import { ON_SURFACES } from "../catalogue/common/rests-on.ts";
import { type Settled, settle, yesNo } from "../catalogue/common/verdicts.ts";
import type { OnlyIf } from "../catalogue/rule.ts";
import type { Body, Yard } from "../measures/yard.ts";
import type { Question } from "../report.ts";
import type { SurfaceElement } from "../site/elements.ts";

/** How a stretch of perimeter is bonded. */
export type Method = "steel" | "ring" | "grid" | "none-needed";

export interface SurfaceJudgement {
  readonly outcome: "bond" | "exempt" | "review";
  /** Least copper first. */
  readonly allowed: readonly Method[];
  readonly reason: string;
  readonly question?: Question;
  readonly settled?: Settled;
  /** What has to be so for the allowed methods to be all that is needed. */
  readonly onlyIf?: OnlyIf;
}

export const MESH_QUESTION = yesNo(
  "mesh-counts",
  "Does the authority having jurisdiction count the welded wire in this paving as bare steel?",
);

export const DECK_OVER_SOIL_QUESTION: Question = {
  id: "deck-over-soil",
  text: "Does the authority having jurisdiction ask for perimeter bonding in the soil under this raised deck?",
  options: ["yes", "no"],
};

export const DECK_SUPPORTS_QUESTION: Question = {
  id: "deck-supports",
  text: "How is this surface carried?",
  options: [
    "on nonconductive supports, or separated from the earth",
    "on metal or other conductive supports",
    "it lies on the earth",
  ],
};

export const SURFACE_CLASS_QUESTION: Question = {
  id: "surface-class",
  text: "What does the authority having jurisdiction count this surface as?",
  options: ["conductive paving", "unpaved ground", "nonconductive and separated from the earth"],
};

export const RAISED_PAVING_QUESTION = yesNo(
  "raised-over-bonded",
  "Is this paving electrically separate and raised on nonconductive supports above a bonded surface?",
  ON_SURFACES,
);

type SurfaceClass = "paved" | "unpaved" | "nonconductive" | "argued";

/** Judges a surface (null: ground that nothing covers) as part of a body's perimeter. */
export function judgeSurface(yard: Yard, body: Body, surface: SurfaceElement | null): SurfaceJudgement {
  const ask = (question: Question) => settle(yard, question, surface?.id ?? null, body.id);
  switch (classOf(yard, surface)) {
    case "paved":
      return surface ? paved(yard, surface, ask) : unpaved(yard);
    case "unpaved":
      return unpaved(yard);
    case "nonconductive":
      return surface ? nonconductive(yard, surface, ask) : unpaved(yard);
    case "argued":
      return surface ? argued(yard, surface, ask) : unpaved(yard);
  }
}

type Ask = (question: Question) => Settled;

function classOf(yard: Yard, surface: SurfaceElement | null): SurfaceClass {
  if (surface === null) return "unpaved";
  const listed = (id: "perimeter.paved" | "perimeter.unpaved" | "perimeter.nonconductive") =>
    yard.edition.value(id).includes(surface.material);
  if (listed("perimeter.paved")) return "paved";
  if (listed("perimeter.unpaved")) return "unpaved";
  return listed("perimeter.nonconductive") ? "nonconductive" : "argued";
}

function bond(allowed: readonly Method[], reason: string, settled?: Settled): SurfaceJudgement {
  return { outcome: "bond", allowed, reason, ...(settled ? { settled } : {}) };
}

function exempt(reason: string, settled?: Settled): SurfaceJudgement {
  return {
    outcome: "exempt",
    allowed: ["none-needed"],
    reason,
    ...(settled ? { settled } : {}),
  };
}

/** Copper under paving that holds no steel that counts, least copper first. */
function underPaving(yard: Yard): Method[] {
  const grid = yard.edition.value("perimeter.grid");
  if (!yard.edition.value("perimeter.ringUnderPaving")) return ["grid"];
  return grid ? ["ring", "grid"] : ["ring"];
}

/** Copper in ground without paving, least copper first. */
function inSoil(yard: Yard): Method[] {
  const grid = yard.edition.value("perimeter.grid");
  if (!yard.edition.value("perimeter.ringUnpaved")) return ["grid"];
  return grid ? ["ring", "grid"] : ["ring"];
}

function ringOnly(yard: Yard): string {
  return yard.edition.value("perimeter.ringUnderPaving")
    ? "A copper ring serves where no bare steel lies in the paving."
    : "A lone ring does not serve under conductive paving in this edition: it takes bare steel, welded wire or a copper grid.";
}

function unpaved(yard: Yard): SurfaceJudgement {
  const how = yard.edition.value("perimeter.ringUnpaved")
    ? "A copper ring in the ground serves."
    : "It takes a copper grid.";
  return bond(inSoil(yard), `Unpaved ground counts as much as paving. ${how}`);
}

function paved(yard: Yard, surface: SurfaceElement, ask: Ask): SurfaceJudgement {
  if (
    surface.support === "raised" &&
    surface.supports === "nonconductive" &&
    yard.edition.value("perimeter.nonconductiveExempt")
  ) {
    const settled = ask(RAISED_PAVING_QUESTION);
    if (settled.choice === "yes")
      return exempt(
        "It is electrically separate and raised on nonconductive supports above a bonded surface.",
        settled,
      );
    const below = pavedByItsSteel(yard, surface, ask);
    if (settled.choice === "no") return { ...below, settled: below.settled?.choice == null ? settled : below.settled };
    const reason =
      "Paving raised on nonconductive supports is free only above a bonded surface, and the drawing does not show what lies below.";
    return { ...below, outcome: "review", reason, question: RAISED_PAVING_QUESTION, settled };
  }
  return pavedByItsSteel(yard, surface, ask);
}

function pavedByItsSteel(yard: Yard, surface: SurfaceElement, ask: Ask): SurfaceJudgement {
  const copper = underPaving(yard);
  switch (surface.steel) {
    case "rebar":
      return bond(
        ["steel"],
        "Its bare reinforcing steel, tied together, is the bonding. It has to cover the band and run on across joints.",
      );
    case "mesh":
      return mesh(yard, ask);
    case "encapsulated":
      return bond(copper, `Its steel is encapsulated and cannot serve. ${ringOnly(yard)}`);
    case "fiber":
      return bond(copper, `Fiber is not steel. ${ringOnly(yard)}`);
    case "none":
      return bond(copper, `It holds no steel. ${ringOnly(yard)}`);
    case undefined:
      return steelNotGiven(yard, ask);
  }
}

const NO_BARE_STEEL: OnlyIf = {
  question: yesNo("paving-without-steel", "Is this paving without bare reinforcing steel?"),
  says: "no bare steel lies in the paving, and that is not given",
  remedy: "Say what steel lies in it.",
};

/** Copper serves, but a ring alone only where no bare steel is there to be bonded. */
function steelNotGiven(yard: Yard, ask: Ask): SurfaceJudgement {
  const copper = underPaving(yard);
  const settled = ask(NO_BARE_STEEL.question);
  if (settled.choice === "no")
    return bond(["steel"], "Bare reinforcing steel lies in it, and is the bonding.", settled);
  if (settled.choice === "yes") return bond(copper, `It holds no bare steel. ${ringOnly(yard)}`, settled);
  const reason = `The drawing does not say whether steel lies in it, so none is counted on. ${ringOnly(yard)}`;
  const judged = bond(copper, reason, settled);
  return copper.includes("ring") ? { ...judged, onlyIf: NO_BARE_STEEL } : judged;
}

function mesh(yard: Yard, ask: Ask): SurfaceJudgement {
  const counts = yard.edition.value("perimeter.meshCounts");
  const serves = "Welded wire embedded in the paving serves. It has to cover the band and run on across joints.";
  if (counts === true) return bond(["steel"], serves);
  const copper = underPaving(yard);
  const no = `Welded wire does not count as bare steel. ${ringOnly(yard)}`;
  if (counts === false) return bond(copper, no);
  const settled = ask(MESH_QUESTION);
  if (settled.choice === "yes") return bond(["steel"], serves, settled);
  if (settled.choice === "no") return bond(copper, no, settled);
  const reason = `Whether welded wire counts as bare steel is argued in this edition. ${ringOnly(yard)}`;
  return { ...bond(copper, reason, settled), outcome: "review", question: MESH_QUESTION };
}

const METAL_FRAMING = " Metal framing under it is fixed metal as well.";

function nonconductive(yard: Yard, surface: SurfaceElement, ask: Ask): SurfaceJudgement {
  if (!yard.edition.value("perimeter.nonconductiveExempt")) return raisedBefore(yard, surface, ask);
  const soil = inSoil(yard);
  const conductive = `It does not conduct but stands on conductive supports, so the ground below it needs bonding.${METAL_FRAMING}`;
  const { support, supports } = surface;
  if (supports === "conductive") return bond(soil, conductive);
  if (support === "raised" && supports === "nonconductive" && yard.edition.named === "yes") {
    return exempt(`It does not conduct and is raised on nonconductive supports.${METAL_FRAMING}`);
  }
  const settled = ask(DECK_SUPPORTS_QUESTION);
  const [apart, onMetal, onEarth] = DECK_SUPPORTS_QUESTION.options;
  if (settled.choice === apart)
    return exempt(`It does not conduct and is kept off the earth.${METAL_FRAMING}`, settled);
  if (settled.choice === onMetal) return bond(soil, conductive, settled);
  if (settled.choice === onEarth)
    return bond(soil, "It does not conduct but lies on the earth, so the ground below it needs bonding.", settled);
  const open =
    yard.edition.named !== "yes"
      ? "This edition frees it where it stands on nonconductive supports, but the site names no edition that we hold."
      : "A surface that does not conduct is free only where it is separated from the earth or raised on nonconductive supports.";
  return { ...bond(soil, `${open}${METAL_FRAMING}`, settled), outcome: "review", question: DECK_SUPPORTS_QUESTION };
}

/** Before 2023: no written exemption for a deck that does not conduct. */
function raisedBefore(yard: Yard, surface: SurfaceElement, ask: Ask): SurfaceJudgement {
  const soil = inSoil(yard);
  if (surface.support === "grade") {
    return bond(
      soil,
      "This edition writes no exemption for surfaces that do not conduct, and this one lies at grade. A copper ring in the ground below it serves.",
    );
  }
  const settled = ask(DECK_OVER_SOIL_QUESTION);
  if (settled.choice === "no")
    return exempt("The authority having jurisdiction asks for no bonding under this deck.", settled);
  if (settled.choice === "yes")
    return bond(soil, "The authority having jurisdiction asks for bonding in the soil under this deck.", settled);
  const reason =
    "This edition writes no exemption for a raised deck that does not conduct, and inspectors ask for a ring in the soil under it.";
  return { ...bond(soil, reason, settled), outcome: "review", question: DECK_OVER_SOIL_QUESTION };
}

function argued(yard: Yard, surface: SurfaceElement, ask: Ask): SurfaceJudgement {
  if (surface.steel === "rebar") return pavedByItsSteel(yard, surface, ask);
  const ringServesBoth = yard.edition.value("perimeter.ringUnderPaving") && yard.edition.value("perimeter.ringUnpaved");
  if (ringServesBoth && !yard.edition.value("perimeter.nonconductiveExempt")) {
    return bond(
      inSoil(yard),
      "Whether this counts as paving or as unpaved ground makes no difference in this edition: a copper ring serves both.",
    );
  }
  const settled = ask(SURFACE_CLASS_QUESTION);
  const [paving, ground, apart] = SURFACE_CLASS_QUESTION.options;
  if (settled.choice === paving) return { ...pavedByItsSteel(yard, surface, ask), settled };
  if (settled.choice === ground) return { ...unpaved(yard), settled };
  if (settled.choice === apart) return exempt("It counts as nonconductive and is separated from the earth.", settled);
  const reason =
    "What class this surface belongs to is argued: as conductive paving it takes steel or a copper grid, as unpaved ground a ring serves.";
  return { ...bond(underPaving(yard), reason, settled), outcome: "review", question: SURFACE_CLASS_QUESTION };
}
