/** What the parts of a comparison of two editions are called. */
import type { TotalName } from "../compare-editions.ts";
import type { SurfaceBonding } from "../report.ts";

/** Totals beside the counts of outcomes, which have words of their own. */
export const TOTAL_WORDS: Readonly<
  Partial<Record<TotalName, { readonly text: string; readonly unit: "length" | "count" | "pounds" }>>
> = {
  missing: { text: "Missing, by the report's count", unit: "count" },
  tiesNeeded: { text: "Ties still needed", unit: "count" },
  ringLength: { text: "Ring", unit: "length" },
  bandGridLength: { text: "Grid round the water", unit: "length" },
  shellGridLength: { text: "Grid in or under the shell", unit: "length" },
  copper: { text: "Copper in all, with spare", unit: "length" },
  weightPounds: { text: "Weight of the copper", unit: "pounds" },
};

export const BONDING_WORDS: Readonly<Record<SurfaceBonding, string>> = {
  steel: "its own steel",
  ring: "copper ring",
  grid: "copper grid",
  "none-needed": "none needed",
  review: "a question",
};
