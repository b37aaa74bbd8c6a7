/** What the tool host shows, works with, and is told by the sheet on the screen. */
import type { Point } from "../../geometry/types.ts";
import type { Report, TieReport } from "../../rules/report.ts";
import type { DocumentStore } from "../site-document/store.ts";
import type { ViewStore } from "../view/view-store.ts";
import type { TakeBack } from "./take-back.ts";
import type { Entry } from "./tool.ts";
import type { Texts } from "./typed-entry.ts";

export interface HostState {
  readonly entry: Entry | null;
  /** What would be taken back of what is being drawn; null: nothing. */
  readonly takesBack: TakeBack | null;
  readonly texts: Texts;
  readonly problems: Texts;
  /** Why Enter could not place what was typed. */
  readonly refusal: string | null;
  /** Grows when a key typed on the sheet belongs into the first field. */
  readonly focusRequests: number;
  readonly offeredTie: TieReport | null;
  readonly announcement: string;
}

export const AT_FIRST: HostState = {
  entry: null,
  takesBack: null,
  texts: {},
  problems: {},
  refusal: null,
  focusRequests: 0,
  offeredTie: null,
  announcement: "",
};

export interface HostPorts {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly live: { getState(): { readonly report: Report | null } };
}

/** What the sheet on the screen tells the host. */
export interface HostSheet {
  /** Something of the overlay has changed. */
  changed(): void;
  findingAt(at: Point, slack: number): string | null;
  /** Brings a place into view that keys have moved to. */
  reveal(at: Point): void;
  /** The middle of what nothing lies over, site inches; null where the whole view is free. */
  middle?(): Point | null;
}

/** While no sheet is on the screen. */
export const NO_SHEET: HostSheet = { changed() {}, findingAt: () => null, reveal() {} };
