/** What the table holds and how sure it is, in a few sentences. */

import type { Site } from "../../rules/site/site.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { tapedElements } from "./draw-taped.ts";
import type { SolvedTaping } from "./solve-taping.ts";
import type { Taping } from "./taping.ts";

interface SummaryProps {
  readonly taping: Taping;
  readonly solved: SolvedTaping;
  readonly units: Units;
  readonly site: Site;
}

export function Summary({ taping, solved, units, site }: SummaryProps) {
  const rows = solved.things.flatMap((thing) => thing.rows);
  const points = rows.filter(({ at }) => at !== null).length;
  if (points === 0) return null;
  const unread = rows.filter(({ faults }) => faults.length > 0).length;
  const doubtful = rows.filter(({ doubts }) => doubts.length > 0).length;
  const unchecked = rows.filter(({ at, isChecked }) => at !== null && !isChecked).length;
  const [it, others] = [doubtful === 1 ? "it" : "them", doubtful === 0 ? "each" : "the others"];
  const { standing } = tapedElements(site, taping, solved);
  const said = [
    `${points} ${points === 1 ? "point" : "points"}${doubtful === points ? "" : `, ${others} within about ${lengthText(solved.spread, units)}`}.`,
    unread === 0 ? "" : `${unread} cannot be read.`,
    doubtful === 0 ? "" : `${doubtful} in doubt: tape ${it} again or leave ${it} out; nothing is drawn before.`,
    taping.method === "line" || unchecked === 0
      ? ""
      : `Nothing checks ${unchecked === points ? "these distances" : `${unchecked} of them`}: a misread foot would not show. Tape from point to point as well.`,
    standing.length === 0 ? "" : `On the sheet already, and not drawn again: ${standing.join(", ")}.`,
  ];
  return <p role="status">{said.filter((one) => one !== "").join(" ")}</p>;
}
