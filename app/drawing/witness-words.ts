/** What stands beside the line that was measured for a finding. */
import type { Point } from "../../geometry/types.ts";
import type { Finding } from "../../rules/report.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";

/**
 * The length of the measured line. A clearance in space is longer than its line on the plan: it is told itself, and behind
 * it how far it goes across and up.
 */
export function witnessWords(
  { witness, measured, required }: Pick<Finding, "witness" | "measured" | "required">,
  units: Units,
): readonly [string, ...string[]] {
  const across = lengthOf(witness);
  const { clearance } = measured;
  if (typeof clearance !== "number") return [lengthText(across, units)];
  const limit = typeof required.clearance === "number" ? required.clearance : undefined;
  const up = Math.sqrt(Math.max(0, clearance ** 2 - across ** 2));
  return [
    `${lengthText(clearance, units, limit)} in space`,
    across === 0 ? "straight up" : `${lengthText(across, units)} across, ${lengthText(up, units)} up`,
  ];
}

/** Length of a polyline, inches. */
export function lengthOf(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (a && b) sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}

/** The position halfway along a polyline. */
export function middleOf(points: readonly Point[]): Point {
  let left = lengthOf(points) / 2;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (!a || !b) continue;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= length && length > 0)
      return [a[0] + ((b[0] - a[0]) * left) / length, a[1] + ((b[1] - a[1]) * left) / length];
    left -= length;
  }
  return points[0] ?? [0, 0];
}
