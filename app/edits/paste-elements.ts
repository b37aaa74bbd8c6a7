/** Elements taken from a sheet, to be put on the same or another one. */
import type { Point } from "../../geometry/types.ts";
import { elementProblems } from "../../rules/site/element-check.ts";
import { checkSite } from "../../rules/site/reader.ts";
import {
  type Arrangement,
  type Dimension,
  dimensionSchema,
  groupSchema,
  SITE_FORMAT,
  SITE_VERSION,
  type Site,
} from "../../rules/site/site.ts";
import { refuseText } from "../../rules/site/size-check.ts";
import { wholeGroups } from "./arrangement.ts";
import { withCopies } from "./copies.ts";
import { dimensionsOn } from "./dimension-copies.ts";
import { type AnyElement, type Edit, refused } from "./edit.ts";
import { boxRound, middleOf } from "./element-box.ts";
import { elementsOf, elementsWords } from "./element-words.ts";
import { shift } from "./moved.ts";
import { idsWithOpenings } from "./place-elements.ts";

/** What the clipboard holds. */
export interface Taken {
  readonly elements: readonly AnyElement[];
  readonly groups: NonNullable<Arrangement["groups"]>;
  /** What the elements name that was not taken along, as it was: named again only on a sheet that holds just the same. */
  readonly named: readonly AnyElement[];
  /** Dimensions that hang on nothing else. */
  readonly dimensions?: readonly Dimension[];
}

export function takeElements(site: Site, ids: readonly string[]): Taken {
  const all = new Set(idsWithOpenings(site, ids));
  const elements = elementsOf(site, all);
  const mentioned = new Set(elements.flatMap(mentionsOf).filter((id) => !all.has(id)));
  const dimensions = dimensionsOn(site, all);
  const taken = { elements, groups: wholeGroups(site, all), named: elementsOf(site, mentioned) };
  return dimensions.length === 0 ? taken : { ...taken, dimensions };
}

/** True when the site holds what was taken, as it was then: the copies then belong a step aside. */
export function isFrom(site: Site, taken: Taken): boolean {
  return taken.elements.some((element) => holds(site, element));
}

/**
 * Puts copies of what was taken on the sheet, `by` inches from where it lay, or with its middle at a place. What they
 * name and this sheet does not hold is let go of: it becomes a question, never another thing of the same name.
 */
export function pasteElements(taken: Taken, where: { readonly by: Point } | { readonly middle: Point }): Edit {
  return {
    label: "Paste",
    apply(site) {
      const [first] = taken.elements;
      if (!first) return refused("There is nothing to paste.");
      let [dx, dy] = "by" in where ? where.by : [0, 0];
      if ("middle" in where) {
        const box = boxRound(taken.elements);
        if (box) {
          const middle = middleOf(box);
          [dx, dy] = [where.middle[0] - middle[0], where.middle[1] - middle[1]];
        }
      }
      const kept = new Set(taken.named.filter((element) => holds(site, element)).map(({ id }) => id));
      const label = `Paste ${elementsWords(taken.elements)}`;
      const keeps = (id: string) => id === "perimeter" || kept.has(id);
      const { dimensions = [] } = taken;
      return withCopies(site, taken.elements, [shift(dx, dy)], label, taken.groups, { keeps, dimensions });
    },
  };
}

/** A clipboard's text. */
export function takenText(taken: Taken): string {
  return JSON.stringify({ format: "copperband-elements", version: 1, ...taken });
}

/** What a clipboard's text holds, checked like a file's elements; null when it is none of ours or broken. */
export function readTaken(text: string): Taken | null {
  if (refuseText(text) !== null) return null;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
  if (typeof value !== "object" || value === null) return null;
  const { format, version, elements, groups, named, dimensions } = value as Readonly<Record<string, unknown>>;
  if (format !== "copperband-elements" || version !== 1) return null;
  const isSound = (list: unknown): list is AnyElement[] =>
    Array.isArray(list) && list.every((element, i) => elementProblems(element, i).length === 0);
  if (!isSound(elements) || !isSound(named) || !Array.isArray(groups)) return null;
  const sound = groups.flatMap((group) => groupSchema.safeParse(group).data ?? []);
  const read = { elements, groups: sound, named };
  const ids = new Set(elements.map(({ id }) => id));
  const measured = (Array.isArray(dimensions) ? dimensions : []).flatMap(
    (one) => dimensionSchema.safeParse(one).data ?? [],
  );
  const hanging = dimensionsOn({ dimensions: measured }, ids);
  // What is put on a sheet has to be readable in its file.
  const alone = { format: SITE_FORMAT, version: SITE_VERSION, elements, arrangement: { groups: sound } };
  if (!checkSite({ ...alone, dimensions: hanging }).ok) return null;
  return hanging.length === 0 ? read : { ...read, dimensions: hanging };
}

function mentionsOf(element: AnyElement): string[] {
  const { pool, joins, serves } = element as Readonly<Record<string, unknown>>;
  return [pool, joins, serves].flat().filter((id): id is string => typeof id === "string");
}

function holds(site: Site, element: AnyElement): boolean {
  const there = site.elements.find(({ id }) => id === element.id);
  return there !== undefined && (there === element || JSON.stringify(there) === JSON.stringify(element));
}
