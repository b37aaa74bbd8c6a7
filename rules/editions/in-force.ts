/** The edition that judges a site: its data with the site's local amendments laid over. */

import { type AnswerFound, standingAnswer } from "../measures/answers.ts";
import type { BasisWord } from "../report.ts";
import type { Amendment, Site } from "../site/site.ts";
import { amendmentFault, crossedPairs } from "./amendment-faults.ts";
import { BASIS_ORDER, BASIS_WORDS, EDITION_IDS, type Edition, type EditionId } from "./edition.ts";
import { nec2017 } from "./nec-2017.ts";
import { nec2020 } from "./nec-2020.ts";
import { nec2023 } from "./nec-2023.ts";
import type { ParameterId, ParameterTable, ParameterTypes } from "./parameter-types.ts";

export const EDITIONS: Readonly<Record<EditionId, Edition & { readonly parameters: ParameterTable }>> = {
  "nec-2017": nec2017,
  "nec-2020": nec2020,
  "nec-2023": nec2023,
};

/** What judges a site that names no edition, or one we do not hold: the newest; a question is put beside it. */
export const EDITION_WHEN_UNNAMED: EditionId = "nec-2023";

/** An amendment that names no parameter of ours, gives it a value that cannot be, or is contradicted further down. */
export interface UselessAmendment {
  readonly amendment: Amendment;
  readonly reason: string;
}

export interface EditionInForce {
  readonly id: EditionId;
  readonly title: string;
  readonly note: string;
  /** Whether the site names it. */
  readonly named: "yes" | "absent" | "not-held";
  readonly amendments: readonly Amendment[];
  readonly useless: readonly UselessAmendment[];
  /** The value of a parameter, amendments applied. */
  value<K extends ParameterId>(id: K): ParameterTypes[K];
  /** The least sure basis among the parameters. */
  basis(...ids: ParameterId[]): BasisWord;
  /** Whether a local amendment changes the parameter. */
  amended(id: ParameterId): Amendment | undefined;
  readonly parameters: ParameterTable;
}

export function isEditionId(id: string | undefined): id is EditionId {
  return id !== undefined && (EDITION_IDS as readonly string[]).includes(id);
}

/** The question that a site without a usable edition is asked; its options are the editions' ids. */
export const EDITION_QUESTION_ID = "edition-in-force";

/** The edition that a site names: in its own field, or else in its answer to the question about it. */
export function namedEdition(site: Site): EditionId | null {
  if (isEditionId(site.edition)) return site.edition;
  const given = editionAnswer(site);
  return given !== null && !given.against && isEditionId(given.answer.answer) ? given.answer.answer : null;
}

/** The site's answer to the question which edition it falls under; only editions that are held are answers to it. */
export function editionAnswer(site: Site): AnswerFound | null {
  const answers = (site.answers ?? []).filter(
    ({ question, element, answer }) =>
      question === EDITION_QUESTION_ID && (element ?? null) === null && isEditionId(answer),
  );
  return standingAnswer(answers);
}

/** The edition in force for a site; `as` judges the same site under another edition (comparison). */
export function editionInForce(site: Site, as?: EditionId): EditionInForce {
  const known = as ?? namedEdition(site);
  const id = known ?? EDITION_WHEN_UNNAMED;
  const edition = EDITIONS[id];
  const named = known !== null ? "yes" : site.edition === undefined ? "absent" : "not-held";
  const parameters: Record<string, unknown> = { ...edition.parameters };
  const useless: UselessAmendment[] = [];
  const applied = new Map<string, Amendment>();
  for (const amendment of site.amendments ?? []) {
    const fault = amendmentFault(amendment, edition.parameters, EDITIONS);
    if (fault) useless.push({ amendment, reason: fault });
    else {
      const earlier = applied.get(amendment.parameter);
      if (earlier && JSON.stringify(earlier.value) !== JSON.stringify(amendment.value))
        useless.push({ amendment: earlier, reason: "another amendment gives the same parameter another value" });
      const before = edition.parameters[amendment.parameter as ParameterId];
      parameters[amendment.parameter] = {
        ...before,
        value: amendment.value,
        says: `Local amendment: ${amendment.reason ?? "no reason given"}.`,
      };
      applied.set(amendment.parameter, amendment);
    }
  }
  for (const [least, most] of crossedPairs(parameters as unknown as ParameterTable)) {
    for (const id of [least, most]) {
      const amendment = applied.get(id);
      if (!amendment) continue;
      useless.push({ amendment, reason: `it puts the least value, ${least}, above the greatest, ${most}` });
      applied.delete(id);
      parameters[id] = edition.parameters[id];
    }
  }
  const table = parameters as unknown as ParameterTable;
  return {
    id,
    title: edition.title,
    note: edition.note,
    named,
    amendments: [...applied.values()],
    useless,
    parameters: table,
    value: (key) => table[key].value as never,
    amended: (key) => applied.get(key),
    basis: (...ids) => {
      let worst = 0;
      for (const key of ids) worst = Math.max(worst, BASIS_ORDER.indexOf(BASIS_WORDS[table[key].basis]));
      return BASIS_ORDER[worst] ?? "judgement";
    },
  };
}
