/**
 * The part of the sheet that nothing lies over, and how far the view has to move until what is looked at lies in it. On
 * narrow screens the columns lie over the sheet: a finding that is chosen there would else be shown beneath its own words.
 */
import { boundsOfPoints, boundsUnion } from "../../geometry/points.ts";
import type { Bounds, Point } from "../../geometry/types.ts";
import type { Finding } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import { elementBounds } from "../drawing/element-bounds.ts";
import { type ScreenView, toScreen } from "./screen-view.ts";

/** A part of the view in pixels, y down: min is the upper left corner. */
export type ScreenBox = Bounds;

/** Room kept round what is shown, pixels. */
const MARGIN = 40;

/**
 * What is left of a view when the larger of the parts beside a panel is taken, panel after panel, the largest first: a bar
 * above a panel must not lead beneath that panel. What has no size covers nothing.
 */
export function freeOf(width: number, height: number, panels: readonly ScreenBox[]): ScreenBox {
  let free: ScreenBox = { minX: 0, minY: 0, maxX: width, maxY: height };
  const covering = panels.filter((panel) => sizeOf(panel) > 0).sort((one, other) => sizeOf(other) - sizeOf(one));
  for (const panel of covering) {
    const isApart =
      panel.minX >= free.maxX || panel.maxX <= free.minX || panel.minY >= free.maxY || panel.maxY <= free.minY;
    if (isApart) continue;
    const parts: readonly ScreenBox[] = [
      { ...free, maxX: panel.minX },
      { ...free, minX: panel.maxX },
      { ...free, maxY: panel.minY },
      { ...free, minY: panel.maxY },
    ];
    free = parts.reduce((best, part) => (sizeOf(part) > sizeOf(best) ? part : best));
  }
  return free;
}

function sizeOf({ minX, minY, maxX, maxY }: ScreenBox): number {
  return Math.max(0, maxX - minX) * Math.max(0, maxY - minY);
}

/** Pixels by which the view moves (as for panning: positive shows what lies to the right and below). */
export function shiftInto(view: ScreenView, bounds: Bounds, free: ScreenBox): Point {
  const [left, top] = toScreen(view, [bounds.minX, bounds.maxY]);
  const [right, bottom] = toScreen(view, [bounds.maxX, bounds.minY]);
  return [along(left, right, free.minX, free.maxX), along(top, bottom, free.minY, free.maxY)];
}

function along(from: number, to: number, low: number, high: number): number {
  const room = Math.min(MARGIN, (high - low) / 4);
  // Too long for the room: its middle comes to the middle.
  if (to - from > high - low - 2 * room) {
    return to <= low + room || from >= high - room ? (from + to) / 2 - (low + high) / 2 : 0;
  }
  if (from < low + room) return from - (low + room);
  return to > high - room ? to - (high - room) : 0;
}

/** What a finding is about: the line that was measured and its element; null for one that has no place. */
export function boundsOfFinding(finding: Finding, site: Site): Bounds | null {
  const element = site.elements.find(({ id }) => id === (finding.element ?? finding.body));
  const box = element ? elementBounds(element) : null;
  const parts = [
    ...(finding.witness.length > 0 ? [boundsOfPoints(finding.witness)] : []),
    ...(box && (finding.witness.length === 0 || finding.element !== null) ? [box] : []),
  ];
  return parts.length === 0 ? null : boundsUnion(parts);
}

/** The panels that lie over a sheet's box now, in pixels of the box. A panel on its way in counts where it comes to rest. */
export function panelsOver(box: HTMLElement): ScreenBox[] {
  const page = box.ownerDocument;
  const { left, top } = box.getBoundingClientRect();
  return [...page.querySelectorAll<HTMLElement>("[data-over-sheet]")].flatMap((panel) => {
    const { position, visibility } = page.defaultView?.getComputedStyle(panel) ?? {};
    if (position !== "absolute" || visibility !== "visible") return [];
    const frame = panel.offsetParent?.getBoundingClientRect() ?? { left: 0, top: 0 };
    const minX = frame.left + panel.offsetLeft - left;
    const minY = frame.top + panel.offsetTop - top;
    return [{ minX, minY, maxX: minX + panel.offsetWidth, maxY: minY + panel.offsetHeight }];
  });
}
