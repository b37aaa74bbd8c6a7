/** How the sheet is looked at: never part of the document, never in its history. */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Edge, Point } from "../../geometry/types.ts";
import type { PartId } from "../../rules/catalogue/rule.ts";
import type { TakeoffRun } from "../drawing/highlight.ts";
import type { PoolShapeId } from "../pool-shapes/shape-names.ts";

/** Where the paper lies under the glass: site inches at the center of the view, and screen pixels to an inch. */
export interface Camera {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** `select` is the resting tool; every other draws. Names of drawing tools are the kinds they draw, with a variant where a kind is drawn in several ways. */
export type ToolId =
  | "select"
  | "pan"
  | "pool-rectangle"
  | "pool-outline"
  | "pool-shape"
  | "pool-curves"
  | "surface"
  | "wall"
  | "building"
  | "opening"
  | "fence"
  | "structure"
  | "metal-point"
  | "metal-line"
  | "metal-area"
  | "equipment"
  | "underwater-light"
  | "device"
  | "overhead-line"
  | "underground-run"
  | "water-bond"
  | "inset"
  | "keep-out"
  | "tie"
  | "conductor"
  | WorkingTool;

/** Tools that draw no element of their own. */
export type WorkingTool = "measure" | "dimension" | "split" | "offset" | "mirror";

export type Palette = "sheet" | "projector";

/** What the right-hand column shows. */
export type Panel = "findings" | "element" | "copper" | "outline" | "code";

/** Forms for arranging what is selected by typed figures. */
export type ArrangeForm = "move-by" | "turn" | "mirror" | "repeat";

/** On a narrow screen the columns lie over the sheet, one at a time. */
export type Column = "parts" | "details";

/** A pool that is being given other dimensions: what it is drawn by now. */
export interface PoolReshaping {
  readonly id: string;
  readonly shape: PoolShapeId;
  /** Inches or degrees, by the names of the shape's fields. */
  readonly sizes: Readonly<Record<string, number>>;
  /** Where its middle lies, how many degrees it is turned counter-clockwise, and whether it is turned over. */
  readonly at: readonly [number, number];
  readonly turn: number;
  readonly isMirrored: boolean;
  /** Number of the corner that the shape begins with, and whether the outline runs clockwise. */
  readonly first: number;
  readonly isClockwise: boolean;
}

/** Where an element would stand: its line or outline, or its position. */
export type Foreseen = { readonly edges: readonly Edge[] } | { readonly at: Point };

const NONE: readonly Foreseen[] = [];

export interface Notice {
  readonly text: string;
  readonly kind: "plain" | "problem";
  readonly at: number;
  /** Ids of commands that lead out of it, as buttons. */
  readonly ways: readonly string[];
}

export interface ViewState {
  readonly camera: Camera;
  readonly selection: readonly string[];
  /** The dimension that is picked on the sheet, by its id; nothing is selected beside it. */
  readonly dimension: string | null;
  readonly hovered: string | null;
  readonly tool: ToolId;
  /** The shape of pool that is placed by its dimensions. */
  readonly shape: PoolShapeId;
  /** The pool whose dimensions are being changed with the tool in hand. */
  readonly reshaping: PoolReshaping | null;
  /** The part of the article that is chosen: only its geometry stays on the sheet. */
  readonly part: PartId | null;
  /** Parts whose geometry is not drawn; it is judged all the same. */
  readonly hiddenParts: readonly PartId[];
  /** The form that is open beside the facts of what is selected. */
  readonly arranging: ArrangeForm | null;
  /** What the figures in that form would make, shown on the sheet before it is done. */
  readonly foreseen: readonly Foreseen[];
  /** Grows when the outline's search is asked for; nothing again once it has the focus. */
  readonly findRequests: number;
  /** The finding that is chosen: the rest dims, its witness shows. */
  readonly finding: string | null;
  /** Which findings are listed and stepped through: those that still ask for something, or all. */
  readonly sift: "open" | "all";
  /** The line of the takeoff whose pieces are lit up on the sheet. */
  readonly highlight: TakeoffRun | null;
  readonly panel: Panel;
  /** The column that lies over the sheet where there is no room beside it. */
  readonly column: Column | null;
  readonly palette: Palette;
  readonly snapping: boolean;
  /** What is picked is added to the selection, as with Shift: for hands without a keyboard. */
  readonly adding: boolean;
  /** Spoken politely to assistive technology and shown for a while. */
  readonly notice: Notice | null;

