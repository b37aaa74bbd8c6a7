/**
 * What has been worked out of a site, kept from one state of it to the next for as long as nothing that it was worked
 * out of has changed.
 *
 * Stages. 1. `follow` holds the new site against the one before: which kinds of elements differ, and whether the head does
 * (then everything goes). Elements are compared by identity: a site is never changed in place, so an element that is the
 * same object is the same element. 2. `kept` and `each` run a piece of work and note what it reads: whole kinds, or single
 * elements by id. 3. Asked again, the kept result is given when none of that has changed since it was last found right.
 *
 * Terms. Reads: kinds as bits. Refs: single elements by id; an id that nobody has is read too. Notes of a piece of work
 * pass to the work that asked for it. A piece of work sees of the yard only what notes its reading; whatever else it is
 * made of has to be named: the elements in its key as `about`, and bodies of water always count as read.
 */
import { KINDS, type Kind, type KnownElement, type UnknownElement } from "../site/elements.ts";
import type { Site } from "../site/site.ts";
import { ElementMemos } from "./element-memos.ts";
import {
  adopt,
  bitOf,
  type Entry,
  EVERY_BIT,
  isKnown,
  lowestBit,
  type Notes,
  noteOne,
  notesOf,
  POOL_BIT,
  UNKNOWN_BIT,
} from "./reading-notes.ts";
import { SameInputs } from "./same-inputs.ts";
import { sortedElements, type Work } from "./work.ts";

/** What one rule has made of each element of a kind. */
interface Slot {
  readonly elements: readonly KnownElement[];
  readonly entries: readonly Entry[];
}

/** Entries by key are looked through each so many states, and those that are wrong dropped. */
const SWEEP_EVERY = 256;

export class KeptWork implements Work {
  unknown: readonly UnknownElement[] = [];

  ofVerdicts = new Map<object, unknown>();

  readonly same = new SameInputs();

  memos = new ElementMemos();

  #elements: Site["elements"] = [];
  /** Elements of this state that have taken the place of others. */
  #fresh: ReadonlySet<KnownElement> = new Set();
  #byId = new Map<string, KnownElement>();
  #byKind = new Map<Kind, readonly KnownElement[]>();
  #head: Readonly<Record<string, unknown>> | null = null;
  #state = 0;
  /** The state in which each kind was last found changed, by number of bit. */
  readonly #changed: number[] = Array.from({ length: KINDS.length + 1 }, () => 0);
  /** The kinds that this state changed. */
  #changedNow = 0;
  #entries = new Map<string, Entry>();
  #slots = new Map<string, Slot>();
  #notes: Notes | null = null;

  get byId(): ReadonlyMap<string, KnownElement> {
    return this.#byId;
  }

  get byKind(): ReadonlyMap<Kind, readonly KnownElement[]> {
    return this.#byKind;
  }

  follow(site: Site, as: string): void {
    // How elements are handled on the sheet and what lies under it decide nothing.
    const { elements, arrangement: _, underlay: __, ...head } = site;
    const known: Record<string, unknown> = { ...head, as };
    this.#state += 1;
    if (this.#head === null || !sameHead(this.#head, known)) {
      this.#entries = new Map();
      this.memos = new ElementMemos();
      this.#slots = new Map();
      this.ofVerdicts = new Map();
    }
    this.#head = known;
    this.#changedNow = 0;
    this.#fresh = new Set();
    if (!this.#takeInPlace(elements)) this.#takeAll(elements);
    this.#elements = elements;
    for (let rest = this.#changedNow; rest !== 0; rest &= rest - 1) this.#changed[lowestBit(rest)] = this.#state;
    if (this.#state % SWEEP_EVERY === 0) {
      for (const [key, entry] of this.#entries) if (!this.#isRight(entry)) this.#entries.delete(key);
    }
  }

  /** Stage 1 where elements have only been replaced by others of the same id and kind; false where more has changed. */
  #takeInPlace(elements: Site["elements"]): boolean {
    const before = this.#elements;
    if (before.length !== elements.length) return false;
    const replaced = new Map<KnownElement, KnownElement>();
    for (let i = 0; i < elements.length; i++) {
      const [was, is] = [before[i], elements[i]];
      if (was === is) continue;
      if (!was || !is || was.id !== is.id || was.kind !== is.kind || !isKnown(was) || !isKnown(is)) return false;
      replaced.set(was, is);
    }
    this.#fresh = new Set(replaced.values());
    for (const [was, is] of replaced) {
      this.#changedNow |= bitOf(is.kind);
      this.#byId.set(is.id, is);
      this.memos.forget(was);
    }
    for (const kind of new Set([...replaced.values()].map((element) => element.kind))) {
      const list = this.byKind.get(kind) ?? [];
      this.#byKind.set(
        kind,
        list.map((element) => replaced.get(element) ?? element),
      );
    }
    return true;
  }

  /** Stage 1 in general; what is kept with elements that have gone goes too. */
  #takeAll(elements: Site["elements"]): void {
    const { byId, byKind, unknown } = sortedElements(elements);
    for (const kind of KINDS) {
      const before = this.byKind.get(kind) ?? [];
      if (sameList(before, byKind.get(kind) ?? [])) continue;
      this.#changedNow |= bitOf(kind);
      for (const element of before) if (byId.get(element.id) !== element) this.memos.forget(element);
    }
    if (!sameList(this.unknown, unknown)) this.#changedNow |= UNKNOWN_BIT;
    this.#byId = byId;
    this.#byKind = byKind;
    this.unknown = unknown;
  }

