/** The takeoff as the panel shows it: one line for each run of copper, and what waits for the routes. */
import type { TakeoffReport } from "../../rules/report.ts";
import { copperText, type Units } from "../../rules/words/lengths.ts";
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

const LINES: readonly { readonly line: TakeoffRun; readonly label: string; readonly waits: boolean }[] = [
  { line: "ring", label: "Ring", waits: false },
  { line: "grid", label: "Grid", waits: false },
  { line: "ties", label: "Ties to the shell", waits: false },
  { line: "branches", label: "Branches", waits: true },
  { line: "drops", label: "Drops", waits: true },
  { line: "tails", label: "Tails", waits: false },
];

/** The lines of a takeoff; without routes, what depends on them is on its way or not worked out, never zero. `hasLinks`: copper that joins separate loops is in the ring's. */
export function copperLines(
  { conductor }: Pick<TakeoffReport, "conductor">,
  routesPending: boolean,
  units: Units | undefined,
  waitWords = ON_ITS_WAY,
  hasLinks = false,
): CopperLine[] {
  return LINES.map(({ line, label: named, waits }) => {
    const label = line === "ring" && hasLinks ? "Ring with its links" : named;
    const isOnItsWay = waits && routesPending;
    return {
      line,
      label,
      text: isOnItsWay ? waitWords : conductor[line] === 0 ? "none" : copperText(conductor[line], units),
      isNone: !isOnItsWay && conductor[line] === 0,
      isOnItsWay,
    };
  });
}
