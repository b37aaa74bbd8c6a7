/** What changes under another edition, for the printed sheets: worked out only while it is asked for. */
import { useEffect, useState } from "react";
import { useStore } from "zustand";
import type { EditionId } from "../../rules/editions/edition.ts";
import type { Site } from "../../rules/site/site.ts";
import { openCompareWorker } from "../live/compare-worker.ts";
import { type ComparisonState, type ComparisonStore, createComparison } from "../live/live-comparison.ts";

const NOTHING: ComparisonState = { comparison: null, pending: false, failure: null };

/** The comparison of the site under edition `before` with `after`; nothing while `after` is null. */
export function usePrintComparison(site: Site | null, before: EditionId, after: EditionId | null): ComparisonState {
  const [live] = useState<ComparisonStore>(() => createComparison(openCompareWorker));
  const state = useStore(live);
  useEffect(() => {
    if (site !== null && after !== null) live.ask({ site, before, after });
  }, [live, site, before, after]);
  useEffect(() => () => live.close(), [live]);
  if (after === null) return NOTHING;
  const { comparison } = state;
  const fits = comparison !== null && comparison.before === before && comparison.after === after && !state.pending;
  if (fits || state.failure !== null) return state;
  return { comparison: null, pending: true, failure: null };
}
