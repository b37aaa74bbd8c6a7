/**
 * Paints the sheet from its state, in a worker or on the page.
 *
 * Stages of a frame. While the view moves, everything is painted anew; where that takes too long for a frame, the last
 * picture of the plan is moved and stretched, and painted anew a few times a second. While something is dragged, the ground (surfaces
 * and buildings, whose hatches take longest) comes from a kept picture and the rest is painted over it. At rest the
 * whole plan comes from a kept picture, and only what lies over it is painted: the selection and the tool's own lines.
 */
import type { Point } from "../../geometry/types.ts";
import { PALETTES } from "../drawing/palette.ts";
import type { Scene } from "../drawing/scene.ts";
import { gridLines } from "../snapping/grid.ts";
import type { Camera } from "../view/view-store.ts";
import { type Context2D, contextOf, newCanvas } from "./new-canvas.ts";
import { paintGrid, paintOutline, paintTool } from "./overlay-painter.ts";
import type { Paint } from "./painter.ts";
import { groundKey, paintDrawing, paintGround } from "./plan-painter.ts";
import { SceneKeeper, type Shown } from "./scene-keeper.ts";
import { paintFurniture } from "./sheet-furniture.ts";
import type { SheetState } from "./sheet-state.ts";

/** Where the number of a finding stands on the sheet, inches. */
export interface MarkPlace {
  readonly at: Point;
  readonly finding: string;
}

/**
 * A plan that takes longer to paint is not painted in every frame of a moving view, milliseconds. Putting the strokes on
 * the screen takes the browser as long again.
 */
const TOO_LONG = 5;
/** So long a moved picture stands for the plan, milliseconds; and so far it is stretched. */
const MOVED_PICTURE = 160;
const MOST_STRETCHED = 2;

/** A picture that stands for what it was painted from, as long as that is the same. */
interface Kept {
  readonly context: Context2D;
  key: readonly unknown[];
}

export class SheetPainter {
  readonly #keeper = new SceneKeeper();
  readonly #onMarks: (marks: readonly MarkPlace[]) => void;
  #kept: Record<"ground" | "plan", Kept | null> = { ground: null, plan: null };
  #view: readonly unknown[] = [];
  #marked: Scene | null = null;
  /** Grows when type that was painted has to be painted again. */
  #typefaces = 0;
  /** How long the plan took to be painted last; when its kept picture was painted, and through which camera. */
  #took = 0;
  #paintedAt = 0;
  #camera: Camera | null = null;

  /** `onMarks` hears where the numbers of findings stand, each time they are placed. */
  constructor(onMarks: (marks: readonly MarkPlace[]) => void) {
    this.#onMarks = onMarks;
  }

  /** The sheet's own typeface has come: nothing that was painted stands for it. */
  typefaceCame(): void {
    this.#typefaces += 1;
  }

