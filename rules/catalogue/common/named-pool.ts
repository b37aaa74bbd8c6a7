/**
 * Which body of water an element is in: the one that it names, else the one in which or in whose wall it stands; and what is
 * asked where the named one is not drawn, or where none is named and two are as near.
 */
import { LIMIT_TOLERANCE } from "../../../geometry/tolerances.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import type { LightElement, MetalElement, WaterBondElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { ofTheWater } from "./rests-on.ts";
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

/** How far behind its pool's inside wall a niche or a fitting may be drawn, inches: common practice, no source. */
export const SET_BACK = 24;

/** The bodies, storable ones too, in whose water, or in whose wall, an element stands by its place on the plan. */
function bodiesAt(yard: Yard, element: LightElement | WaterBondElement | MetalElement): readonly Body[] {
  const near = yard.bodies.map((body) => ({ body, distance: yard.straight(element, body).length }));
  const least = near.reduce((least, { distance }) => Math.min(least, distance), Number.POSITIVE_INFINITY);
  const inWater = yard.accuracy + LIMIT_TOLERANCE;
  const limit = least <= inWater ? inWater : least + SET_BACK;
  return near.filter(({ distance }) => distance <= limit).map(({ body }) => body);
}

/** Whether something that names no body of water stands, by its place, in another one than this. */
export function standsElsewhere(
  yard: Yard,
  element: LightElement | WaterBondElement | MetalElement,
  body: Body,
): boolean {
  if (yard.bodies.length < 2 || ("pool" in element && element.pool !== undefined)) return false;
  return !bodiesAt(yard, element).includes(body);
}

/** What is open about the body of water that an element is in; null where nothing is. */
export function poolDoubt(yard: Yard, element: LightElement | WaterBondElement | MetalElement): PoolDoubt | null {
  const pool = element.kind === "metal" ? undefined : element.pool;
  if (pool === undefined ? yard.bodies.length < 2 : yard.body(pool) !== undefined) return null;
  const body = yard.nearestBody(element, bondedBodies(yard));
  if (body === null) return null;
  const others = pool === undefined ? bodiesAt(yard, element).filter((other) => other !== body) : [];
  if (pool === undefined && (others.length === 0 || standsElsewhere(yard, element, body))) return null;
  const plain = elementName(element);
  const nearest = elementName(body.element);
  const question = yesNo("named-pool", `Does ${plain} belong to ${nearest}, the nearest one?`);
  const own = settle(yard, question, element.id, body.id);
  const ofWater = settle(yard, ofTheWater(question, element.id), null, body.id);
  const settled = own.choice === null && ofWater.note !== "" ? ofWater : own;
  const says =
    pool === undefined
      ? `Which water ${plain} is in is not given: it may be that of ${nearest} or of ${others.map((other) => elementName(other.element)).join(" or ")}.`
      : `The pool "${pool}" that ${plain} is said to be in is not drawn; ${nearest} is the nearest one.`;
  return { body, question, settled, says };
}

/** Whether it is open which body of water the element is in. */
export function isPoolOpen(yard: Yard, element: LightElement | WaterBondElement): boolean {
  const doubt = poolDoubt(yard, element);
  return doubt !== null && doubt.settled.choice !== "yes";
}
