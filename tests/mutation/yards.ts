/** The yards that wrong numbers are tried on: every example of every rule under each edition, and the yards with figures. */
import { EDITION_IDS, type EditionId } from "../../rules/editions/edition.ts";
import type { ParameterId } from "../../rules/editions/parameter-types.ts";
import { recompute } from "../../rules/recompute.ts";
import { FIGURE_YARDS, figureSite } from "../rules/figure-yards.ts";
import { examplesByRule, expectedUnder, siteOfExample } from "../support/rule-examples.ts";

export interface TriedYard {
  readonly name: string;
  readonly edition: EditionId;
  /** Whether the report still says what the yard's source says. */
  readonly holds: () => boolean;
  /** The numbers that its rule names; those yards are tried first. */
  readonly parameters: readonly ParameterId[];
}

export async function triedYards(): Promise<TriedYard[]> {
  const ofRules = (await examplesByRule()).flatMap(({ rule, examples }) =>
    examples.flatMap((example) =>
      EDITION_IDS.map((edition): TriedYard => {
        const site = siteOfExample(example, edition);
        const { element, body } = example.expect;
        const wanted = expectedUnder(example, edition);
        return {
          name: `${rule.id}: ${example.name}`,
          edition,
          parameters: rule.parameters,
          holds() {
            const found = recompute(site, { withoutRoutes: true }).findings.filter(
              (finding) =>
                finding.rule === rule.id && finding.element === element && (body ?? finding.body) === finding.body,
            );
            return found.map(({ outcome }) => outcome).join() === (wanted === "none" ? "" : wanted);
          },
        };
      }),
    ),
  );
  const withFigures = FIGURE_YARDS.flatMap((yard) =>
    yard.editions.map((edition): TriedYard => {
      const site = figureSite(yard, edition);
      return {
        name: yard.name,
        edition,
        parameters: yard.parameters,
        holds: () => yard.holds(recompute(site)),
      };
    }),
  );
  return [...ofRules, ...withFigures];
}
