/** What the eye is led to, and what nothing may hide. Distances are arithmetic, the rest is common practice, no source. */
import { describe, expect, it } from "vitest";
import { inkShape } from "../../../app/drawing/ink.ts";
import { markDrawing } from "../../../app/drawing/mark-shapes.ts";
import { planScene } from "../../../app/drawing/plan-scene.ts";
import type { Item } from "../../../app/drawing/scene.ts";
import { SYMBOLS } from "../../../app/drawing/symbols.ts";
import { itemPoints } from "../../../app/drawing/text-width.ts";
import { drawScaleBar } from "../../../app/drawing/title-block.ts";
import type { Point } from "../../../geometry/types.ts";
import { DRAWN, siteOf } from "./drawn-sites.ts";

const box = (x: number, y: number, width: number, height: number) => ({
  vertices: [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ],
  closed: true,
});
const POOL = { id: "pool-1", kind: "pool", outline: box(0, 0, 384, 192), body: "pool", shell: "sprayed-concrete" };

describe("a finding of the perimeter", () => {
  // The west half lies on a deck, the rest on bare ground; the perimeter reaches 36 in. out.
  const { site, report } = siteOf([
    { id: "deck", kind: "surface", outline: box(-100, -100, 292, 400), material: "concrete" },
    POOL,
  ]);
  const boundsOf = (element: string | null) => {
    const finding = report.findings.find((one) => one.rule === "perimeter-surfaces" && one.element === element);
    const scene = planScene(site, report, { focus: finding?.id ?? "" });
    const shape = scene.layers
      .find(({ name }) => name === "focus")
      ?.items.find((item) => item.kind === "shape" && item.role === "focus");
    if (shape?.kind !== "shape") throw new Error(`nothing is led to the eye for ${element}`);
    const points = shape.steps.flatMap((step) => (step.step === "close" ? [] : [step.to]));
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map(Math.round);
  };

  it("leads the eye to the bare ground next to the water", () => {
    expect(boundsOf(null)).toEqual([192, -36, 420, 228]);
  });

  it("leads the eye to the part of a deck next to the water", () => {
    expect(boundsOf("deck")).toEqual([-36, -36, 192, 228]);
  });
});

describe("a finding of something drawn as a symbol", () => {
  it("keeps the symbol strong where no line was measured, and the ties where they are meant", () => {
    const { site, report } = siteOf([
      { ...POOL, steel: "bare" },
      { id: "lamp", kind: "underwater-light", at: [384, 96], pool: "pool-1", formingShell: "metal" },
    ]);
    const focusOf = (rule: string) => {
      const id = report.findings.find((one) => one.rule === rule)?.id ?? "";
      const focus = planScene(site, report, { focus: id }).layers.find(({ name }) => name === "focus");
      return (focus?.items ?? []).flatMap((item) => (item.kind === "symbol" ? [item.symbol] : []));
    };
    expect(focusOf("underwater-lights")).toContain("underwater-light");
    expect(focusOf("tie-spacing").filter((symbol) => symbol === "tie-needed")).toHaveLength(report.ties.length);
    expect(report.ties.length).toBeGreaterThan(0);
  });
});

describe("the numbers of findings", () => {
  it("never lie on a tie or a connection, on any demo site at any scale", () => {
    for (const { name, site, report } of DRAWN) {
      for (const pointsPerInch of [0.4, 0.75, 1.6]) {
        const items = planScene(site, report, { pointsPerInch }).layers.flatMap((layer): Item[] => [...layer.items]);
        const ties = items.filter((item) => item.kind === "symbol" && /^tie|^connection/.test(item.symbol));
        for (const mark of items) {
          if (mark.kind !== "mark") continue;
          const { width, height } = markDrawing(mark.outcome, String(mark.number));
          const hidden = ties.filter((tie) => {
            if (tie.kind !== "symbol") return false;
            const { reach } = SYMBOLS[tie.symbol];
            const [dx, dy] = [0, 1].map((i) => Math.abs((mark.at[i] ?? 0) - (tie.at[i] ?? 0)) * pointsPerInch);
            return (dx ?? 0) < width / 2 + reach && (dy ?? 0) < height / 2 + reach;
          });
          expect([name, pointsPerInch, mark.number, hidden]).toEqual([name, pointsPerInch, mark.number, []]);
        }
      }
    }
  });
});

