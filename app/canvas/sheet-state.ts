/** All that the picture of the sheet is made from, as plain data: read from the stores once a frame, given to the painter. */
import type { PartId } from "../../rules/catalogue/rule.ts";
import type { Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import type { TakeoffRun } from "../drawing/highlight.ts";
import type { Editor } from "../editor.ts";
import type { OverlayShape } from "../tools/tool.ts";
import type { Camera, Palette } from "../view/view-store.ts";

export interface SheetState {
  readonly site: Site;
  /** Differs once another site is put on the sheet: nothing of the one before is kept then. */
  readonly opening: number;
  /** The newest report about the site on the sheet; null until the first has come. */
  readonly report: Report | null;
  readonly routesPending: boolean;
  readonly isDragging: boolean;
  /** A tool that draws is in hand. */
  readonly isDrawing: boolean;
  /** The view is being moved: lettering is not placed anew. */
  readonly isMoving: boolean;
  readonly isSnapping: boolean;
  readonly part: PartId | null;
  /** Parts whose geometry is not drawn. */
  readonly hiddenParts: readonly PartId[];
  readonly finding: string | null;
  readonly highlight: TakeoffRun | null;
  readonly selection: readonly string[];
  readonly hovered: string | null;
  readonly palette: Palette;
  readonly camera: Camera;
  /** Size of the view, CSS pixels, and device pixels to one of them. */
  readonly width: number;
  readonly height: number;
  readonly pixelRatio: number;
  /** What the tool in hand shows. */
  readonly overlay: readonly OverlayShape[];
}

/** What the stores do not know. */
export type Screen = Pick<SheetState, "isMoving" | "width" | "height" | "pixelRatio" | "overlay">;

export class SheetStateReader {
  readonly #editor: Pick<Editor, "document" | "view" | "live">;

  constructor(editor: Pick<Editor, "document" | "view" | "live">) {
    this.#editor = editor;
  }

  read(screen: Screen): SheetState {
    const { shown, gesture, opened } = this.#editor.document.getState();
    const { part, hiddenParts, finding, highlight, selection, hovered, palette, camera, tool, snapping } =
      this.#editor.view.getState();
    const { report, reportRevision, routesPending } = this.#editor.live.getState();
    return {
      ...screen,
      site: shown,
      opening: opened,
      // Reports about the site before say nothing about this one.
      report: report && reportRevision >= opened ? report : null,
      routesPending,
      isDragging: gesture !== null,
      isDrawing: tool !== "select" && tool !== "pan",
      isSnapping: snapping,
      part,
      hiddenParts,
      finding,
      highlight,
      selection,
      hovered,
      palette,
      camera,
    };
  }
}
