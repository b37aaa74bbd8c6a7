/** Holding a measurement against a limit, with the site's accuracy. */
import { LIMIT_TOLERANCE } from "../../geometry/tolerances.ts";

/** `doubtful`: the margin lies within the site's accuracy, and the drawing may be off by that much. */
export type Standing = "below" | "at" | "above" | "doubtful";

/** Where a value stands to a limit. A value within LIMIT_TOLERANCE of the limit equals it. */
export function standingOf(value: number, limit: number, accuracy: number): Standing {
  const margin = value - limit;
  if (accuracy > 0 && Math.abs(margin) <= accuracy + LIMIT_TOLERANCE) return "doubtful";
  if (Math.abs(margin) <= LIMIT_TOLERANCE) return "at";
  return margin < 0 ? "below" : "above";
}

/** Whether a value reaches a minimum, or `doubtful`. */
export function reaches(value: number, minimum: number, accuracy: number): "yes" | "no" | "doubtful" {
  const standing = standingOf(value, minimum, accuracy);
  if (standing === "doubtful") return "doubtful";
  return standing === "below" ? "no" : "yes";
}

/** Whether a value is more than a limit (exactly the limit is not), or `doubtful`. */
export function exceeds(value: number, limit: number, accuracy: number): "yes" | "no" | "doubtful" {
  const standing = standingOf(value, limit, accuracy);
  if (standing === "doubtful") return "doubtful";
  return standing === "above" ? "yes" : "no";
}
