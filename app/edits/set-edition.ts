import type { EditionId } from "../../rules/editions/edition.ts";
import { EDITIONS, isEditionId } from "../../rules/editions/in-force.ts";
import { type Edit, refused } from "./edit.ts";

/** Names the edition of the code that the permit falls under. Answers given under another edition lapse, visibly. */
export function setEdition(id: EditionId): Edit {
  const label = isEditionId(id) ? `Judge by ${EDITIONS[id].title}` : "Change the edition";
  return {
    label,
    apply(site) {
      if (!isEditionId(id)) return refused(`There is no edition "${String(id)}" in this program.`, null, "edition");
      return site.edition === id ? { ok: true, site } : { ok: true, site: { ...site, edition: id } };
    },
  };
}
