import type { Report } from "../../rules/report.ts";
import type { Units } from "../../rules/words/lengths.ts";
import type { Pen } from "./text-lines.ts";

/** What the lines of a report are written with. */
export interface Writing {
  readonly report: Report;
  readonly width: number;
  readonly pen: Pen;
  readonly units: Units;
  /** The name of an element with its id, safe to print. */
  readonly nameOf: (id: string) => string;
}
