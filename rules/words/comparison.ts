/** What the parts of a comparison of two editions are called. */
import { type EditionComparison, type Side, saysOtherwise, type TotalName } from "../compare-editions.ts";
import type { SurfaceBonding } from "../report.ts";
import { answerText, questionText } from "./answers.ts";
import { areaText, copperText, type Units } from "./lengths.ts";
import { OUTCOME_WORDS } from "./outcomes.ts";

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

/** A total as people read it. */
export function totalText(name: TotalName, value: number, units: Units): string {
  const unit = TOTAL_WORDS[name]?.unit ?? "count";
  if (unit === "count") return String(value);
  if (unit === "pounds") return `${value.toFixed(1)} lb`;
  return value === 0 ? "none" : copperText(value, units);
}

/** What bonds a surface, and how much of it: `copper grid, 91.2 sq ft; a question, 12.0 sq ft`. */
export function bandText(
  parts: readonly { readonly bonding: SurfaceBonding; readonly area: number }[],
  units: Units,
): string {
  if (parts.length === 0) return "none";
  return parts.map(({ bonding, area }) => `${BONDING_WORDS[bonding]}, ${areaText(area, units)}`).join("; ");
}

/** Outcome, section and basis, why, what settles it or what is asked, and the answer: one paragraph each. */
export function sideTexts(side: Side | null): { readonly outcome: string; readonly texts: readonly string[] } {
  if (side === null) return { outcome: "asks for nothing here", texts: [] };
  const question = side.question
    ? `Question: ${questionText(side.question)}`
    : side.remedy === ""
      ? ""
      : `What settles it: ${side.remedy}`;
  const texts = [
    `${[side.section, ...side.alsoSections].join(", ")}; ${side.basis}`,
    side.why,
    question,
    side.answered ? answerText(side.answered) : "",
    side.lapsed
      ? "An earlier answer has lapsed: it was given under another edition, or what it was about changed."
      : "",
  ];
  return { outcome: OUTCOME_WORDS[side.outcome], texts: texts.filter((text) => text !== "") };
}

/** How many findings change and how many stay; what only rests on a more or less sure limit stays. */
export function changeCount({ changes, same }: Pick<EditionComparison, "changes" | "same">): string {
  const otherwise = changes.filter(saysOtherwise).length;
  if (otherwise === 0) return "Nothing changes between these editions on this site.";
  const rest = same + changes.length - otherwise;
  return `${otherwise} ${otherwise === 1 ? "finding changes" : "findings change"}; ${rest} ${rest === 1 ? "stays" : "stay"}.`;
}
