/**
 * What the perimeter band asks on each surface: which methods the edition in force allows, and which one the plan lays.
 *
 * Stages. 1. The surface's class (paved, unpaved, nonconductive, argued) and what lies in it. 2. The methods allowed.
 * 3. The plan's choice: the site's own method (`settings.perimeterMethod`) where it is allowed, else the allowed one with
 * least copper (steel that is there, else a lone ring, else a grid); for a question the careful one of those: a ring
 * before 2023, from 2023 a grid under whatever may be paved and a ring in soil.
 * Source: NEC 680.26(B)(2) of the edition in force, restated.
 */
import { spaException } from "../catalogue/common/spa-exception.ts";
import { storableOf } from "../catalogue/common/storable.ts";
import { type Settled, settle } from "../catalogue/common/verdicts.ts";
import type { OnlyIf } from "../catalogue/rule.ts";
import { exceeds } from "../measures/compare.ts";
import type { BandPiece, Body, Yard } from "../measures/yard.ts";
import type { Question, SurfaceBonding } from "../report.ts";
import type { SurfaceElement } from "../site/elements.ts";
import type { PerimeterChoice } from "../site/site.ts";
import { judgeSurface, type Method, type SurfaceJudgement } from "./surface-class.ts";

export type { Method } from "./surface-class.ts";

export interface PieceMethod {
  readonly piece: BandPiece;
  /** The report's word. */
  readonly bonding: SurfaceBonding;
  readonly allowed: readonly Method[];
  /** What the plan lays: for a question the careful method. */
  readonly planned: Method;
  /** Why, in one or two sentences. */
  readonly reason: string;
  readonly question?: Question;
  /** What the site's own answer settled, if it was asked. */
  readonly settled?: Settled;
  readonly onlyIf?: OnlyIf;
}

/** One entry for each piece of the body's band. */
export function perimeterMethods(yard: Yard, body: Body): readonly PieceMethod[] {
  return yard.kept(`perimeter methods ${body.id}`, () =>
    yard.band(body).pieces.map((piece) => methodOf(yard, body, piece)),
  );
}

/** The method for one piece of a body's band. */
export function methodOf(yard: Yard, body: Body, piece: BandPiece): PieceMethod {
  const free = (reason: string): PieceMethod => ({
    piece,
    bonding: "none-needed",
    allowed: ["none-needed"],
    planned: "none-needed",
    reason,
  });
  if (storableOf(yard, body).is === "yes") return free("A storable pool needs no perimeter bonding.");
  if (spaException(yard, body).state === "holds") {
    return free("The spa meets every condition of the exception for listed self-contained outdoor spas.");
  }
  const surface = surfaceOf(yard, piece);
  const judged = judgeSurface(yard, body, surface);
  const entry = entryOf(yard, piece, judged);
  if (judged.outcome !== "bond") return entry;
  return outsideHeights(yard, body, surface, entry) ?? entry;
}

/** What the plan lays where these methods are allowed, by a choice of the site. */
export function methodBy(choice: PerimeterChoice, allowed: readonly Method[]): Method {
  if (choice !== "least-copper" && allowed.includes(choice)) return choice;
  return allowed[0] ?? "grid";
}

function entryOf(yard: Yard, piece: BandPiece, judged: SurfaceJudgement): PieceMethod {
  const { allowed, reason, question, settled, onlyIf } = judged;
  const planned = methodBy(yard.settings.perimeterMethod, allowed);
  const bonding = judged.outcome === "review" ? "review" : planned;
  return {
    piece,
    bonding,
    allowed,
    planned,
    reason,
    ...(question ? { question } : {}),
    ...(settled ? { settled } : {}),
    ...(onlyIf ? { onlyIf } : {}),
  };
}

export function surfaceOf(yard: Yard, piece: BandPiece): SurfaceElement | null {
  return yard.surfaces.find((model) => model.element.id === piece.surface)?.element ?? null;
}

const HEIGHT_QUESTION: Question = {
  id: "outside-height-band",
  text: "Does the authority having jurisdiction ask for perimeter bonding of a surface at this height?",
  options: ["yes", "no"],
};

/** From 2023 a surface far above or below the water may lie outside of the rule: a question, never a silent pass. */
function outsideHeights(
  yard: Yard,
  body: Body,
  surface: SurfaceElement | null,
  entry: PieceMethod,
): PieceMethod | null {
  const height = heightStanding(yard, body, surface);
  if (height === "within") return null;
  const settled = settle(yard, HEIGHT_QUESTION, surface?.id ?? null, body.id);
  if (settled.choice === "yes") return { ...entry, settled };
  if (settled.choice === "no") {
    const reason = `It lies ${height} the heights that this edition names.`;
    return {
      piece: entry.piece,
      bonding: "none-needed",
      allowed: ["none-needed"],
      planned: "none-needed",
      reason,
      settled,
    };
  }
  const reason = `${entry.reason} It lies ${height} the heights that this edition names, and whether that frees it is argued.`;
  return { ...entry, bonding: "review", reason, question: HEIGHT_QUESTION, settled };
}

/** Where a surface lies to the heights that the edition names; `at the edge of`: within the site's accuracy of a limit. */
function heightStanding(
  yard: Yard,
  body: Body,
  surface: SurfaceElement | null,
): "within" | "above" | "below" | "at the edge of" {
  const above = yard.edition.value("perimeter.above");
  const below = yard.edition.value("perimeter.below");
  const height = surfaceHeight(yard, body, surface);
  if (above !== null) {
    const over = exceeds(height, above, yard.accuracy);
    if (over !== "no") return over === "yes" ? "above" : "at the edge of";
  }
  if (below !== null) {
    const under = exceeds(-height, below, yard.accuracy);
    if (under !== "no") return under === "yes" ? "below" : "at the edge of";
  }
  return "within";
}

/** A surface above the body's maximum water level, inches; one that gives no level is taken at the site's grade. */
export function surfaceHeight(yard: Yard, body: Body, surface: SurfaceElement | null): number {
  return (surface?.level ?? yard.grade) - body.waterLevel;
}
