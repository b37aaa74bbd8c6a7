/** Holds two editions against each other off the page's own thread. A crash of a rule is reported as a crash. */
import { compareEditions } from "../../rules/compare-editions.ts";
import { comparisonWithLabels } from "../../rules/words/field-words.ts";
import type { CompareReply, CompareRequest } from "./compare-messages.ts";

self.addEventListener("message", (event: MessageEvent<CompareRequest>) => {
  const { turn, site, before, after } = event.data;
  let reply: CompareReply;
  try {
    const { reports: _, ...comparison } = compareEditions(site, before, after);
    reply = { turn, ok: true, comparison: comparisonWithLabels(comparison, site) };
  } catch (error) {
    reply = { turn, ok: false, message: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
});
