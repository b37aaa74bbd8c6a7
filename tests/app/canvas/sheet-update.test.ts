import { describe, expect, it } from "vitest";
import type { SheetState } from "../../../app/canvas/sheet-state.ts";
import { sheetUpdate, updatedSheet } from "../../../app/canvas/sheet-update.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { recompute } from "../../../rules/recompute.ts";
import type { Site } from "../../../rules/site/site.ts";

const site = {
  format: "copperband-site",
  version: 1,
  edition: "nec-2020",
  elements: [
    { id: "post-1", kind: "metal", part: "post", shape: { point: [10, 20] } },
    { id: "post-2", kind: "metal", part: "post", shape: { point: [60, 20] } },
    { id: "post-3", kind: "metal", part: "post", shape: { point: [90, 20] } },
  ],
} as unknown as Site;

const state: SheetState = {
  site,
  opening: 1,
  report: null,
  routesPending: true,
  isDragging: false,
  isDrawing: false,
  isMoving: false,
  isSnapping: true,
  part: null,
  hiddenParts: [],
  finding: null,
  highlight: null,
  selection: [],
  hovered: null,
  palette: "sheet",
  camera: { x: 0, y: 0, scale: 1 },
  width: 800,
  height: 600,
  pixelRatio: 1,
  overlay: [],
};

function moved(from: Site): Site {
  const result = moveElements(["post-2"], 6, 0).apply(from);
  if (!result.ok) throw new Error(result.reason);
  return result.site;
}

/** A painter's side: it gets copies, as a worker does. */
function painter() {
  let held: SheetState | null = null;
  let last: SheetState | null = null;
  return (next: SheetState): SheetState => {
    const update = structuredClone(sheetUpdate(last, next));
    last = next;
    held = updatedSheet(held, update);
    return held;
  };
}

describe("the sheet as a painter in a worker gets it", () => {
  it("is the same state, whatever changed from frame to frame", () => {
    const show = painter();
    const site2 = moved(site);
    const frames: SheetState[] = [
      state,
      { ...state, report: recompute(site) },
      { ...state, report: recompute(site2, { withoutRoutes: true }), site: site2, isDragging: true },
      { ...state, camera: { x: 4, y: 5, scale: 2 }, selection: ["post-2"], report: null, opening: 2 },
    ];
    for (const frame of frames) expect(show(frame)).toEqual(frame);
  });

  it("keeps the very elements and findings that did not change", () => {
    const show = painter();
    const first = show({ ...state, report: recompute(site) });
    const second = show({ ...state, report: recompute(site), site: moved(site) });
    expect(second.site.elements[0]).toBe(first.site.elements[0]);
    expect(second.site.elements[1]).not.toBe(first.site.elements[1]);
    expect(second.site.elements[2]).toBe(first.site.elements[2]);
  });

  it("sends nothing of the site and the report while only the view moves", () => {
    const report = recompute(site);
    const update = sheetUpdate({ ...state, report }, { ...state, report, camera: { x: 9, y: 9, scale: 3 } });
    expect(update).toEqual({ look: { camera: { x: 9, y: 9, scale: 3 } } });
  });

  it("refuses a first state that is not whole", () => {
    expect(() => updatedSheet(null, { look: { width: 5 } })).toThrow(/not whole/);
    expect(() =>
      updatedSheet(null, { site: { edit: { head: {}, gone: [], elements: [] } } as never, look: {} }),
    ).toThrow(/before any site/);
  });
});
