/** What a tool is: a small state machine over pointer, keys and typed measurements, free of the canvas and of React. */
import type { Edge, Point } from "../../geometry/types.ts";
import type { Report, TieReport } from "../../rules/report.ts";
import type { Kind } from "../../rules/site/elements.ts";
import type { Units } from "../../rules/words/lengths.ts";
import type { DocumentStore } from "../site-document/store.ts";
import type { SnapLine, Snapped } from "../snapping/snap.ts";
import type { ToolId, ViewStore } from "../view/view-store.ts";
import type { SideRule } from "./side-shape.ts";
import type { TakeBack } from "./take-back.ts";

/** A pointer's place and what is held down with it. */
export interface Pointer {
  /** Site inches, as pointed. */
  readonly at: Point;
  readonly shift: boolean;
  /** Ctrl, or Cmd on a Mac. */
  readonly mod: boolean;
  /** Holds snapping off. */
  readonly alt: boolean;
  /** A finger is broader than a mouse or pen. */
  readonly isTouch: boolean;
  /** The second press of two in quick succession at one place. */
  readonly isDouble: boolean;
  /** Moved by keys: the place is meant exactly. */
  readonly isCrosshair: boolean;
}

export interface Key {
  readonly key: string;
  readonly shift: boolean;
}

/** What a tool draws over the plan. */
export type OverlayShape =
  | { readonly kind: "edges"; readonly edges: readonly Edge[]; readonly look: "ghost" | "closing" | "guide" | "limit" }
  | { readonly kind: "box"; readonly from: Point; readonly to: Point; readonly isTouching: boolean }
  | { readonly kind: "handle"; readonly at: Point; readonly look: "corner" | "middle" | "placed" | "active" }
  | { readonly kind: "cursor"; readonly at: Point; readonly isSnapped: boolean }
  /** The measure of an edge being drawn, beside its middle. */
  | { readonly kind: "measure"; readonly edge: Edge; readonly text: string }
  /** Words beside the pointer. */
  | { readonly kind: "words"; readonly at: Point; readonly lines: readonly string[]; readonly isProblem?: boolean };

/** A field of the entry bar. */
export interface EntryField {
  readonly name: string;
  readonly label: string;
  readonly type: "length" | "level" | "bearing" | "angle";
  /** What the pointer says now, in words that could be typed. */
  readonly shown: string;
  /** One sentence on what is measured, where the label does not say it all. */
  readonly help?: string;
}

/** A button of the entry bar: it presses a key on the tool in hand. */
export interface EntryButton {
  readonly key: string;
  readonly label: string;
  readonly hint: string;
  readonly isPressed?: boolean;
}

/** What the entry bar offers at this moment. */
export interface Entry {
  readonly fields: readonly EntryField[];
  /** Says what Enter does with typed values: "Place the corner". */
  readonly action: string;
  /** How the next side is drawn; absent or null where the drawing has no arcs. */
  readonly side?: SideRule | null;
  /** What else can be done here, each by the key that it stands for. */
  readonly buttons?: readonly EntryButton[];
  /** What ends the drawing here, as "Close the outline"; null while there is not enough. */
  readonly finish: string | null;
}

/** Typed values by field name: inches or degrees. Only fields in which something is typed. */
export type TypedValues = Readonly<Record<string, number>>;

/** What tools work with. */
export interface Desk {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  /** The newest report; null before the first. */
  report(): Report | null;
  /** Site inches to a screen pixel. */
  pixel(): number;
  /** Site inches within which something counts as touched by this pointer. */
  slack(pointer: Pointer): number;
  units(): Units;
  /** The place that is meant by a pointer. */
  snap(pointer: Pointer, options?: SnapOptions): Snapped;
  /** What is typed into the entry bar and can be read. */
  typed(): TypedValues;
  /** Empties the entry bar: what was typed has been placed. */
  clearTyped(): void;
  /** The middle of the view, on the grid. */
  middle(): Point;
  /** Keys go on from here. */
  crosshairTo(at: Point): void;
  /** The finding whose number stands at a place of the plan. */
  findingAt(at: Point, slack: number): string | null;
  /** Offers to record a proposed tie that was touched; null withdraws the offer. */
  offerTie(tie: TieReport | null): void;
  /** Selects what was drawn and goes back to selecting. */
  finish(id: string): void;
  /** What the entry bar and the sheet show is worked out anew: the tool has changed by itself. */
  renew(): void;
  /** Brings a place into view. */
  reveal(at: Point): void;
  /** A problem that a person has to read. */
  complain(reason: string): void;
  /** For those who do not see the sheet. */
  announce(words: string): void;
}

export interface SnapOptions {
  readonly lines?: readonly SnapLine[];
  /** Where the grid's steps are counted from. */
  readonly origin?: Point;
  /** Middles of sides do not draw it. */
  readonly withoutMiddles?: boolean;
  /** Where the side being drawn comes from: places square to, in line with or touching something are looked for. */
  readonly from?: Point;
  /** Sides already drawn, to be parallel or square to. */
  readonly sides?: readonly Edge[];
  /** What is being placed: the distances from the water that matter to it. */
  readonly kind?: Kind;
  /** Ids that are being drawn or moved themselves. */
  readonly without?: readonly string[];
}

export interface Tool {
  readonly id: ToolId;
  /** False while its code is on its way: nothing is given to it until it says by `renew` that it is there. */
  isReady?(): boolean;
  pointerDown(pointer: Pointer): void;
  pointerMove(pointer: Pointer): void;
  pointerUp(pointer: Pointer): void;
  /** The pointer has left the sheet. */
  pointerLeave?(): void;
  /** The pointer went elsewhere, or a second finger came: takes back what the press began. */
  abandonPress(): void;
  /** True when the key was used. */
  key(key: Key): boolean;
  /** Gives up what was begun; false when nothing was. */
  cancel(): boolean;
  /** What has been drawn and not ended, where that is worth keeping; null: nothing. */
  begun?(): unknown;
  /** What Backspace takes back now, as a button says it; absent or null: nothing. */
  takesBack?(): TakeBack | null;
  /** Goes on with what `begun` of the same tool gave. */
  takeUp?(begun: unknown): void;
  entry(): Entry | null;
  /** A text in the entry bar has changed: what is previewed follows it. */
  retyped?(): void;
  /** Places what was typed. Returns why it cannot, or null. */
  typed(values: TypedValues): string | null;
  overlay(): readonly OverlayShape[];
  /** The corner or side of the selected element that keys act on. */
  place?(): { readonly kind: "corner" | "middle" } | null;
  cursor(): string;
}
