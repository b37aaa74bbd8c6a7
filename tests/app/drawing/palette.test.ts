// Colors: readable, told apart without color. Sources: WCAG 2.1 (relative luminance, contrast 4.5 to 1 for small type);
// the rule that nothing is told by color alone is the project's art direction.
import { describe, expect, it } from "vitest";
import { HATCHES } from "../../../app/drawing/hatches.ts";
import { markDrawing } from "../../../app/drawing/mark-shapes.ts";
import { PALETTES, type Palette, type Role, type TextRole } from "../../../app/drawing/palette.ts";
import { SYMBOLS } from "../../../app/drawing/symbols.ts";
import { OUTCOMES_WORST_FIRST } from "../../../rules/report.ts";

const palettes = Object.values(PALETTES);

function luminance(color: string): number {
  const parts = [1, 3, 5].map((at) => {
    const share = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * (parts[0] ?? 0) + 0.7152 * (parts[1] ?? 0) + 0.0722 * (parts[2] ?? 0);
}

function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

/** What each color of type is set on. */
function grounds(palette: Palette): [TextRole, string][] {
  const fill = (role: Role) => palette.roles[role].fill ?? palette.paper;
  return [
    ...(["ink", "faint", "copper", "measure"] as const).map((role): [TextRole, string] => [role, palette.paper]),
    ...(["ink", "faint"] as const).map((role): [TextRole, string] => [role, fill("surface")]),
    ["on-water", fill("water")],
    ["on-building", fill("building")],
    ["mark-light", fill("mark-missing")],
    ["mark-light", fill("mark-conflict")],
    ["mark-dark", fill("mark-review")],
    ["mark-copper", fill("mark-bond")],
    ["mark-meets", fill("mark-meets")],
    ["mark-exempt", fill("mark-exempt")],
  ];
}

describe("every palette", () => {
  for (const palette of palettes) {
    it(`sets readable type: ${palette.name}`, () => {
      const weak = grounds(palette).filter(([role, ground]) => contrast(palette.texts[role], ground) < 4.5);
      expect(weak).toEqual([]);
    });

    it(`draws proposed copper broken and recorded copper solid: ${palette.name}`, () => {
      for (const role of ["ring", "grid", "branch", "tie", "link"] as const) {
        expect(palette.roles[`${role}-proposed`].dash?.length).toBeGreaterThan(0);
      }
      for (const role of ["copper-recorded", "grid-recorded", "tail-recorded", "tie-recorded"] as const) {
        expect(palette.roles[role].dash).toBeUndefined();
      }
    });

    it(`makes the inside wall the heaviest line of the building work: ${palette.name}`, () => {
      const weight = (role: Role) => palette.roles[role].weight ?? 0;
      for (const role of ["building", "wall", "fence", "surface", "dimension", "reach"] as const) {
        expect(weight("inside-wall")).toBeGreaterThan(weight(role));
      }
    });
  }

  it("for black and white has no color at all", () => {
    const { roles, texts, hatches, paper } = PALETTES.plain;
    const colors = [
      paper,
      ...Object.values(texts),
      ...Object.values(hatches),
      ...Object.values(roles).flatMap(({ stroke, fill }) => [stroke, fill]),
    ];
    const colored = colors.filter((color) => color !== undefined && !/^#(..)\1\1$/.test(color));
    expect(colored).toEqual([]);
  });
});

describe("without color", () => {
  it("outcomes differ by the shape, the weight or the fill of their mark", () => {
    const figures = OUTCOMES_WORST_FIRST.map((outcome) => {
      const { parts, role } = markDrawing(outcome, "7");
      const { weight, fill } = PALETTES.plain.roles[role];
      return JSON.stringify([parts, weight, fill]);
    });
    expect(new Set(figures).size).toBe(OUTCOMES_WORST_FIRST.length);
  });

  it("materials differ by the figure of their hatch", () => {
    const figures = Object.values(HATCHES).map(({ lines, dots, rings, turn, width }) =>
      JSON.stringify([lines, dots, rings, turn, width]),
    );
    expect(new Set(figures).size).toBe(figures.length);
  });

  it("symbols differ, and stay within the size that labels keep clear of", () => {
    expect(new Set(Object.values(SYMBOLS).map(({ parts }) => JSON.stringify(parts))).size).toBe(
      Object.keys(SYMBOLS).length,
    );
    for (const [name, { parts, reach }] of Object.entries(SYMBOLS)) {
      const extent = Math.max(
        ...parts.flatMap((part) => ("circle" in part ? [part.circle[2]] : part.line.map(Math.abs))),
      );
      expect([name, extent <= reach + 1.2]).toEqual([name, true]);
    }
  });
});
