/**
 * The report, version 1: what `check --json` prints and the editor shows.
 * Lengths in inches, areas in square inches, unrounded; regions are planar GeoJSON MultiPolygon coordinates.
 */
import type { Point, Region } from "../geometry/types.ts";
import type { PerimeterChoice } from "./site/site.ts";

export const REPORT_FORMAT = "copperband-report";
export const REPORT_VERSION = 1;

/**
 * `bond` needs bonding, nothing recorded on this site yet · `missing` the same once recorded copper does not reach it ·
 * `meets` drawn and as required · `exempt` a named exception · `conflict` what is drawn breaks the rule ·
 * `review` judgement or an unknown fact decides.
 */
export type Outcome = "bond" | "exempt" | "meets" | "missing" | "conflict" | "review";

/** Worst first. `bond` and `missing` are the same need; they never stand on one site together for one part. */
export const OUTCOMES_WORST_FIRST: readonly Outcome[] = ["conflict", "missing", "bond", "review", "meets", "exempt"];

/** How sure a number of the code is. */
export type BasisWord = "published" | "one source" | "memory" | "judgement";

export interface Question {
  /** Stable over sites and sessions; an answer names it together with the finding's element. */
  readonly id: string;
  readonly text: string;
  readonly options: readonly string[];
  /** Absent: nothing but the element and the pool that it is asked about. */
  readonly restsOn?: Rest;
}

/** What an answer rests on besides the element and the pool that it is about: it lapses when any of this changes. */
export interface Rest {
  /** All things of these kinds, wherever they are. */
  readonly kinds?: readonly string[];
  /** Single things, by id. */
  readonly elements?: readonly string[];
}

/** An answer of the site that decided a finding. */
export interface Answered {
  readonly question: string;
  readonly asked: string;
  readonly answer: string;
  readonly on?: string;
  readonly by?: string;
}

/** Named measurements, inches or square inches; `null` = there is none (no path exists). */
export type Measured = { readonly [name: string]: number | string | boolean | null };

export interface Finding {
  readonly id: string;
  readonly rule: string;
  readonly section: string;
  readonly alsoSections: readonly string[];
  readonly element: string | null;
  readonly body: string | null;
  /** Further bodies that the same finding names where several matter. */
  readonly alsoBodies?: readonly string[];
  readonly outcome: Outcome;
  readonly measured: Measured;
  readonly required: Measured;
  /** Measured less required on the deciding measure; negative = on the wrong side. Null where nothing is measured. */
  readonly margin: number | null;
  readonly extent?: number;
  readonly witness: readonly Point[];
  readonly basis: BasisWord;
  readonly why: string;
  readonly remedy: string;
  readonly question?: Question;
  /** Present when an answer of the site decided: the question's id and text, and what was answered to it. */
  readonly answered?: Answered;
  /** Present when an answer was given but what it was about has changed since. */
  readonly lapsed?: boolean;
}

export type SurfaceBonding = "steel" | "ring" | "grid" | "none-needed" | "review";

export interface BandReport {
  readonly pool: string;
  readonly area: number;
  readonly region: Region;
  readonly bySurface: readonly {
    readonly surface: string | null;
    readonly area: number;
    readonly bonding: SurfaceBonding;
  }[];
}

/** What one choice of method lays on the perimeter of bodies whose perimeters run together. */
export interface MethodChoice {
  /** The choice, as in the site's settings. */
  readonly method: PerimeterChoice;
  /** Inches of copper in ring, links and grid; null where the choice is not allowed anywhere on this perimeter. */
  readonly copper: number | null;
  /** Joints of that copper: splices, ends of ring stretches, crossings of a grid, its stretches that cross no other. */
  readonly connections: number | null;
  /** What it lays on each piece of the band that needs bonding; where the choice is not allowed, the allowed method. */
  readonly pieces: readonly {
    readonly pool: string;
    readonly surface: string | null;
    readonly area: number;
    readonly method: SurfaceBonding;
    /** A slab that is there already: copper under it means breaking it. */
    readonly existing: boolean;
  }[];
  readonly allowed: boolean;
  readonly chosen: boolean;
  /** Why it is not allowed or is a mixture, and what has to be broken for it; empty where there is nothing to say. */
  readonly note: string;
}

