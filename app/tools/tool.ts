/** What a tool is: a small state machine over pointer samples and keys, free of the canvas and of React. */
import type { Point } from "../../geometry/types.ts";
import type { DocumentStore } from "../site-document/store.ts";
import type { ViewStore } from "../view/view-store.ts";

export interface Sample {
  /** Site inches, as pointed. */
  readonly at: Point;
  readonly shift: boolean;
  /** Holds snapping off. */
  readonly alt: boolean;
  /** Inches of the site that count as "on it" for this kind of pointer. */
  readonly slack: number;
}

/** What a tool draws over the plan. */
export type Overlay =
  | {
      readonly kind: "line";
      readonly points: readonly Point[];
      readonly closed: boolean;
      readonly style: "ghost" | "chosen" | "box" | "guide";
    }
  | { readonly kind: "handle"; readonly at: Point; readonly shape: "corner" | "middle"; readonly strong: boolean }
  | { readonly kind: "label"; readonly at: Point; readonly text: string };

/** A field of the entry bar that takes a typed length or direction. */
export interface EntryField {
  readonly name: string;
  readonly label: string;
  readonly type: "length" | "bearing";
  /** What the pointer says now, in the document's words. */
  readonly shown: string;
}

export interface ToolPorts {
  readonly document: DocumentStore;
  readonly view: ViewStore;
}

export interface Tool {
  readonly hint: string;
  down(sample: Sample): void;
  move(sample: Sample): void;
  up(sample: Sample): void;
  doubleClick(sample: Sample): void;
  /** True when the key was used. */
  key(key: string): boolean;
  /** Gives up what was begun; false when nothing was. */
  cancel(): boolean;
  overlay(): readonly Overlay[];
  fields(): readonly EntryField[];
  /** Takes what was typed, as texts by field name. Returns why it cannot, or null. */
  enter(typed: Readonly<Record<string, string>>): string | null;
}
