/** Local amendments: a number of the code that the authority having jurisdiction has changed. */
import type { Parameter, ParameterValue } from "../../rules/editions/edition.ts";
import { EDITION_WHEN_UNNAMED, EDITIONS, editionInForce } from "../../rules/editions/in-force.ts";
import type { ParameterId } from "../../rules/editions/parameter-types.ts";
import type { Amendment, Site } from "../../rules/site/site.ts";
import { type Edit, refused } from "./edit.ts";
import { checkedHead } from "./set-site-field.ts";

/** Puts an amendment in force, in place of any earlier one of the same parameter. It has to say where it comes from. */
export function setAmendment(parameter: string, value: ParameterValue, reason: string): Edit {
  return {
    label: `Amend ${sectionOf(parameter)}`,
    apply(site) {
      const said = reason.trim();
      if (said === "")
        return refused("Name the ordinance or the authority that an amendment comes from.", null, "amendments");
      const amendment = { parameter, value: Array.isArray(value) ? [...value] : value, reason: said } as Amendment;
      const alone: Site = { ...site, amendments: [amendment] };
      const [useless] = editionInForce(alone).useless;
      if (useless)
        return refused(`This amendment of ${sectionOf(parameter)} cannot act: ${useless.reason}.`, null, "amendments");
      const others = (site.amendments ?? []).filter((other) => other.parameter !== parameter);
      return checkedHead({ ...site, amendments: [...others, amendment] }, "amendments", "The amendment");
    },
  };
}

/** Takes an amendment out of force. */
export function removeAmendment(parameter: string): Edit {
  return {
    label: `Take back the amendment of ${sectionOf(parameter)}`,
    apply(site) {
      const amendments = (site.amendments ?? []).filter((other) => other.parameter !== parameter);
      if (amendments.length === (site.amendments ?? []).length) {
        return refused(`No amendment of ${sectionOf(parameter)} is in force.`, null, "amendments");
      }
      if (amendments.length > 0) return { ok: true, site: { ...site, amendments } };
      const { amendments: _, ...rest } = site;
      return { ok: true, site: rest as Site };
    },
  };
}

/** Where the code has a number: `680.26(B)(7)`; a name that no edition holds stands as it is. */
function sectionOf(parameter: string): string {
  const { parameters } = EDITIONS[EDITION_WHEN_UNNAMED];
  if (!Object.hasOwn(parameters, parameter)) return `"${parameter}"`;
  const { section }: Parameter = parameters[parameter as ParameterId];
  return section;
}