  setCamera(camera: Camera): void;
  select(ids: readonly string[]): void;
  pickDimension(id: string | null): void;
  hover(id: string | null): void;
  setTool(tool: ToolId): void;
  setShape(shape: PoolShapeId): void;
  /** Takes the tool that gives a pool other dimensions. */
  reshapePool(reshaping: PoolReshaping): void;
  choosePart(part: PartId | null): void;
  setHiddenParts(parts: readonly PartId[]): void;
  setArranging(form: ArrangeForm | null): void;
  foresee(foreseen: readonly Foreseen[]): void;
  askToFind(): void;
  chooseFinding(finding: string | null): void;
  setSift(sift: ViewState["sift"]): void;
  setHighlight(highlight: TakeoffRun | null): void;
  setPanel(panel: Panel): void;
  showColumn(column: Column | null): void;
  setPalette(palette: Palette): void;
  setSnapping(on: boolean): void;
  setAdding(on: boolean): void;
  say(text: string, kind?: Notice["kind"], ways?: Notice["ways"]): void;
  unsay(): void;
}

export type ViewStore = StoreApi<ViewState>;

/** What of the view is about the site on the sheet: so it is for one that was just opened. */
export const FRESH_LOOK = {
  selection: [],
  dimension: null,
  hovered: null,
  tool: "select",
  adding: false,
  reshaping: null,
  part: null,
  hiddenParts: [],
  arranging: null,
  foreseen: NONE,
  finding: null,
  highlight: null,
} as const satisfies Partial<ViewState>;

export function createViewStore(): ViewStore {
  return createStore<ViewState>((set) => ({
    camera: { x: 0, y: 0, scale: 1 },
    selection: [],
    dimension: null,
    hovered: null,
    tool: "select",
    shape: "rectangle",
    reshaping: null,
    part: null,
    hiddenParts: [],
    arranging: null,
    foreseen: NONE,
    findRequests: 0,
    finding: null,
    sift: "open",
    highlight: null,
    panel: "findings",
    column: null,
    palette: "sheet",
    snapping: true,
    adding: false,
    notice: null,
    setCamera: (camera) => set({ camera }),
    select: (selection) => set({ selection, dimension: null }),
    pickDimension: (dimension) => set(dimension === null ? { dimension } : { dimension, selection: [] }),
    hover: (hovered) => set((state) => (state.hovered === hovered ? state : { hovered })),
    // What is drawn with lies on the sheet: a column over it would be in the way.
    setTool: (tool) =>
      set({
        tool,
        reshaping: null,
        ...(tool === "select" ? {} : { column: null, adding: false, dimension: null }),
      }),
    setShape: (shape) => set({ shape }),
    reshapePool: (reshaping) =>
      set({ tool: "pool-shape", shape: reshaping.shape, reshaping, column: null, adding: false }),
    choosePart: (part) => set({ part, finding: null, panel: "findings" }),
    setHiddenParts: (hiddenParts) => set({ hiddenParts }),
    setArranging: (arranging) => set({ arranging }),
    foresee: (foreseen) => set((state) => (state.foreseen.length + foreseen.length === 0 ? state : { foreseen })),
    askToFind: () => set(({ findRequests }) => ({ findRequests: findRequests + 1 })),
    chooseFinding: (finding) => set((state) => ({ finding, panel: finding === null ? state.panel : "findings" })),
    setSift: (sift) => set({ sift }),
    setHighlight: (highlight) => set((state) => (state.highlight === highlight ? state : { highlight })),
    // The copper is looked at on the whole plan: a finding in focus would hide it.
    setPanel: (panel) => set({ panel, highlight: null, ...(panel === "copper" ? { finding: null } : {}) }),
    showColumn: (column) => set({ column }),
    setPalette: (palette) => set({ palette }),
    setSnapping: (snapping) => set({ snapping }),
    setAdding: (adding) => set({ adding }),
    say: (text, kind = "plain", ways = []) => set({ notice: { text, kind, at: Date.now(), ways } }),
    unsay: () => set({ notice: null }),
  }));
}
