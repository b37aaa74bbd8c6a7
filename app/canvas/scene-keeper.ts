/**
 * Keeps the scene that the sheet shows, and works it out anew only when something that it shows has changed.
 *
 * Stages. 1. At rest: the scene with its lettering, placed for the present scale. 2. While the view moves: the same
 * scene, as it is. 3. While a gesture runs: the scene without lettering, with the last names and marks riding along.
 * Branches that are still on their way are those that were drawn last.
 */
import type { BranchReport, Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import { planScene } from "../drawing/plan-scene.ts";
import type { Item, Scene } from "../drawing/scene.ts";
import type { Editor } from "../editor.ts";
import { EMPTY_REPORT } from "./empty-report.ts";
import { type Lettered, withKeptLettering } from "./kept-lettering.ts";
import { itemsOfPart } from "./part-emphasis.ts";
import { PIXELS_PER_POINT } from "./screen-view.ts";

/** What the sheet shows now. */
export interface Shown {
  readonly scene: Scene;
  /** What stays strong over the veil; null: nothing is veiled. */
  readonly strong: readonly Item[] | null;
  /** The branches are those of before, on their way to being worked out. */
  readonly areBranchesOld: boolean;
}

export class SceneKeeper {
  readonly #editor: Editor;
  #shown: Shown | null = null;
  #inputs: readonly unknown[] = [];
  #lettered: Lettered | null = null;
  #branches: readonly BranchReport[] = [];
  /** The first revision of the site on the sheet: reports about the one before say nothing about it. */
  #opened = 0;

  constructor(editor: Editor) {
    this.#editor = editor;
    const { document } = editor;
    document.subscribe((state, before) => {
      const isFresh = state.history.past.length === 0 && state.history.future.length === 0 && state.gesture === null;
      if (!isFresh || state.shown === before.shown || before.gesture !== null) return;
      this.#opened = state.revision;
      this.#branches = [];
      this.#lettered = null;
    });
  }

  /** The scene now. `isMoving`: the view is being moved, so that lettering is not placed anew. */
  now(isMoving: boolean): Shown {
    const { document, view, live } = this.#editor;
    const { shown: site, gesture } = document.getState();
    const { part, finding, highlight, camera } = view.getState();
    const { routesPending } = live.getState();
    const report = this.#reportOf();
    const isDragging = gesture !== null;
    const inputs = [site, report, part, finding, highlight, isDragging, routesPending, isDragging ? 0 : camera.scale];
    const isScaleOnly = inputs.every((input, i) => i === inputs.length - 1 || input === this.#inputs[i]);
    if (this.#shown && isScaleOnly && (isMoving || inputs.at(-1) === this.#inputs.at(-1))) return this.#shown;
    this.#inputs = inputs;
    this.#shown = this.#make(site, report, isDragging, routesPending);
    return this.#shown;
  }

  #make(site: Site, report: Report, isDragging: boolean, routesPending: boolean): Shown {
    const { part, finding, highlight, camera } = this.#editor.view.getState();
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
    const scene = isPlain && this.#lettered ? withKeptLettering(plain, this.#lettered, site, report) : plain;
    if (!isPlain) this.#lettered = { scene, site };
    const focus = scene.layers.find(({ name }) => name === "focus")?.items ?? [];
    const marks = scene.layers.find(({ name }) => name === "marks")?.items ?? [];
    const ownMarks = marks.filter(({ findings }) => finding !== null && findings?.includes(finding));
    const strong = focus.length > 0 ? [...focus, ...ownMarks] : part ? itemsOfPart(scene, report, part) : null;
    return { scene, strong, areBranchesOld: routesPending };
  }

  /** The newest report about the site on the sheet; an empty one until the first has come. */
  #reportOf(): Report {
    const { report, reportRevision } = this.#editor.live.getState();
    return report && reportRevision >= this.#opened ? report : EMPTY_REPORT;
  }
}
