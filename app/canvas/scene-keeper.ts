/**
 * Keeps the scene that the sheet shows, and works it out anew only when something that it shows has changed.
 *
 * Stages. 1. At rest: the scene with its lettering, placed for the present scale. 2. While the view moves: the same
 * scene, as it is. 3. While a gesture runs: the scene without lettering, with the last names and marks riding along.
 * Branches that are still on their way are those that were drawn last.
 */
import type { BranchReport, Report } from "../../rules/report.ts";
import { planScene } from "../drawing/plan-scene.ts";
import type { Item, Scene } from "../drawing/scene.ts";
import { withoutParts } from "../view/hidden-parts.ts";
import { EMPTY_REPORT } from "./empty-report.ts";
import { type Lettered, withKeptLettering } from "./kept-lettering.ts";
import { itemsOfPart } from "./part-emphasis.ts";
import { PIXELS_PER_POINT } from "./screen-view.ts";
import type { SheetState } from "./sheet-state.ts";

/** What the sheet shows now. */
export interface Shown {
  readonly scene: Scene;
  /** What stays strong over the veil; null: nothing is veiled. */
  readonly strong: readonly Item[] | null;
  /** The branches are those of before, on their way to being worked out. */
  readonly areBranchesOld: boolean;
}

/** What of the sheet's state makes its scene. */
export type SceneState = Pick<
  SheetState,
  | "site"
  | "opening"
  | "report"
  | "routesPending"
  | "isDragging"
  | "isMoving"
  | "part"
  | "hiddenParts"
  | "finding"
  | "highlight"
  | "camera"
>;

export class SceneKeeper {
  #shown: Shown | null = null;
  #inputs: readonly unknown[] = [];
  #lettered: Lettered | null = null;
  #branches: readonly BranchReport[] = [];
  #opening = 0;

  /** The scene now; the same object as long as it shows the same. */
  now(state: SceneState): Shown {
    const { site, part, hiddenParts, finding, highlight, camera, isDragging, isMoving, routesPending, opening } = state;
    if (opening !== this.#opening) {
      this.#opening = opening;
      this.#branches = [];
      this.#lettered = null;
    }
    const report = state.report ?? EMPTY_REPORT;
    const how = [part, hiddenParts, finding, highlight, isDragging, routesPending];
    const inputs = [site, report, ...how, isDragging ? 0 : camera.scale];
    const isScaleOnly = inputs.every((input, i) => i === inputs.length - 1 || input === this.#inputs[i]);
    if (this.#shown && isScaleOnly && (isMoving || inputs.at(-1) === this.#inputs.at(-1))) return this.#shown;
    this.#inputs = inputs;
    this.#shown = this.#make(state, report);
    return this.#shown;
  }

  #make(state: SceneState, report: Report): Shown {
    const { site, part, hiddenParts, finding, highlight, camera, isDragging, routesPending } = state;
    if (!routesPending) this.#branches = report.branches;
    const drawn = routesPending && report !== EMPTY_REPORT ? { ...report, branches: this.#branches } : report;
    const isPlain = isDragging && this.#lettered !== null;
    const plain = planScene(site, drawn, {
      pointsPerInch: camera.scale / PIXELS_PER_POINT,
      ...(part ? { part } : {}),
      ...(finding ? { focus: finding } : {}),
      ...(highlight ? { highlight } : {}),
      ...(isPlain ? { withoutLettering: true } : {}),
    });
    const whole = isPlain && this.#lettered ? withKeptLettering(plain, this.#lettered, site, report) : plain;
    if (!isPlain) this.#lettered = { scene: whole, site };
    const scene = withoutParts(whole, report, hiddenParts);
    const focus = scene.layers.find(({ name }) => name === "focus")?.items ?? [];
    const marks = scene.layers.find(({ name }) => name === "marks")?.items ?? [];
    const ownMarks = marks.filter(({ findings }) => finding !== null && findings?.includes(finding));
    const strong = focus.length > 0 ? [...focus, ...ownMarks] : part ? itemsOfPart(scene, report, part) : null;
    return { scene, strong, areBranchesOld: routesPending };
  }
}
