/** North arrow and scale bar in the lower left corner of the view: the same as on the printed sheet. */
import type { Site } from "../../rules/site/site.ts";
import type { Item } from "../drawing/scene.ts";
import { drawNorth, drawScaleBar } from "../drawing/title-block.ts";
import { type Paint, paintItems } from "./painter.ts";
import { PIXELS_PER_POINT } from "./screen-view.ts";

/** Where they stand, points of paper from the corner: the arrow and its letter have room whichever way north lies. */
const NORTH: readonly [number, number] = [28, 30];
const BAR: readonly [number, number] = [62, 20];
/** Room for the bar, points; narrower views have none for it. */
const BAR_ROOM = 128;
const LEAST_VIEW = 480;
/** Paper under the arrow and under the bar: as far as they go, points from the corner. */
const UNDER_NORTH: readonly [number, number] = [56, 58];
const UNDER_BAR = 30;
const BESIDE_BAR = 12;

/** Paints both; no bar where the steps of a rule do not fit the scale. */
export function paintFurniture(paint: Paint, site: Site): void {
  const { view } = paint;
  if (view.width < LEAST_VIEW) return;
  const pointsPerInch = view.camera.scale / PIXELS_PER_POINT;
  const bar = drawScaleBar([...BAR], pointsPerInch, site.display?.units ?? "ft-in", BAR_ROOM);
  const items: Item[] = drawNorth([...NORTH], site.north ?? 90);
  paintPaper(paint, ...UNDER_NORTH);
  if (rightEnd(bar) - BAR[0] <= BAR_ROOM * 1.25) {
    paintPaper(paint, rightEnd(bar) + BESIDE_BAR, UNDER_BAR, UNDER_NORTH[0]);
    items.push(...bar);
  }
  // A camera over paper: its inches are points, counted from the lower left corner.
  const scale = PIXELS_PER_POINT;
  const camera = { x: view.width / 2 / scale, y: view.height / 2 / scale, scale };
  paintItems({ ...paint, view: { ...view, camera } }, items);
}

/** Paper in the corner, so that what stands there is read over whatever lies under it: points right and up. */
function paintPaper({ context, view, palette, pixelRatio }: Paint, right: number, up: number, from = 0): void {
  const pixels = PIXELS_PER_POINT * pixelRatio;
  context.save();
  context.resetTransform();
  context.globalAlpha = 0.88;
  context.fillStyle = palette.paper;
  context.fillRect(from * pixels, view.height * pixelRatio - up * pixels, (right - from) * pixels, up * pixels);
  context.restore();
}

function rightEnd(items: readonly Item[]): number {
  return Math.max(...items.map((item) => (item.kind === "text" ? item.at[0] : 0)));
}
