/**
 * Arcs drawn by chords that neither lose nor add area.
 *
 * Chords with all their corners on the arc enclose too little (a 12 in. quarter disc drawn to 1/64 in. loses 0.17 %).
 * Here the ends stay on the arc and the corners between lie outside it by a trifle, less than the tolerance, so that the
 * fan from the center has exactly the arc's area.
 */
import { FLATTEN_TOLERANCE, LONGEST_CHORD_ANGLE } from "./tolerances.ts";
import type { Area, Path, Point } from "./types.ts";

/** The corners strictly between the ends of an arc, in the order of the signed sweep. */
export function arcCorners(
  center: Point,
  radius: number,
  startAngle: number,
  sweep: number,
  tolerance: number = FLATTEN_TOLERANCE,
): Point[] {
  const widest = 2 * Math.acos(Math.max(0, 1 - tolerance / radius));
  const chords = Math.max(2, Math.ceil(Math.abs(sweep) / Math.min(LONGEST_CHORD_ANGLE, widest)));
  const step = sweep / chords;
  // Twice the fan's area over sin(step): (chords - 2) r'^2 + 2 r r', which is to equal chords r^2 step / sin(step).
  const whole = (chords * step) / Math.sin(step);
  const inner = chords - 2;
  const scale = inner === 0 ? whole / 2 : (Math.sqrt(1 + inner * whole) - 1) / inner;
  const points: Point[] = [];
  for (let i = 1; i < chords; i++) {
    const angle = startAngle + step * i;
    points.push([center[0] + radius * scale * Math.cos(angle), center[1] + radius * scale * Math.sin(angle)]);
  }
  return points;
}

/** The positions of a closed path with its arcs drawn so; the first is not repeated. */
export function areaTrueRing(path: Path, tolerance?: number): Point[] {
  const points: Point[] = [];
  for (const edge of path.edges) {
    points.push(edge.from);
    if (edge.kind === "arc")
      points.push(...arcCorners(edge.center, edge.radius, edge.startAngle, edge.sweep, tolerance));
  }
  return points;
}

/** The area as one polygon of closed rings. */
export function areaTruePolygon(area: Area, tolerance?: number): Point[][] {
  return [area.outer, ...area.holes].map((path) => {
    const points = areaTrueRing(path, tolerance);
    const first = points[0];
    return first ? [...points, first] : points;
  });
}
