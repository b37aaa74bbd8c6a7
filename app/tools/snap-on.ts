/** The place that a pointer means on the sheet as it is: snapped to what is drawn there, unless snapping is off or held off. */
import { nearestOnEdge } from "../../geometry/edge.ts";
import type { Point } from "../../geometry/types.ts";
import type { Site } from "../../rules/site/site.ts";
import { hiddenIds } from "../edits/arrangement.ts";
import type { DocumentStore } from "../site-document/store.ts";
import { candidatesNear, cornersInLine } from "../snapping/candidates.ts";
import { gridStep } from "../snapping/grid.ts";
import { waterLimits } from "../snapping/limits.ts";
import { type Heading, headings } from "../snapping/side-places.ts";
import { type SnapEdge, type Snapped, snap, unsnapped } from "../snapping/snap.ts";
import { watersNear } from "../snapping/water-distance.ts";
import type { ViewStore } from "../view/view-store.ts";
import type { Pointer, SnapOptions } from "./tool.ts";

/** Screen pixels within which a pointer is drawn: by mouse or pen, by finger. */
const SNAP_PIXELS = 9;
const TOUCH_SNAP_PIXELS = 16;
/** The crosshair steps by inches: whatever lies nearer to it than to any other step draws it, inches. */
const CROSSHAIR_REACH = 0.75;
/** Corners of other things this many pixels away can be in line with the pointer. */
const IN_LINE_PIXELS = 360;
/** Sides this many pixels from the pointer can be parallel to what is drawn. */
const HEADING_PIXELS = 90;
/** The most sides that give a heading. */
const MOST_HEADING_SIDES = 12;

export function snapOn(
  { document, view }: { readonly document: DocumentStore; readonly view: ViewStore },
  pointer: Pointer,
  options: SnapOptions = {},
): Snapped {
  const { snapping, camera } = view.getState();
  if (pointer.alt || !snapping) return unsnapped(pointer.at);
  const { lines, origin, withoutMiddles, from, kind } = options;
  const { at } = pointer;
  const { isCrosshair, isTouch } = pointer;
  const tolerance = isCrosshair ? CROSSHAIR_REACH : (isTouch ? TOUCH_SNAP_PIXELS : SNAP_PIXELS) / camera.scale;
  const { gesture, shown } = document.getState();
  // What a gesture previews is not snapped to: it is what is being placed.
  const site = gesture?.start ?? shown;
  const { elements } = site;
  // What is not drawn draws nothing to itself.
  const without = new Set([...(options.without ?? []), ...hiddenIds(site)]);
  const { points, edges } = candidatesNear(elements, at, tolerance, without);
  const units = shown.display?.units ?? "ft-in";
  const limits = waterLimits(site, kind ?? null);
  const farthest = limits.at(-1)?.distance ?? 0;
  return snap(
    at,
    { points: withoutMiddles ? points.filter(({ isMiddle }) => isMiddle !== true) : points, edges },
    {
      tolerance,
      // Keys put the crosshair on whole inches, and far things in line with it would draw it off them.
      grid: isCrosshair ? null : gridStep(camera.scale, units),
      units,
      limits,
      waters: limits.length === 0 ? [] : watersNear(elements, at, farthest + tolerance, without),
      others: isCrosshair ? [] : cornersInLine(elements, at, tolerance, IN_LINE_PIXELS / camera.scale, without),
      ...(lines ? { lines } : {}),
      ...(origin ? { origin } : {}),
      ...(from ? { from, headings: headingsAt(site, from, at, options, tolerance, camera.scale, without) } : {}),
    },
  );
}

/** Ways that a side can run: by its own earlier sides, by what it comes from, by what the pointer is near. */
function headingsAt(
  { elements }: Site,
  from: Point,
  at: Point,
  { sides = [] }: SnapOptions,
  tolerance: number,
  scale: number,
  without: ReadonlySet<string>,
): Heading[] {
  const own = sides.map(
    (edge, i): SnapEdge => ({ edge, words: i === sides.length - 1 ? "the last side" : `side ${i + 1}` }),
  );
  const there = candidatesNear(elements, from, tolerance / 4, without).edges;
  const near = candidatesNear(elements, at, HEADING_PIXELS / scale, without)
    .edges.map((edge) => ({ edge, away: nearestOnEdge(edge.edge, at).distance }))
    .sort((a, b) => a.away - b.away)
    .slice(0, MOST_HEADING_SIDES)
    .map(({ edge }) => edge);
  return headings([...own.reverse(), ...there, ...near], from);
}
