import { expect } from "vitest";
import type { Problem, ReadResult, Refusal } from "../../../rules/site/reader.ts";

/** The refusal of a result that has to be one. */
export function refusalOf(result: ReadResult): Refusal {
  if (result.ok) throw new Error("The site was taken.");
  return result.refusal;
}

/** The only problem of a result that has to be a refusal with one. */
export function onlyProblem(result: ReadResult): Problem {
  const { problems } = refusalOf(result);
  expect(problems).toHaveLength(1);
  return problems[0] as Problem;
}
