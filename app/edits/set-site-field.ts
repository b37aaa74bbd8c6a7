/** Fields of the site itself and of its settings, by the names of `siteFields()` (`grade`, `settings.ringOffset`). */
import { schemaProblems } from "../../rules/site/element-check.ts";
import { siteFields } from "../../rules/site/field-list.ts";
import { headSchema, type Site } from "../../rules/site/site.ts";
import { type Edit, type EditResult, refused } from "./edit.ts";
import { lowerFirst, sameValue } from "./set-field.ts";

const LABELS: Readonly<Record<string, string>> = {
  ...Object.fromEntries(siteFields().map((field) => [field.name, field.label])),
  "display.units": "Units",
  position: "Place on the earth",
};

/**
 * Sets a field of the site: `name`, `grade`, `accuracy`, `north`, `edition`, `position`, `display.units` or
 * `settings.<name>`; `undefined` takes it away.
 */
export function setSiteField(field: string, value: unknown): Edit {
  const label = LABELS[field];
  const verb = value === undefined ? "Clear" : "Set";
  return {
    label: field === "name" ? "Rename the site" : `${verb} ${lowerFirst(label ?? "a field")} of the site`,
    apply(site) {
      if (label === undefined) return refused(`The site has no field "${field}".`, null, field);
      const [owner, name] = field.split(".") as [string, string | undefined];
      const outer = site as Readonly<Record<string, unknown>>;
      const before = name === undefined ? outer[owner] : (outer[owner] as Record<string, unknown> | undefined)?.[name];
      if (sameValue(before, value)) return { ok: true, site };
      const inner = name === undefined ? value : withoutEmpty(put(outer[owner] as object | undefined, name, value));
      return checkedHead(put(site, owner, inner) as Site, field, label);
    },
  };
}

/** Sets one of the plan's settings (`ringOffset`, `ties`...), in the file's own units; `undefined` gives back its default. */
export function setSetting(name: string, value: unknown): Edit {
  return setSiteField(`settings.${name}`, value);
}

/** The edited site, or a refusal when the document around its elements could not be read again. */
export function checkedHead(site: Site, field: string, label: string): EditResult {
  const { elements: _, ...head } = site;
  const result = headSchema.safeParse(head);
  if (result.success) return { ok: true, site };
  const [problem] = schemaProblems(result.error.issues, headSchema, head);
  if (!problem) throw new Error("A schema refused a site without saying why.");
  return refused(`${label} has to be ${problem.expected}; it cannot be ${problem.got}.`, null, field);
}

function put(owner: object | undefined, name: string, value: unknown): object {
  const fields: Record<string, unknown> = { ...owner, [name]: value };
  if (value === undefined) delete fields[name];
  return fields;
}

function withoutEmpty(owner: object): object | undefined {
  return Object.keys(owner).length === 0 ? undefined : owner;
}
