/** Deletes elements together with everything that only spoke of them. */
import type { Site } from "../../rules/site/site.ts";
import { withoutDimensionsOn } from "../dimensions/anchors.ts";
import { refuseLocked, withoutArranged } from "./arrangement.ts";
import { gone } from "./checked.ts";
import { type AnyElement, type Edit, refused } from "./edit.ts";
import { elementsWords } from "./element-words.ts";
import { idsWithOpenings } from "./place-elements.ts";

/**
 * Deletes elements, and the steps and ledges of the pools among them and the doors and windows of the walls, which the
 * label names. What names them lets go of them: the pool that a light belongs to, what a tie joins, what a device serves,
 * the answers about them and the dimensions on them. Undo brings it all back.
 */
export function deleteElements(ids: readonly string[]): Edit {
  return {
    label: "Delete",
    apply(site) {
      if (ids.length === 0) return refused("Nothing is selected to be deleted.");
      const chosen = new Set(ids);
      const deleted = site.elements.filter((element) => chosen.has(element.id));
      const missing = ids.find((id) => !deleted.some((element) => element.id === id));
      if (missing !== undefined) return gone(missing);
      const carried = carriedBy(site, chosen);
      const unwanted = new Set([...ids, ...carried.map(({ id }) => id)]);
      const refusal = refuseLocked(site, unwanted);
      if (refusal) return refusal;
      const left = site.elements.filter((element) => !unwanted.has(element.id));
      const elements = left.map((element) => withoutMentions(element, unwanted));
      return {
        ok: true,
        site: withoutDimensionsOn(
          withoutArranged(withAnswersLeft({ ...site, elements }, unwanted), unwanted),
          unwanted,
        ),
        label: `Delete ${elementsWords(deleted)}${carried.length === 0 ? "" : ` with ${elementsWords(carried)}`}`,
      };
    },
  };
}

/** What has no place without what is deleted: steps and ledges of a pool, doors and windows that lie in no other wall. */
function carriedBy(site: Site, chosen: ReadonlySet<string>): AnyElement[] {
  const along = new Set(idsWithOpenings(site, [...chosen]));
  const carried = site.elements.filter(({ id }) => along.has(id) && !chosen.has(id));
  if (!carried.some(({ kind }) => kind === "opening")) return carried;
  const hosts = site.elements.filter(({ id, kind }) => !chosen.has(id) && (kind === "wall" || kind === "building"));
  const ids = hosts.map(({ id }) => id);
  const held = new Set(idsWithOpenings(site, ids));
  return carried.filter(({ id }) => !held.has(id));
}

function withAnswersLeft(site: Site, deleted: ReadonlySet<string>): Site {
  if (!site.answers) return site;
  const answers = site.answers.filter(({ element }) => typeof element !== "string" || !deleted.has(element));
  return answers.length === site.answers.length ? site : { ...site, answers };
}

/** The element without mention of those ids; the same object when it mentions none. */
function withoutMentions(element: AnyElement, deleted: ReadonlySet<string>): AnyElement {
  const fields = element as Readonly<Record<string, unknown>>;
  const changed: Record<string, unknown> = { ...fields };
  if (typeof fields.pool === "string" && deleted.has(fields.pool)) delete changed.pool;
  const { joins, serves } = fields;
  if (Array.isArray(joins) && joins.some((id) => deleted.has(id)))
    changed.joins = joins.filter((id) => !deleted.has(id));
  if (Array.isArray(serves) && serves.some((id) => deleted.has(id))) {
    const rest = serves.filter((id) => !deleted.has(id));
    if (rest.length > 0) changed.serves = rest;
    else delete changed.serves;
  } else if (typeof serves === "string" && deleted.has(serves)) delete changed.serves;
  const same =
    Object.keys(changed).length === Object.keys(fields).length &&
    Object.keys(changed).every((key) => changed[key] === fields[key]);
  return same ? element : (changed as unknown as AnyElement);
}
