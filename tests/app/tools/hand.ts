/** A hand at a sheet without a screen: a real document, view and tool host, driven by pointer, keys and typing. */
import { createDocumentStore, type DocumentStore } from "../../../app/site-document/store.ts";
import type { Pointer } from "../../../app/tools/tool.ts";
import { ToolHost } from "../../../app/tools/tool-host.ts";
import { createViewStore, type ToolId, type ViewStore } from "../../../app/view/view-store.ts";
import type { Point } from "../../../geometry/types.ts";
import type { Report } from "../../../rules/report.ts";
import type { KnownElement } from "../../../rules/site/elements.ts";
import type { Site } from "../../../rules/site/site.ts";

export interface Hand {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly host: ToolHost;
  report: Report | null;
  /** Findings whose numbers stand on the sheet, by place. */
  readonly marks: { readonly at: Point; readonly finding: string }[];
  take(tool: ToolId): void;
  move(x: number, y: number, held?: Partial<Pointer>): void;
  down(x: number, y: number, held?: Partial<Pointer>): void;
  up(x: number, y: number, held?: Partial<Pointer>): void;
  click(x: number, y: number, held?: Partial<Pointer>): void;
  /** Down, through the places, up at the last. */
  drag(...places: readonly Point[]): void;
  key(key: string, shift?: boolean): boolean;
  /** Types into the fields of the entry bar, by name, and presses Enter. */
  type(texts: Readonly<Record<string, string>>): boolean;
  element(id: string): KnownElement;
  labels(): string[];
  said(): string | null;
}

/** A deck of 20 by 10 ft with a corner at the origin. */
export const DECK = {
  id: "deck-1",
  kind: "surface",
  material: "concrete",
  outline: {
    vertices: [
      [0, 0],
      [240, 0],
      [240, 120],
      [0, 120],
    ],
    closed: true,
  },
};

export function siteWith(elements: readonly unknown[] = [], more: object = {}): Site {
  return { format: "copperband-site", version: 1, elements, ...more } as unknown as Site;
}

/** A hand at a site, at one pixel to the inch: eight inches are near enough to touch, nine to snap. */
export function handAt(site: Site = siteWith()): Hand {
  const document = createDocumentStore(site, { name: "", saved: null });
  const view = createViewStore();
  const marks: Hand["marks"] = [];
  const hand: { report: Report | null } = { report: null };
  const host = new ToolHost({ document, view, live: { getState: () => ({ report: hand.report }) } });
  host.connect({
    changed() {},
    findingAt: (at, slack) =>
      marks.find((mark) => Math.hypot(mark.at[0] - at[0], mark.at[1] - at[1]) <= slack)?.finding ?? null,
    reveal() {},
  });
  const pointer = (x: number, y: number, held: Partial<Pointer> = {}): Pointer => ({
    at: [x, y],
    shift: false,
    mod: false,
    alt: false,
    isTouch: false,
    isDouble: false,
    isCrosshair: false,
    ...held,
  });
  const self: Hand = Object.assign(hand, {
    document,
    view,
    host,
    marks,
    take: (tool: ToolId) => view.getState().setTool(tool),
    move: (x: number, y: number, held?: Partial<Pointer>) => host.pointerMove(pointer(x, y, held)),
    down: (x: number, y: number, held?: Partial<Pointer>) => host.pointerDown(pointer(x, y, held)),
    up: (x: number, y: number, held?: Partial<Pointer>) => host.pointerUp(pointer(x, y, held)),
    click(x: number, y: number, held?: Partial<Pointer>) {
      host.pointerMove(pointer(x, y, held));
      host.pointerDown(pointer(x, y, held));
      host.pointerUp(pointer(x, y, held));
    },
    drag(...places: readonly Point[]) {
      const [first, ...rest] = places;
      const last = places.at(-1);
      if (!first || !last) throw new Error("a drag needs places");
      host.pointerDown(pointer(...first));
      for (const place of rest) host.pointerMove(pointer(...place));
      host.pointerUp(pointer(...last));
    },
    key: (key: string, shift = false) => host.key({ key, shift }),
    type(texts: Readonly<Record<string, string>>) {
      for (const [field, text] of Object.entries(texts)) host.type(field, text);
      return host.enter();
    },
    element(id: string): KnownElement {
      const found = document.getState().shown.elements.find((element) => element.id === id);
      if (!found) throw new Error(`there is no element "${id}"`);
      return found as KnownElement;
    },
    labels: () =>
      host
        .overlay()
        .flatMap((shape) => (shape.kind === "words" ? shape.lines : shape.kind === "measure" ? [shape.text] : [])),
    said: () => view.getState().notice?.text ?? null,
  });
  return self;
}

/** The corners of an element's own outline or line. */
export function corners(element: KnownElement): readonly (readonly number[])[] {
  const { outline, path, shape } = element as unknown as Readonly<
    Record<string, { vertices: readonly (readonly number[])[] } | undefined>
  >;
  return (outline ?? path ?? shape)?.vertices ?? [];
}