describe("the scale bar", () => {
  const lastFigure = (pointsPerInch: number, units: "ft-in" | "m") => {
    const texts = drawScaleBar([0, 0], pointsPerInch, units, 128).flatMap((item) =>
      item.kind === "text" ? [item] : [],
    );
    return texts.at(-1);
  };

  it("goes on in inches and centimeters where a foot is longer than the room for it", () => {
    // 128 points of room: 4 parts of 3 in. take 96 points at 8 points to an inch; of 6 in. they would take 192.
    expect(lastFigure(8, "ft-in")).toMatchObject({ text: "12 in", at: [96, expect.any(Number)] });
    expect(lastFigure(40, "ft-in")).toMatchObject({ text: "2 in" });
    expect(lastFigure(0.75, "ft-in")).toMatchObject({ text: "8 ft" });
    expect(lastFigure(8, "m")).toMatchObject({ text: "40 cm" });
  });

  it("is never longer than its room, at any scale that the sheet is shown in", () => {
    for (const units of ["ft-in", "m"] as const) {
      for (let scale = 0.005; scale <= 60; scale *= 1.25) {
        expect(lastFigure(scale / 1.5, units)?.at[0] ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(128);
      }
    }
  });
});

describe("the measured figure", () => {
  it("is crossed by no line of what is in focus, on any demo site", () => {
    let [figures, crossed] = [0, 0];
    for (const { site, report } of DRAWN) {
      for (const { id, element, witness } of report.findings) {
        if (element === null || witness.length < 2) continue;
        const scene = planScene(site, report, { focus: id, pointsPerInch: 0.75, withoutLettering: true });
        const items = scene.layers.find(({ name }) => name === "focus")?.items ?? [];
        const figure = items.find((item) => item.kind === "text");
        if (figure?.kind !== "text") throw new Error(`no figure for ${id}`);
        figures += 1;
        const [x, y] = [figure.at[0] * 0.75, figure.at[1] * 0.75 + 4];
        const half = itemPoints(figure) / 2;
        let isCrossed = false;
        const ink = {
          addInk(line: readonly Point[]) {
            for (let i = 1; i < line.length; i++) {
              const [[ax = 0, ay = 0] = [], [bx = 0, by = 0] = []] = [line[i - 1], line[i]];
              const count = Math.ceil(Math.hypot(bx - ax, by - ay));
              for (let k = 0; k <= count; k++) {
                const t = k / Math.max(1, count);
                const [px, py] = [ax + (bx - ax) * t, ay + (by - ay) * t];
                if (Math.abs(px - x) < half && Math.abs(py - y) < 6) isCrossed = true;
              }
            }
          },
        };
        for (const item of items) if (item.kind === "shape") inkShape(item, ink, ([a, b]) => [a * 0.75, b * 0.75]);
        if (isCrossed) crossed += 1;
      }
    }
    expect(figures).toBeGreaterThan(100);
    expect(crossed).toBe(0);
  });
});

describe("a clearance in space", () => {
  const textsOf = (y: number) => {
    const { site, report } = siteOf([
      { ...POOL, waterLevel: 0 },
      {
        id: "wire",
        kind: "overhead-line",
        class: "insulated-750",
        sag: 0,
        path: {
          vertices: [
            [-600, y, 144],
            [900, y, 144],
          ],
          closed: false,
        },
      },
    ]);
    const id = report.findings.find(({ rule }) => rule === "overhead-clearance")?.id ?? "";
    const items = planScene(site, report, { focus: id }).layers.flatMap((layer) => layer.items);
    return items.flatMap((item) => (item.kind === "text" && item.findings?.includes(id) ? [item.text] : []));
  };

  // Arithmetic: 5 ft out and 12 ft up are 13 ft.
  it("is told itself, with how far it goes across and up, and not by its line on the plan alone", () => {
    expect(textsOf(-60)).toEqual(expect.arrayContaining([`13' 0" in space`, `5' 0" across, 12' 0" up`]));
    expect(textsOf(-60)).not.toContain(`5' 0"`);
  });

  it("straight above the water says so", () => {
    expect(textsOf(96)).toEqual(expect.arrayContaining([`12' 0" in space`, "straight up"]));
  });
});
