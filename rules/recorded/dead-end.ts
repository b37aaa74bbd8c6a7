/** Whether what a recorded tie names holds anything to tie to. Sources: NEC 680.26(B)(1), (B)(2), restated. */
import type { Yard } from "../measures/yard.ts";
import { elementName } from "../words/element-names.ts";
import { bearing } from "./bearers.ts";
import { type Fact, good, open } from "./fact.ts";
import type { TieReading } from "./tie-reading.ts";

/** Something named that holds no metal to tie to, or of which that is not known: a liner, a deck without bare steel. */
export function deadEndFact(yard: Yard, reading: TieReading): Fact {
  const without = reading.joins.filter(
    (e) => (e.kind === "pool" || e.kind === "surface") && bearing(yard, e) !== "sure",
  );
  if (without.length === 0) return good("joins");
  const which = without.map(elementName).join(", ");
  const none = without.every((element) => bearing(yard, element) === "no");
  const says = none
    ? `It names ${which}, in which no bare steel and no copper grid is recorded.`
    : `It names ${which}, and whether bare steel or a copper grid lies there is not given.`;
  const text = `Looked at on site, is there bare steel or a copper grid in ${which} that this tie joins?`;
  const remedy = `Tie to bare steel or copper, or record the steel or grid of ${which}.`;
  return open("joins", says, remedy, {
    yard,
    element: reading.tie.id,
    body: reading.body?.id ?? null,
    id: "tie-steel-there",
    text,
  });
}
