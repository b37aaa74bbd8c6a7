/** A verdict with the rule that gave it. */
import type { Rule, Verdict } from "./catalogue/rule.ts";

export interface Judged {
  readonly rule: Rule;
  readonly verdict: Verdict;
}
