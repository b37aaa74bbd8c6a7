/** What a piece of work reads of the site: kinds of elements as bits, and single elements by id. */
import { KINDS, type Kind, type KnownElement, type UnknownElement } from "../site/elements.ts";

const BIT_OF = new Map<string, number>(KINDS.map((kind, i) => [kind, 1 << i]));

/** Elements of kinds that are not known. */
export const UNKNOWN_BIT = 1 << KINDS.length;
export const EVERY_BIT = UNKNOWN_BIT * 2 - 1;
export const POOL_BIT = bitOf("pool");

export function bitOf(kind: Kind): number {
  return BIT_OF.get(kind) as number;
}

export function isKnown(element: KnownElement | UnknownElement): element is KnownElement {
  return BIT_OF.has(element.kind);
}

export interface Entry {
  readonly value: unknown;
  readonly reads: number;
  readonly refs: ReadonlyMap<string, KnownElement | undefined> | null;
  /** The state in which it was last found right. */
  seen: number;
}

/** Notes of one piece of work that is running. */
export interface Notes {
  reads: number;
  refs: Map<string, KnownElement | undefined> | null;
  /** What shares of single elements read (`each`): counts for this work, not for its other shares. */
  shares: Notes | null;
  /** The element whose share it is: what it is made of is known by the element itself. */
  readonly own: KnownElement | null;
}

export function notesOf(own: KnownElement | null): Notes {
  return { reads: 0, refs: null, shares: null, own };
}

export function noteOne(notes: Notes, id: string, element: KnownElement | undefined): void {
  if (element && (element === notes.own || (notes.reads & bitOf(element.kind)) !== 0)) return;
  notes.refs ??= new Map();
  notes.refs.set(id, element);
}

/** What one piece of work read counts as read by the one that asked for it. */
export function adopt(notes: Notes, { reads, refs }: Pick<Entry, "reads" | "refs">): void {
  notes.reads |= reads;
  if (refs) for (const [id, element] of refs) noteOne(notes, id, element);
}

export function lowestBit(bits: number): number {
  return 31 - Math.clz32(bits & -bits);
}
