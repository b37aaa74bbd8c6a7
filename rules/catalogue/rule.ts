/** What a rule is: a small record that looks at a measured yard and gives one verdict for each thing it looks at. */
import type { Path, Point } from "../../geometry/types.ts";
import type { EditionId } from "../editions/edition.ts";
import type { ParameterId } from "../editions/parameter-types.ts";
import type { Yard } from "../measures/yard.ts";
import type { BasisWord, Finding, Measured, Outcome, Question } from "../report.ts";

/** The parts of the article in the code's own order, bonding first, then clearances. */
export const PARTS = [
  { id: "site", section: "680.2", title: "The site" },
  { id: "shell", section: "680.26(B)(1)", title: "Shell" },
  { id: "perimeter", section: "680.26(B)(2)", title: "Perimeter" },
  { id: "ties", section: "680.26(B)(2)", title: "Ties to the shell" },
  { id: "structure", section: "680.26(B)(3)", title: "Structure" },
  { id: "lights", section: "680.26(B)(4)", title: "Underwater lights" },
  { id: "fittings", section: "680.26(B)(5)", title: "Fittings" },
  { id: "equipment", section: "680.26(B)(6)", title: "Equipment" },
  { id: "fixed-metal", section: "680.26(B)(7)", title: "Fixed metal" },
  { id: "water", section: "680.26(C)", title: "Water" },
  { id: "copper", section: "680.26(B)", title: "Recorded copper" },
  { id: "receptacles", section: "680.22(A)", title: "Receptacles" },
  { id: "luminaires", section: "680.22(B)", title: "Luminaires and fans" },
  { id: "switches", section: "680.22(C)", title: "Switches" },
  { id: "outlets", section: "680.22(D)", title: "Other outlets" },
  { id: "other-equipment", section: "680.22(E)", title: "Other equipment" },
  { id: "overhead", section: "680.9", title: "Overhead lines" },
  { id: "underground", section: "680.11", title: "Underground runs" },
  { id: "disconnect", section: "680.13", title: "Disconnect" },
  { id: "junction-boxes", section: "680.24(A)", title: "Junction boxes" },
  { id: "lenses", section: "680.23(A)", title: "Underwater lenses" },
] as const;

export type PartId = (typeof PARTS)[number]["id"];

/**
 * Something that has to be reached by recorded connections before its need is met: the compare stage turns its
 * `bond` into `meets` or `missing`.
 */
export interface Need {
  /**
   * `part`: reached when its element is joined to the bonding network by `connections` recorded ties.
   * `perimeter`: met when the recorded perimeter copper or steel of that body is complete (compare stage decides).
   * `water`: met when a water contact of that body is in the network.
   * `shell-grid`: met when a recorded grid lies in that shell and is joined.
   */
  readonly kind: "part" | "perimeter" | "water" | "shell-grid";
  /** Element id for a part; elements that can each satisfy it for water. */
  readonly elements: readonly string[];
  readonly connections: number;
  /** Where a branch may meet it, plan positions (a fence: points along its length within reach). */
  readonly at: readonly Point[];
  /** Lines along which a branch may meet it anywhere; `at` holds positions spread over them. */
  readonly along?: readonly Path[];
  /** Height of the connection above the ground there, inches (counted as a drop). */
  readonly drop: number;
  /** Of a part that is there to put bonded metal in its body's water: where that water has no contact, it counts once. */
  readonly servesWater?: true;
  readonly onlyIf?: readonly OnlyIf[];
}

/** What has to be answered with yes, each of them, before what is recorded is all that is needed. */
export interface OnlyIf {
  readonly question: Question;
  /** To go on after "only if". */
  readonly says: string;
  readonly remedy: string;
}

/** One rule's word on one thing. */
export interface Verdict {
  readonly element: string | null;
  readonly body: string | null;
  readonly alsoBodies?: readonly string[];
  readonly outcome: Outcome;
  /** Only where it differs from the rule's own. */
  readonly section?: string;
  readonly alsoSections?: readonly string[];
  readonly measured: Measured;
  readonly required: Measured;
  readonly margin: number | null;
  readonly extent?: number;
  readonly witness: readonly Point[];
  /** The numbers that decided: the finding's basis is the least sure among them. */
  readonly limits: readonly ParameterId[];
  /** Overrides the basis of the limits where judgement decided. */
  readonly basis?: BasisWord;
  readonly why: string;
  readonly remedy: string;
  readonly question?: Question;
  readonly answered?: Finding["answered"];
  readonly lapsed?: boolean;
  readonly need?: Need;
}

/** A yard that shows the rule at work; runs as a test. Source beside each, as in every test. */
export interface RuleExample {
  readonly name: string;
  readonly source: string;
  readonly edition: EditionId;
  /** A site document as text authors write it (elements only; the head is added). */
  readonly elements: readonly object[];
  readonly head?: object;
  /** The finding that must come: element (null for the body's or site's own), and outcome. */
  readonly expect: {
    readonly element: string | null;
    readonly body?: string | null;
    readonly outcome: Outcome;
    readonly section?: string;
  };
  /** Outcomes in the editions where they differ ("none": nothing is asked there); in every other the same comes. */
  readonly elsewhere?: Readonly<Partial<Record<EditionId, Outcome | "none">>>;
}

export interface Rule {
  readonly id: string;
  readonly title: string;
  readonly part: PartId;
  /** Section in the edition's numbering; an edition that is absent has no such rule. */
  readonly sections: Readonly<Partial<Record<EditionId, string>>>;
  /** Further sections that it restates, numbered alike: how it measures, or where it speaks instead of its own. */
  readonly alsoSections?: Readonly<Partial<Record<EditionId, readonly string[]>>>;
  /** What it looks at, in plain words. */
  readonly subjects: string;
  /** What is measured and held against what, in plain words. */
  readonly measure: string;
  /** The numbers it reads. */
  readonly parameters: readonly ParameterId[];
  /** One short teaching note: what it protects people from. */
  readonly protects: string;
  /** It judges an element once for each body, whose needs are met one by one; the report joins them in one finding. */
  readonly bodyByBody?: true;
  /** One verdict for each subject; throws nothing (a crash is a crash). */
  judge(yard: Yard): Verdict[];
}

/** The same in every edition: a section, or further ones. */
export function everyEdition<T>(section: T): Readonly<Record<EditionId, T>> {
  return { "nec-2017": section, "nec-2020": section, "nec-2023": section };
}
