/** A thing that has to stand a straight distance from the inside wall, unless a solid barrier or something else frees it. */
import type { ParameterId } from "../../editions/parameter-types.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { DeviceElement, EquipmentElement } from "../../site/elements.ts";
import type { Verdict } from "../rule.ts";
import { clearanceVerdict } from "./clearance-verdict.ts";
import { ON_BARRIERS } from "./rests-on.ts";
import { separated } from "./separation.ts";
import { any, atLeast, NO, type Truth } from "./truth.ts";
import { speakerOf, subjectName, witnessLine } from "./verdicts.ts";

export interface StraightDistance {
  readonly parameter: ParameterId;
  readonly limit: number;
  readonly question: string;
  /** What else frees it. */
  readonly unless?: Truth;
  /** That in words, a clause after "or". */
  readonly unlessSays?: string;
  /** What is wrong with a near one, a clause. */
  readonly danger: string;
}

/** The verdict on a thing as seen from one body: far enough, separated or free in another way. */
export function judgeStraight(
  yard: Yard,
  body: Body,
  element: DeviceElement | EquipmentElement,
  { parameter, limit, question, unless = NO, unlessSays, danger }: StraightDistance,
): Verdict {
  const say = speakerOf(yard);
  const straight = yard.straight(element, body);
  const length = straight.length;
  const far = atLeast(yard, length, limit, "its distance to the inside wall");
  const truth = far.state === "yes" ? far : any(far, unless, separated(yard, body, straight));
  const where = length === 0 ? "is over or at the water" : `is ${say.length(length, limit)} from the inside wall`;
  const limits: readonly ParameterId[] = [parameter];
  const about = {
    element: element.id,
    body: body.id,
    measured: { horizontal: length },
    required: { horizontal: limit },
    margin: length - limit,
    witness: witnessLine(straight),
    limits,
  };
  const otherwise = unlessSays === undefined ? "" : `, or ${unlessSays}`;
  const wanted =
    far.state === "yes"
      ? `it keeps at least ${say.length(limit)}`
      : `it keeps at least ${say.length(limit)}, or a solid, permanent barrier separates it from the water${otherwise}`;
  return clearanceVerdict(yard, about, truth, {
    question,
    restsOn: ON_BARRIERS,
    is: `${subjectName(element)} ${where}`,
    wanted,
    breaks: `${say.length(limit)} are asked for and nothing drawn separates it: ${danger}`,
    remedy: `Move it to at least ${say.length(limit)} from the inside wall, or separate it by a solid, permanent barrier.`,
  });
}
