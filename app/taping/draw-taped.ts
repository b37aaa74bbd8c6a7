/** Puts taped things on the sheet: one step for the whole table. */

import type { KnownElement } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";
import { withAdded } from "../edits/checked.ts";
import { type AnyElement, type Edit, refused } from "../edits/edit.ts";
import { elementWords } from "../edits/element-words.ts";
import { pathOf, pathRefs, pointOf } from "../edits/path-ref.ts";
import { checkedHead } from "../edits/set-site-field.ts";
import { draft } from "../edits/templates.ts";
import type { SolvedTaping, SolvedThing } from "./solve-taping.ts";
import { drawableOf, isEmptyRow, type Taping, type Thing } from "./taping.ts";

/** `accuracy`: what the site's accuracy becomes, inches; null leaves it. */
export function drawTaped(taping: Taping, solved: SolvedTaping, accuracy: number | null): Edit {
  return {
    label: "Draw what was taped",
    apply(site) {
      const { added, standing } = tapedElements(site, taping, solved);
      const unfinished = taping.things.findIndex((thing, i) => isUnfinished(thing, solved.things[i]));
      if (unfinished >= 0) {
        const [fault] = Object.values(solved.faults);
        if (fault !== undefined) return refused(`Above the table: ${fault}`);
        return refused(unfinishedText(taping.things[unfinished] as Thing, solved.things[unfinished]));
      }
      const doubted = doubtText(taping, solved);
      if (doubted !== null) return refused(doubted);
      const [first] = added;
      if (!first && standing.length > 0) return refused("All that was taped is on the sheet already.");
      if (!first) return refused("There are not enough points to draw anything yet.");
      const words = added.length === 1 ? elementWords(first) : `${added.length} elements`;
      const drawn = withAdded(site, added, `Draw ${words} as taped`);
      if (!drawn.ok || accuracy === null) return drawn;
      const checked = checkedHead({ ...drawn.site, accuracy }, "accuracy", "Accuracy");
      return checked.ok && drawn.label !== undefined ? { ...checked, label: drawn.label } : checked;
    },
  };
}

/**
 * What the table draws on a site, and the names of what it has drawn there already: that is not drawn a second time, since
 * the table stays for what is taped next.
 */
export function tapedElements(
  site: Site,
  taping: Taping,
  solved: SolvedTaping,
): { readonly added: readonly KnownElement[]; readonly standing: readonly string[] } {
  const there = new Set(site.elements.map(placeKey));
  let grown = site;
  const added: KnownElement[] = [];
  const standing = new Set<string>();
  for (const [i, thing] of taping.things.entries()) {
    const { rows, path } = solved.things[i] ?? { rows: [], path: null };
    const fields = thing.name.trim() === "" ? {} : { name: thing.name.trim() };
    const points = drawableOf(thing.tool).as === "points" ? rows.flatMap(({ at }) => (at ? [{ point: at }] : [])) : [];
    for (const place of path ? [{ path }] : points) {
      const element = draft(grown, thing.tool, place, fields);
      if (there.has(placeKey(element))) {
        standing.add(calledThing(thing));
        continue;
      }
      added.push(element);
      grown = { ...grown, elements: [...grown.elements, element] };
    }
  }
  return { added, standing: [...standing] };
}

/** The kind of an element and where it lies. */
function placeKey(element: AnyElement): string {
  return JSON.stringify([element.kind, pointOf(element), pathRefs(element).map((ref) => pathOf(element, ref))]);
}

/** A thing that somebody began, and of which something would silently stay out: a row that cannot be read, too few points. */
function isUnfinished(thing: Thing, solved: SolvedThing | undefined): boolean {
  if (thing.rows.every((row) => row.isLeftOut || isEmptyRow(row))) return false;
  if (solved?.rows.some(({ faults }) => faults.length > 0)) return true;
  return drawableOf(thing.tool).as !== "points" ? !solved?.path : solved?.rows.every(({ at }) => at === null) === true;
}

/**
 * Nothing is drawn from distances that cannot all be true, or that hold a point so loosely that it may lie somewhere else:
 * the figures of the site would follow from a slip, or its accuracy say so little that all became a question.
 */
function doubtText(taping: Taping, solved: SolvedTaping): string | null {
  for (const [i, thing] of taping.things.entries()) {
    const { rows = [] } = solved.things[i] ?? {};
    const at = rows.findIndex(({ doubts }) => doubts.length > 0);
    const doubt = rows[at]?.doubts[0];
    if (doubt === undefined) continue;
    return `${calledThing(thing)}, point ${at + 1} is in doubt. ${doubt} Tape it again or leave it out; nothing is drawn yet.`;
  }
  return null;
}

function calledThing({ name, tool }: Thing): string {
  return name.trim() === "" ? drawableOf(tool).label : name.trim();
}

function unfinishedText(thing: Thing, solved: SolvedThing | undefined): string {
  const { as } = drawableOf(thing.tool);
  const name = calledThing(thing);
  const unread = solved?.rows.findIndex(({ faults }) => faults.length > 0) ?? -1;
  if (unread >= 0) return `${name}: point ${unread + 1} cannot be read. Mend it or leave it out; nothing is drawn yet.`;
  return `${name}: there are not enough points, at least ${as === "outline" ? "three" : "two"}. Nothing is drawn yet.`;
}
