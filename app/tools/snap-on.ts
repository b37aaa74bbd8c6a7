/** The place that a pointer means on the sheet as it is: snapped to what is drawn there, unless snapping is off or held off. */
import type { DocumentStore } from "../site-document/store.ts";
import { candidatesNear } from "../snapping/candidates.ts";
import { gridStep } from "../snapping/grid.ts";
import { type Snapped, snap, unsnapped } from "../snapping/snap.ts";
import type { ViewStore } from "../view/view-store.ts";
import type { Pointer, SnapOptions } from "./tool.ts";

/** Screen pixels within which a pointer is drawn: by mouse or pen, by finger. */
const SNAP_PIXELS = 9;
const TOUCH_SNAP_PIXELS = 16;

export function snapOn(
  { document, view }: { readonly document: DocumentStore; readonly view: ViewStore },
  pointer: Pointer,
  { lines, origin, without, withoutMiddles }: SnapOptions = {},
): Snapped {
  const { snapping, camera } = view.getState();
  if (pointer.alt || !snapping) return unsnapped(pointer.at);
  const tolerance = (pointer.isTouch ? TOUCH_SNAP_PIXELS : SNAP_PIXELS) / camera.scale;
  const { gesture, shown } = document.getState();
  // What a gesture previews is not snapped to: it is what is being placed.
  const { elements } = gesture?.start ?? shown;
  const { points, edges } = candidatesNear(elements, pointer.at, tolerance, new Set(without));
  return snap(
    pointer.at,
    { points: withoutMiddles ? points.filter(({ isMiddle }) => isMiddle !== true) : points, edges },
    {
      tolerance,
      grid: gridStep(camera.scale, shown.display?.units ?? "ft-in"),
      ...(lines ? { lines } : {}),
      ...(origin ? { origin } : {}),
    },
  );
}
