/** The letters along lines overhead (OH) and runs underground (UG), where nothing else stands. */
import { pathFrom } from "../../geometry/outline.ts";
import type { Path, Point } from "../../geometry/types.ts";
import type { KnownElement } from "../../rules/site/elements.ts";
import { isKnown } from "./drafting.ts";
import { marksAlong } from "./ground-layers.ts";
import type { Lettering } from "./lettering.ts";
import { readable } from "./part-layers.ts";

/** Paper from one pair of letters to the next, points. */
const STEP = 120;
/** Places tried for each, along the line. */
const TRIES = 6;
const LETTERS = { "overhead-line": "OH", "underground-run": "UG" } as const;

export function drawLineLetters(lettering: Lettering): void {
  for (const element of lettering.drafting.site.elements) {
    if (!isKnown(element)) continue;
    const path = linePath(element);
    if (path !== null) drawLetters(path, element, lettering);
  }
}

function linePath(element: KnownElement): Path | null {
  if (element.kind === "underground-run") return pathFrom(element.path);
  if (element.kind !== "overhead-line") return null;
  return pathFrom({ closed: false, vertices: element.path.vertices.map(([x, y]): Point => [x, y]) });
}

/** One pair of letters to each stretch of the line, at the first of several places that is free. */
function drawLetters(path: Path, element: KnownElement, { drafting, placer, toPaper }: Lettering): void {
  const places = marksAlong(path, drafting.inches(STEP / TRIES));
  for (let i = 0; i < places.length; i += TRIES) {
    const stretch = places.slice(i, i + TRIES);
    const middle = stretch.length / 2;
    const byMiddle = stretch
      .map((place, k) => ({ place, off: Math.abs(k + 0.5 - middle) }))
      .sort((a, b) => a.off - b.off);
    const center = placer.placeAmong(
      byMiddle.map(({ place }) => toPaper(place.at)),
      10,
      8,
    );
    const found = byMiddle.find(({ place }) => center !== null && samePlace(toPaper(place.at), center));
    if (!found) continue;
    const turn = readable(found.place.turn);
    const angle = (turn * Math.PI) / 180;
    const sink = drafting.inches(2.1);
    drafting.add("names", {
      kind: "text",
      at: [found.place.at[0] + Math.sin(angle) * sink, found.place.at[1] - Math.cos(angle) * sink],
      text: LETTERS[element.kind as keyof typeof LETTERS],
      size: "small",
      role: "faint",
      anchor: "middle",
      turn,
      plate: true,
      element: element.id,
    });
  }
}

function samePlace(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
