/** One drawing sheet as a page. */
import { useLayoutEffect, useRef } from "react";
import type { PaletteName } from "../drawing/palette.ts";
import type { Sheet } from "../drawing/sheet.ts";
import { sheetsToSvg } from "../drawing/svg.ts";

interface SheetPageProps {
  readonly sheet: Sheet;
  readonly number: number;
  readonly count: number;
  readonly palette: PaletteName;
}

export function SheetPage({ sheet, number, count, palette }: SheetPageProps) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const svg = sheetsToSvg([sheet], { palette, title: `Sheet ${number} of ${count}` });
    box.current?.replaceChildren(svgElement(svg, `sheet${number}-`));
  }, [sheet, number, count, palette]);
  return <div className="print-page" ref={box} />;
}

/**
 * The drawing as nodes of this page, so that it is set in the page's own type. `prefix` keeps the names of its patterns
 * and clips apart from those of the other sheets on the page.
 */
function svgElement(text: string, prefix: string): Node {
  const parsed = new DOMParser().parseFromString(text, "image/svg+xml");
  const svg = parsed.documentElement;
  if (svg.nodeName !== "svg") throw new Error("The drawing of a sheet is not an SVG document.");
  for (const element of svg.querySelectorAll("[id]")) element.id = prefix + element.id;
  for (const name of ["fill", "clip-path"]) {
    for (const element of svg.querySelectorAll(`[${name}^="url(#"]`)) {
      element.setAttribute(name, (element.getAttribute(name) ?? "").replace("url(#", `url(#${prefix}`));
    }
  }
  // As a label rather than a title: a title would follow the pointer over the whole sheet.
  const title = svg.querySelector("title");
  svg.setAttribute("aria-label", title?.textContent ?? "");
  title?.remove();
  return document.importNode(svg, true);
}
