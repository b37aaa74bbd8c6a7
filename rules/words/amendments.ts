/** How a local amendment is named wherever it acts. */
import type { Report } from "../report.ts";

/** `fixedMetal.distance = 72 (Ordinance 12-4)`. */
export function amendmentText({ parameter, value, reason }: Report["amendments"][number]): string {
  return `${parameter} = ${JSON.stringify(value)}${reason === "" ? "" : ` (${reason})`}`;
}
