/** How site inches lie on the screen: the camera with the size of the view, in CSS pixels, y down. */
import type { Bounds, Point } from "../../geometry/types.ts";
import type { Camera } from "../view/view-store.ts";

export interface ScreenView {
  readonly camera: Camera;
  readonly width: number;
  readonly height: number;
}

/** CSS pixels to a point of paper: type of 7.5 points reads as 11 pixels. */
export const PIXELS_PER_POINT = 1.5;

export function toScreen(view: ScreenView, [x, y]: Point): Point {
  const { camera, width, height } = view;
  return [(x - camera.x) * camera.scale + width / 2, height / 2 - (y - camera.y) * camera.scale];
}

export function toSite(view: ScreenView, [sx, sy]: Point): Point {
  const { camera, width, height } = view;
  return [(sx - width / 2) / camera.scale + camera.x, (height / 2 - sy) / camera.scale + camera.y];
}

/** The part of the site that is in view. */
export function siteBounds(view: ScreenView): Bounds {
  const [minX, maxY] = toSite(view, [0, 0]);
  const [maxX, minY] = toSite(view, [view.width, view.height]);
  return { minX, minY, maxX, maxY };
}

export const SMALLEST_SCALE = 0.005;
export const LARGEST_SCALE = 60;

/** The camera that shows a box with a margin in pixels round it. */
export function fitted(bounds: Bounds, width: number, height: number, margin: number): Camera {
  const across = Math.max(bounds.maxX - bounds.minX, 12);
  const up = Math.max(bounds.maxY - bounds.minY, 12);
  const scale = Math.min((width - 2 * margin) / across, (height - 2 * margin) / up);
  return {
    x: (bounds.minX + bounds.maxX) / 2,
    y: (bounds.minY + bounds.maxY) / 2,
    scale: Math.min(LARGEST_SCALE, Math.max(SMALLEST_SCALE, scale)),
  };
}

/** The camera after zooming by a factor about a place on the screen, which stays where it is. */
export function zoomedAt(view: ScreenView, factor: number, at: Point): Camera {
  const scale = Math.min(LARGEST_SCALE, Math.max(SMALLEST_SCALE, view.camera.scale * factor));
  const [x, y] = toSite(view, at);
  return {
    x: x - (at[0] - view.width / 2) / scale,
    y: y - (view.height / 2 - at[1]) / scale,
    scale,
  };
}
