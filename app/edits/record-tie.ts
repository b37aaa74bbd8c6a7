import type { TieReport } from "../../rules/report.ts";
import type { ElementOf } from "../../rules/site/elements.ts";
import { gone, withAdded } from "./checked.ts";
import { type Edit, refused } from "./edit.ts";
import { elementWords } from "./element-words.ts";
import { newId } from "./new-id.ts";

/**
 * Records a proposed tie as made: a connection at its place that joins what it was to lie between. Its hardware is not
 * known yet, and asked for.
 */
export function recordTie(tie: Pick<TieReport, "at" | "between" | "present">): Edit {
  return {
    label: "Record a tie",
    apply(site) {
      if (tie.present) return refused("This tie is recorded already.");
      for (const id of tie.between) {
        if (id !== "perimeter" && !site.elements.some((element) => element.id === id)) return gone(id);
      }
      const made: ElementOf<"tie"> = {
        id: newId(site, "tie"),
        kind: "tie",
        at: [tie.at[0], tie.at[1]],
        joins: [...tie.between],
      };
      return withAdded(site, [made], `Record ${elementWords(made)}`);
    },
  };
}
