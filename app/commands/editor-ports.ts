/** What commands need of the editor, so that they can be run and tested without a page. */
import type { Report } from "../../rules/report.ts";
import type { Clipboard } from "../clipboard/clipboard.ts";
import type { Files } from "../files/files.ts";
import type { DocumentStore } from "../site-document/store.ts";
import type { ViewStore } from "../view/view-store.ts";

/** The sheet on the screen; null while none is mounted. */
export interface CanvasPort {
  /** Shows the whole site. */
  fit(): void;
  /** Larger (above 1) or smaller about the middle of the view. */
  zoomBy(factor: number): void;
  /** Moves the view by screen pixels: positive dx shows what lies to the right, positive dy what lies below. */
  panBy(dx: number, dy: number): void;
  /** Brings elements into the part of the sheet that nothing lies over. */
  showElements(ids: readonly string[]): void;
  /** Gives up what a tool has begun; false when nothing was begun. */
  cancel(): boolean;
  /** What of the drawing under way would be taken back, as "Take back the last corner"; null: nothing is being drawn. */
  takesBack(): string | null;
  /** Takes it back. */
  takeBack(): void;
}

/** What opens over the sheet. */
export type DialogName = "commands" | "help" | "gallery" | "print" | "steps" | "taping" | "underlay";

export interface EditorPorts {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly files: Files;
  readonly clipboard: Clipboard;
  readonly live: { getState(): { readonly report: Report | null } };
  /** Set by the sheet when it is mounted. */
  readonly canvas: CanvasPort | null;
  openDialog(name: DialogName): void;
  print(): void;
  /** Begins the walk round the program, on the first demo. */
  startWalk(): unknown;
  /** Puts the focus into a part of the page. */
  focusPart(which: "details" | "next" | "previous"): void;
}