  /** Paints a frame on a canvas of the state's size. */
  paint(context: Context2D, state: SheetState): void {
    const { camera, width, height, pixelRatio, palette, site } = state;
    if (width === 0 || height === 0) return;
    const shown = this.#keeper.now(state);
    this.#tellMarks(state, shown);
    const view = [camera, width, height, pixelRatio, palette, this.#typefaces];
    const isMoved = state.isMoving || !isSame(view, this.#view);
    this.#view = view;
    const paint: Paint = { context, view: { camera, width, height }, palette: PALETTES[palette], pixelRatio };
    clear(context);
    const ground = [...view, hasGrid(state), ...groundKey(shown, site)];
    const plan = [...ground, shown, site];
    const paintGroundOn = (on: Paint) => paintGroundOf(on, state, shown);
    if (isMoved && this.#took <= TOO_LONG) {
      this.#timed(() => {
        paintGroundOn(paint);
        paintDrawing(paint, shown);
      });
    } else if (isMoved && this.#canBeMoved(state, plan)) {
      this.#putMoved(paint);
    } else if (state.isDragging) {
      this.#put("ground", paint, ground, paintGroundOn);
      paintDrawing(paint, shown);
    } else {
      this.#put("plan", paint, plan, (on) => {
        this.#camera = camera;
        this.#paintedAt = performance.now();
        this.#timed(() => {
          if (isMoved) paintGroundOn(on);
          else this.#put("ground", on, ground, paintGroundOn);
          paintDrawing(on, shown);
        });
      });
    }
    // What is typed while drawing takes the place of the furniture.
    if (!state.isDrawing) paintFurniture(paint, site);
    paintOverlay(paint, state);
  }

  /** Puts a kept picture on the canvas, painted again first where it stands for something else. */
  #put(name: "ground" | "plan", paint: Paint, key: readonly unknown[], make: (on: Paint) => void): void {
    const { width, height } = paint.context.canvas;
    const before = this.#kept[name];
    const fits = before && before.context.canvas.width === width && before.context.canvas.height === height;
    const context = fits ? before.context : contextOf(newCanvas(width, height));
    if (!context) {
      make(paint);
      return;
    }
    const kept: Kept = fits ? before : { context, key: [] };
    this.#kept[name] = kept;
    if (!isSame(key, kept.key)) {
      clear(context);
      make({ ...paint, context });
      kept.key = key;
    }
    paint.context.resetTransform();
    paint.context.drawImage(context.canvas, 0, 0);
  }

  #timed(work: () => void): void {
    const begun = performance.now();
    work();
    this.#took = performance.now() - begun;
  }

  /** Whether the kept picture shows this plan, only through another camera, and not for too long. */
  #canBeMoved({ camera, isMoving }: SheetState, plan: readonly unknown[]): boolean {
    const kept = this.#kept.plan?.key ?? [];
    const stretch = camera.scale / (this.#camera?.scale ?? 0);
    return (
      isMoving &&
      performance.now() - this.#paintedAt < MOVED_PICTURE &&
      stretch < MOST_STRETCHED &&
      stretch > 1 / MOST_STRETCHED &&
      // The first of a key is the camera.
      isSame(plan.slice(1), kept.slice(1))
    );
  }

  #putMoved({ context, view, pixelRatio }: Paint): void {
    const [kept, was] = [this.#kept.plan, this.#camera];
    if (!kept || !was) return;
    const { camera, width, height } = view;
    const k = camera.scale / was.scale;
    const x = ((1 - k) * width) / 2 + (was.x - camera.x) * camera.scale;
    const y = ((1 - k) * height) / 2 + (camera.y - was.y) * camera.scale;
    context.setTransform(k, 0, 0, k, x * pixelRatio, y * pixelRatio);
    context.drawImage(kept.context.canvas, 0, 0);
    context.resetTransform();
  }

  #tellMarks({ isDragging }: SheetState, { scene }: Shown): void {
    if (isDragging || this.#marked === scene) return;
    this.#marked = scene;
    const items = scene.layers.find(({ name }) => name === "marks")?.items ?? [];
    this.#onMarks(
      items.flatMap((item) =>
        item.kind === "mark" && item.findings?.[0] !== undefined ? [{ at: item.at, finding: item.findings[0] }] : [],
      ),
    );
  }
}

function isSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((part, i) => part === b[i]);
}

function clear(context: Context2D): void {
  context.resetTransform();
  context.globalAlpha = 1;
  context.clearRect(0, 0, context.canvas.width, context.canvas.height);
}

/** Lines of the grid show while something is drawn or dragged that snaps to them. */
function hasGrid({ isSnapping, isDrawing, isDragging }: SheetState): boolean {
  return isSnapping && (isDrawing || isDragging);
}

function paintGroundOf(paint: Paint, state: SheetState, shown: Shown): void {
  paintGround(paint, shown);
  if (hasGrid(state)) paintGrid(paint, gridLines(state.camera.scale, state.site.display?.units));
}

function paintOverlay(paint: Paint, { site, report, finding, selection, hovered, overlay }: SheetState): void {
  const chosen = new Set(selection);
  // The finding in focus draws its element itself, with the part that lies within the limit.
  const focused = finding === null ? null : report?.findings.find(({ id }) => id === finding)?.element;
  if (typeof focused === "string") chosen.delete(focused);
  if (chosen.size > 0 || hovered !== null) {
    for (const element of site.elements) {
      if (chosen.has(element.id)) paintOutline(paint, element, true);
      else if (element.id === hovered) paintOutline(paint, element, false);
    }
  }
  paintTool(paint, overlay);
}
