/** What an edition of the code is made of: numbers with their section, basis and source; the rules read nothing else. */
import type { BasisWord } from "../report.ts";

export type EditionId = "nec-2017" | "nec-2020" | "nec-2023";
export const EDITION_IDS: readonly EditionId[] = ["nec-2017", "nec-2020", "nec-2023"];

/** P two or more published restatements agree · O one · R recalled from memory · J a judgement of ours. */
export type Basis = "P" | "O" | "R" | "J";

export const BASIS_WORDS: Readonly<Record<Basis, BasisWord>> = {
  P: "published",
  O: "one source",
  R: "memory",
  J: "judgement",
};

/** From surest to least sure. */
export const BASIS_ORDER: readonly BasisWord[] = ["published", "one source", "memory", "judgement"];

export type ParameterValue = number | boolean | string | readonly string[] | null;

export interface Parameter<V extends ParameterValue = ParameterValue> {
  readonly value: V;
  /** "in", "sq in", "AWG", "A", "V", "count", "factor", "yes/no", "list", "word". */
  readonly unit: string;
  /** In the numbering of this edition, no prefix. */
  readonly section: string;
  readonly basis: Basis;
  /** What it is, in our own words, with whatever is argued about it. */
  readonly says: string;
}

export interface Edition {
  readonly id: EditionId;
  readonly title: string;
  readonly note: string;
  readonly parameters: Readonly<Record<string, Parameter>>;
}