export interface MethodsReport {
  /** The first body of the perimeter. */
  readonly pool: string;
  /** All of its bodies. */
  readonly pools: readonly string[];
  readonly choices: readonly MethodChoice[];
}

/** Rolls of copper grid that cover the grids of the plan. */
export interface GridRolls {
  readonly width: number;
  /** Inches of roll that the grids take. */
  readonly run: number;
  readonly spacing: number;
  /** How far the spacing may be off, inches. */
  readonly tolerance: number;
  readonly rolls: readonly { readonly length: number; readonly count: number }[];
}

export interface RingLoop {
  readonly pools: readonly string[];
  readonly path: readonly Point[];
  readonly length: number;
}

export interface RingReport {
  readonly offset: number;
  readonly loops: readonly RingLoop[];
  readonly length: number;
  /** The shortest between the code's limits. */
  readonly shortestLegal: number;
  /** Present where walls, buildings or keep-outs leave no legal ring all round: `shortestLegal` counts only where one fits. */
  readonly legalIn?: "part";
  /** The taut ring that keeps the site's margin inside both limits. */
  readonly short?: { readonly loops: readonly RingLoop[]; readonly length: number };
  /** Stretches where no legal place exists, with their length. */
  readonly tooClose?: readonly { readonly path: readonly Point[]; readonly length: number }[];
  /** Copper that joins separate loops or carries the ring across. */
  readonly links?: readonly {
    readonly path: readonly Point[];
    readonly length: number;
    /** The bodies of the loop that it leads to. */
    readonly pools: readonly string[];
    /** It leads from an inner loop to the steel or grid of the shell, not from loop to loop. */
    readonly shell?: true;
  }[];
  readonly pending: boolean;
}

export interface TieReport {
  readonly at: Point;
  readonly to: Point;
  readonly between: readonly [string, string];
  readonly present: boolean;
  readonly recorded: string | null;
  readonly distanceAlong: number;
}

export interface BranchReport {
  readonly to: string;
  readonly path: readonly Point[];
  readonly run: number;
  readonly drop: number;
  /** Where the branch enters a building, if its part stands inside one. */
  readonly penetration?: Point;
}

export interface TakeoffReport {
  readonly conductor: {
    readonly ring: number;
    readonly grid: number;
    readonly ties: number;
    readonly branches: number;
    readonly drops: number;
    readonly tails: number;
    readonly spare: number;
    readonly total: number;
  };
  readonly hardware: readonly { readonly item: string; readonly count: number }[];
  readonly weightPounds: number;
}

export interface Report {
  readonly format: typeof REPORT_FORMAT;
  readonly version: typeof REPORT_VERSION;
  readonly site: string;
  readonly edition: string;
  readonly amendments: readonly { readonly parameter: string; readonly value: unknown; readonly reason: string }[];
  readonly cautions: readonly string[];
  readonly counts: Readonly<Record<Outcome, number>>;
  readonly missing: number;
  readonly band: readonly BandReport[];
  readonly reach: readonly { readonly pool: string; readonly distance: number; readonly region: Region }[];
  readonly findings: readonly Finding[];
  readonly ring: RingReport;
  readonly grid: {
    readonly band: {
      readonly length: number;
      readonly crossings: number;
      /** Stretches that cross no other: each is joined to what lies beside it. */
      readonly loose?: number;
      readonly lines?: readonly (readonly Point[])[];
    };
    readonly shell: { readonly length: number; readonly crossings: number };
    /** Present where the plan lays a grid. */
    readonly rolls?: GridRolls;
  };
  /** The ways to bond each perimeter, compared by copper. */
  readonly methods: readonly MethodsReport[];
  readonly ties: readonly TieReport[];
  readonly branches: readonly BranchReport[];
  readonly takeoff: TakeoffReport;
}
