/** The words beside what is being drawn or changed. */
import { edgeLength } from "../../geometry/edge.ts";
import { distanceBetween } from "../../geometry/points.ts";
import type { Edge, Point } from "../../geometry/types.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";

/** A side: its length; an arc also its radius. */
export function sideWords(edge: Edge, units: Units): string {
  const length = lengthText(edgeLength(edge), units);
  return edge.kind === "line" ? length : `${length}, radius ${lengthText(edge.radius, units)}`;
}

/** The direction of a side's chord as it can be typed: degrees counter-clockwise from the right. */
export function bearingWords(from: Point, to: Point): string {
  const degrees = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  const around = (degrees + 360) % 360;
  const rounded = Math.round(around * 10) / 10;
  return `${rounded === 360 ? 0 : rounded} deg`;
}

/** How far something was moved: `3' 6" right, 1' 0" up`. */
export function moveWords(dx: number, dy: number, units: Units): string {
  const parts: string[] = [];
  if (dx !== 0) parts.push(`${lengthText(Math.abs(dx), units)} ${dx > 0 ? "right" : "left"}`);
  if (dy !== 0) parts.push(`${lengthText(Math.abs(dy), units)} ${dy > 0 ? "up" : "down"}`);
  return parts.length === 0 ? "where it was" : parts.join(", ");
}

/** `16' 0" by 32' 0"`. */
export function sizeWords(from: Point, to: Point, units: Units): string {
  return `${lengthText(Math.abs(to[0] - from[0]), units)} by ${lengthText(Math.abs(to[1] - from[1]), units)}`;
}

/** A place, for those who do not see it: how far it lies from the site's origin. */
export function placeWords([x, y]: Point, units: Units): string {
  const across = `${lengthText(Math.abs(x), units)} ${x < 0 ? "left" : "right"}`;
  return `${across}, ${lengthText(Math.abs(y), units)} ${y < 0 ? "down" : "up"}`;
}

/** The place at a distance and direction from another. `typed` goes before the pointer; a direction alone keeps the pointer's reach along it. */
export function placeFrom(from: Point, pointed: Point, typed: { length?: number; bearing?: number }): Point {
  const { length, bearing } = typed;
  if (length === undefined && bearing === undefined) return pointed;
  const toward = Math.atan2(pointed[1] - from[1], pointed[0] - from[0]);
  const angle = bearing === undefined ? toward : (bearing * Math.PI) / 180;
  const [cos, sin] = directionOf(angle, bearing);
  const reach = (pointed[0] - from[0]) * cos + (pointed[1] - from[1]) * sin;
  const far = length ?? (bearing === undefined ? distanceBetween(from, pointed) : Math.max(0, reach));
  return [from[0] + far * cos, from[1] + far * sin];
}

/** Cosine and sine; right angles exactly, so that typed rectangles close. */
function directionOf(angle: number, bearing: number | undefined): readonly [number, number] {
  const degrees = bearing ?? (angle * 180) / Math.PI;
  const quarter = Math.round(degrees / 90);
  if (quarter * 90 === degrees) {
    const turns = ((quarter % 4) + 4) % 4;
    return [turns === 0 ? 1 : turns === 2 ? -1 : 0, turns === 1 ? 1 : turns === 3 ? -1 : 0];
  }
  return [Math.cos(angle), Math.sin(angle)];
}
