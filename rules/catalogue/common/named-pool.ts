/** Elements that name the body of water they are in: whether that body is drawn, and what is asked where it is not. */
import type { Body, Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import type { LightElement, WaterBondElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { bondedBodies } from "./storable.ts";
import { type Settled, settle, yesNo } from "./verdicts.ts";

export interface PoolDoubt {
  /** The nearest body, for which it is taken until somebody says otherwise. */
  readonly body: Body;
  readonly question: Question;
  readonly settled: Settled;
  /** A sentence on what is wrong. */
  readonly says: string;
}

/** What is open about an element that names a pool which is not drawn; null where it names none, or one that is. */
export function poolDoubt(yard: Yard, element: LightElement | WaterBondElement): PoolDoubt | null {
  const { pool } = element;
  if (pool === undefined || yard.body(pool)) return null;
  const body = yard.nearestBody(element, bondedBodies(yard));
  if (body === null) return null;
  const plain = elementName(element);
  const nearest = elementName(body.element);
  const question = yesNo("named-pool", `Does ${plain} belong to ${nearest}, the nearest one?`);
  const own = settle(yard, question, element.id, body.id);
  const ofWater = settle(yard, { ...question, id: `${question.id}-${element.id}` }, null, body.id);
  const settled = own.choice === null && ofWater.note !== "" ? ofWater : own;
  const says = `The pool "${pool}" that ${plain} is said to be in is not drawn; ${nearest} is the nearest one.`;
  return { body, question, settled, says };
}

/** Whether it is open which body of water the element is in. */
export function isPoolOpen(yard: Yard, element: LightElement | WaterBondElement): boolean {
  const doubt = poolDoubt(yard, element);
  return doubt !== null && doubt.settled.choice !== "yes";
}
