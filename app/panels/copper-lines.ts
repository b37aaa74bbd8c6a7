/** The takeoff as the panel shows it: one line for each run of copper, and what waits for the routes. */
import type { Report } from "../../rules/report.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import { copperText, type Units } from "../../rules/words/lengths.ts";
import { runNames } from "../../rules/words/runs.ts";
import type { TakeoffRun } from "../drawing/highlight.ts";

export interface CopperLine {
  readonly line: TakeoffRun;
  readonly label: string;
  /** The length in words, or that it is on its way or not worked out. */
  readonly text: string;
  /** Nothing of it on this site. */
  readonly isNone: boolean;
  /** The figure is not there. */
  readonly isOnItsWay: boolean;
}

export const ON_ITS_WAY = "on its way";
export const NOT_WORKED_OUT = "not worked out";

/** What stands in place of a figure that needs the routes. `failure`: why they are not worked out. */
export function routesWords(failure: string | null): string {
  return failure === null ? ON_ITS_WAY : NOT_WORKED_OUT;
}

/** Runs that are known only with the routes. */
const WAITING: ReadonlySet<string> = new Set<TakeoffRun>(["branches", "drops"]);

/** The lines of a takeoff; without routes, what depends on them is on its way or not worked out, never zero. */
export function copperLines(
  report: Pick<Report, "takeoff" | "ring">,
  routesPending: boolean,
  units: Units | undefined,
  waitWords = ON_ITS_WAY,
): CopperLine[] {
  const { conductor } = report.takeoff;
  return runNames(report).flatMap(([line, name]) => {
    if (line === "spare") return [];
    const isOnItsWay = routesPending && WAITING.has(line);
    const text = isOnItsWay ? waitWords : conductor[line] === 0 ? "none" : copperText(conductor[line], units);
    return [{ line, label: capitalized(name), text, isNone: !isOnItsWay && conductor[line] === 0, isOnItsWay }];
  });
}
