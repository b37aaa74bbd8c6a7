// @vitest-environment happy-dom
// Corners as numbers, mounted on a real document. Common practice, no source, unless a line says otherwise.
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Edit } from "../../../app/edits/edit.ts";
import { CornerTable } from "../../../app/panels/corner-table.tsx";
import { concretePool } from "../../../rules/catalogue/common/example-yard.ts";
import type { PoolElement } from "../../../rules/site/elements.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "./panel-bench.tsx";

let page: Bench;
beforeEach(() => {
  const square = {
    vertices: [
      [0, 0],
      [192, 0],
      [192, 192],
      [0, 192],
    ],
    closed: true,
  };
  page = bench(siteOf([concretePool({ id: "pool", outline: square })]));
  show();
});
afterEach(() => page.close());

const pool = () => page.editor.document.getState().shown.elements[0] as PoolElement;
const apply = (edit: Edit) => page.editor.document.getState().edit(edit)?.reason ?? null;
const show = () => page.show(<CornerTable element={pool()} units="ft-in" apply={apply} />);
const cell = (label: string) => {
  const found = page
    .all(".cell")
    .find((one) => one.textContent?.startsWith(label))
    ?.querySelector("input");
  if (!found) throw new Error(`no cell ${label}`);
  return found;
};

describe("the corners of a long outline", () => {
  it("are never out of reach: a page whose last corner goes gives way to the one before", () => {
    const around = Array.from({ length: 41 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 41;
      return [600 * Math.cos(angle), 600 * Math.sin(angle)];
    });
    page.close();
    page = bench(siteOf([concretePool({ id: "pool", outline: { vertices: around, closed: true } })]));
    show();
    page.press(page.button("Corners after"));
    expect(page.all("tbody tr")).toHaveLength(1);
    page.press(page.button("Take away corner 41"));
    show();
    expect(page.all("tbody tr")).toHaveLength(40);
  });
});

describe("the corners of an outline", () => {
  it("bend a side by the depth of its arc (a bulge is twice the depth over the chord: arithmetic)", () => {
    page.type(cell("Bend of the side from corner 2"), "4'");
    page.key(cell("Bend of the side from corner 2"), "Enter");
    expect(pool().outline.vertices[1]).toEqual([192, 0, 0.5]);
    show();
    expect(cell("Bend of the side from corner 2").value).toBe(`4' 0"`);
    page.type(cell("Bend of the side from corner 2"), "-8 ft");
    page.key(cell("Bend of the side from corner 2"), "Enter");
    expect(pool().outline.vertices[1]).toEqual([192, 0, -1]);
  });

  it("straighten a side whose bend is emptied", () => {
    page.type(cell("Bend of the side from corner 1"), "1 ft");
    page.key(cell("Bend of the side from corner 1"), "Enter");
    show();
    page.type(cell("Bend of the side from corner 1"), "");
    page.key(cell("Bend of the side from corner 1"), "Enter");
    expect(pool().outline.vertices[0]).toEqual([0, 0]);
  });

  it("say beside the cell what cannot be drawn, and leave the outline as it was", () => {
    page.type(cell("Corner 3, up"), "-20'");
    page.key(cell("Corner 3, up"), "Enter");
    expect(page.query(".corners .problem").textContent).toContain("cross itself");
    expect(pool().outline.vertices[2]).toEqual([192, 192]);
  });
});
