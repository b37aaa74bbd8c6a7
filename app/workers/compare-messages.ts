/** What the page and the worker that compares two editions say to each other. */
import type { EditionComparison } from "../../rules/compare-editions.ts";
import type { EditionId } from "../../rules/editions/edition.ts";
import type { Site } from "../../rules/site/site.ts";

export interface CompareRequest {
  /** Grows with every request; an answer to an older one is dropped. */
  readonly turn: number;
  readonly site: Site;
  readonly before: EditionId;
  readonly after: EditionId;
}

/** The comparison without its two reports, which are large and shown elsewhere. */
export type ShownComparison = Omit<EditionComparison, "reports">;

export type CompareReply =
  | { readonly turn: number; readonly ok: true; readonly comparison: ShownComparison }
  | { readonly turn: number; readonly ok: false; readonly message: string };