  read(bits: number): void {
    if (this.#notes) this.#notes.reads |= bits;
  }

  readUnknown(): void {
    this.read(UNKNOWN_BIT);
  }

  readEverything(): void {
    this.read(EVERY_BIT);
  }

  readOne(id: string, element: KnownElement | undefined): void {
    if (this.#notes) noteOne(this.#notes, id, element);
  }

  kept<T>(key: string, make: () => T, about: readonly KnownElement[] = []): T {
    const known = this.#entries.get(key);
    if (known && this.#isRight(known)) {
      if (this.#notes) adopt(this.#notes, known);
      return known.value as T;
    }
    const notes = notesOf(null);
    notes.reads = POOL_BIT;
    for (const element of about) noteOne(notes, element.id, element);
    const entry = this.#run(make, notes);
    this.#entries.set(key, entry);
    if (this.#notes) adopt(this.#notes, entry);
    return entry.value as T;
  }

  each<K extends KnownElement, T>(
    slot: string,
    kind: Kind,
    elements: readonly K[],
    make: (element: K) => readonly T[],
  ): T[] {
    const all: T[] = [];
    const outer = this.#notes;
    if (outer) outer.shares ??= notesOf(null);
    const before = this.#slots.get(slot);
    const entries: Entry[] = new Array(elements.length);
    const find = entryFinder(before);
    for (let i = 0; i < elements.length; i++) {
      const element = elements[i] as K;
      let entry =
        before?.elements[i] === element ? before.entries[i] : this.#fresh.has(element) ? undefined : find(element);
      if (!entry || !this.#isRight(entry)) {
        const notes = notesOf(element);
        notes.reads = outer?.reads ?? 0;
        notes.refs = outer?.refs ? new Map(outer.refs) : null;
        entry = this.#run(() => make(element), notes);
      }
      entries[i] = entry;
      for (const one of entry.value as readonly T[]) all.push(one);
      if (outer?.shares) adopt(outer.shares, entry);
    }
    this.#slots.set(slot, { elements, entries });
    // Also where there is none yet: the first of a kind changes what was made of none.
    if (outer?.shares) outer.shares.reads |= bitOf(kind);
    return all;
  }

  #run(make: () => unknown, notes: Notes): Entry {
    const outer = this.#notes;
    this.#notes = notes;
    try {
      const value = make();
      if (notes.shares) adopt(notes, notes.shares);
      return { value, reads: notes.reads, refs: notes.refs, seen: this.#state };
    } finally {
      this.#notes = outer;
    }
  }

  #isRight(entry: Entry): boolean {
    if (entry.seen === this.#state) return true;
    if (entry.seen === this.#state - 1 && (entry.reads & this.#changedNow) === 0 && entry.refs === null) {
      entry.seen = this.#state;
      return true;
    }
    for (let rest = entry.reads; rest !== 0; rest &= rest - 1) {
      if ((this.#changed[lowestBit(rest)] as number) > entry.seen) return false;
    }
    if (entry.refs) {
      for (const [id, element] of entry.refs) if (this.byId.get(id) !== element) return false;
    }
    entry.seen = this.#state;
    return true;
  }

  keptOf<T>(element: KnownElement, name: string, make: () => T): T {
    const memo = this.memos.of(element);
    const known = memo.works?.find((one) => one.name === name);
    let entry = known?.entry;
    if (!entry || !this.#isRight(entry)) {
      const notes = notesOf(element);
      notes.reads = POOL_BIT;
      entry = this.#run(make, notes);
      if (known) known.entry = entry;
      else if (memo.works) memo.works.push({ name, entry });
      else memo.works = [{ name, entry }];
    }
    if (this.#notes) {
      adopt(this.#notes, entry);
      noteOne(this.#notes, element.id, element);
    }
    return entry.value as T;
  }
}

/** Finds what a slot holds for an element that is not where it was. */
function entryFinder(slot: Slot | undefined): (element: KnownElement) => Entry | undefined {
  let places: Map<KnownElement, number> | null = null;
  return (element) => {
    if (!slot) return undefined;
    places ??= new Map(slot.elements.map((one, i) => [one, i]));
    return slot.entries[places.get(element) ?? -1];
  };
}

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function sameHead(a: Readonly<Record<string, unknown>>, b: Readonly<Record<string, unknown>>): boolean {
  for (const name of new Set([...Object.keys(a), ...Object.keys(b)])) {
    if (a[name] !== b[name] && JSON.stringify(a[name]) !== JSON.stringify(b[name])) return false;
  }
  return true;
}
