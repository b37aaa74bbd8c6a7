import { boundsOfPoints, boundsUnion } from "../../geometry/points.ts";
import type { Bounds } from "../../geometry/types.ts";
import type { PartId } from "../../rules/catalogue/rule.ts";
import type { Report } from "../../rules/report.ts";
import type { KnownElement, UnknownElement } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";
import { drawnSite } from "../edits/arrangement.ts";
import { dimensionBounds, drawAttachedDimensions } from "./attached-dimensions.ts";
import { drawCopper, drawRecorded } from "./copper-layers.ts";
import { drawDimensions } from "./dimensions.ts";
import { Drafting, isKnown } from "./drafting.ts";
import { elementBounds, positionOfUnknown } from "./element-bounds.ts";
import { drawFocus } from "./focus.ts";
import { drawGround } from "./ground-layers.ts";
import { drawHighlight, type TakeoffRun } from "./highlight.ts";
import { drawLettering, marksFor } from "./lettering.ts";
import { drawPart } from "./part-layers.ts";
import type { MarkChoice, Scene } from "./scene.ts";

export interface SceneOptions {
  /** Points of paper to an inch of the site: what type and marks are placed for. Default 1/8" = 1'. */
  readonly pointsPerInch?: number;
  /** Which findings get a number on the plan: all, those that are not settled, or none. Default: all while they are few. */
  readonly marks?: MarkChoice;
  /** Only the findings of this part of the article. */
  readonly part?: PartId;
  /** Id of the finding that the eye is led to. */
  readonly focus?: string;
  /** The run of the takeoff whose pieces the eye is led to; a finding in focus goes before it. */
  readonly highlight?: TakeoffRun;
  /** Leaves out everything that has to be placed (names, numbers, marks), for a drawing that moves. */
  readonly withoutLettering?: boolean;
}

/** 1/8 in. of paper to a foot of site. */
export const EIGHTH_INCH_SCALE = 0.75;

/** The plan as data, without what the site hides. The same site, report and options give the same scene. */
export function planScene(site: Site, report: Report, options: SceneOptions = {}): Scene {
  // A finding in focus shows what it is about, hidden or not.
  const focused = report.findings.find(({ id }) => id === options.focus);
  const drawn = drawnSite(site, focused?.element ?? focused?.body ?? null);
  const drafting = new Drafting(drawn, report, options.pointsPerInch ?? EIGHTH_INCH_SCALE);
  for (const element of drawn.elements) drawElement(element, drafting);
  drawCopper(drafting);
  const bounds = sceneBounds(site, report);
  if (bounds !== null) {
    drawDimensions(bounds, drafting);
    drawAttachedDimensions(drafting);
    if (options.focus !== undefined) drawFocus(options.focus, drafting);
    else if (options.highlight !== undefined) drawHighlight(options.highlight, drafting);
    if (options.withoutLettering !== true) drawLettering(bounds, options, drafting);
  }
  return {
    layers: drafting.layers(),
    bounds,
    pointsPerInch: drafting.pointsPerInch,
    marks: options.withoutLettering === true ? "none" : marksFor(options, drafting),
    unmarked: drafting.unmarked,
  };
}

function drawElement(element: KnownElement | UnknownElement, drafting: Drafting): void {
  if (!isKnown(element)) {
    const at = positionOfUnknown(element);
    if (at !== null) {
      const item = { kind: "symbol", symbol: "unknown", at, turn: 0, role: "unknown-kind" } as const;
      drafting.add("metal", { ...item, letters: "?", element: element.id });
    }
    return;
  }
  if (drawGround(element, drafting) || drawRecorded(element, drafting) || drawPart(element, drafting)) return;
  throw new Error(`There is no drawing for the kind "${element.kind}".`);
}

/** Lines that may run on far beyond the yard: they leave the sheet where it ends. */
const RUNNING_ON: ReadonlySet<string> = new Set(["overhead-line", "underground-run"]);

/** The box of everything that has to be seen: elements, zones and measured lines. Null for an empty site. */
export function sceneBounds(site: Site, report: Report): Bounds | null {
  const boxes = site.elements.flatMap((element) => {
    const box = RUNNING_ON.has(element.kind) ? null : elementBounds(element);
    return box === null ? [] : [box];
  });
  for (const { region } of [...report.reach, ...report.band]) {
    const outer = region.flatMap((polygon) => polygon[0] ?? []);
    if (outer.length > 0) boxes.push(boundsOfPoints(outer));
  }
  for (const { witness } of report.findings) if (witness.length > 0) boxes.push(boundsOfPoints(witness));
  const dimensions = dimensionBounds(site);
  if (dimensions) boxes.push(dimensions);
  return boxes.length === 0 ? null : boundsUnion(boxes);
}
