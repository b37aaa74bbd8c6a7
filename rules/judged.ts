/** A verdict with the rule that gave it. */
import { joinedAcrossBodies } from "./catalogue/across-bodies.ts";
import type { Rule, Verdict } from "./catalogue/rule.ts";

export interface Judged {
  readonly rule: Rule;
  readonly verdict: Verdict;
}

/** All verdicts on a site. `needing`: those of them that have a need, so that few have to be looked at for it. */
export interface Verdicts {
  readonly judged: readonly Judged[];
  readonly needing: readonly Judged[];
}

export function hasNeed({ verdict }: Judged): boolean {
  return verdict.need !== undefined;
}

/** One verdict for each rule and element, where a rule judges body by body; a body's own verdicts stay its own. */
export function oneForEachElement(judged: readonly Judged[]): readonly Judged[] {
  const several = new Map<Rule, Map<string, [Verdict, ...Verdict[]]>>();
  for (const { rule, verdict } of judged) {
    if (!rule.bodyByBody || verdict.element === null) continue;
    const ofRule = several.get(rule) ?? new Map<string, [Verdict, ...Verdict[]]>();
    several.set(rule, ofRule);
    const before = ofRule.get(verdict.element);
    if (before) before.push(verdict);
    else ofRule.set(verdict.element, [verdict]);
  }
  if ([...several.values()].every((ofRule) => [...ofRule.values()].every(({ length }) => length === 1))) return judged;
  return judged.flatMap((one): Judged[] => {
    const { rule, verdict } = one;
    const all = verdict.element === null ? undefined : several.get(rule)?.get(verdict.element);
    if (!all || all.length === 1) return [one];
    return all[0] === verdict ? [{ rule, verdict: joinedAcrossBodies(all) }] : [];
  });
}
