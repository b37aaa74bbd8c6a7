import { isKnownKind } from "../../rules/site/element-check.ts";
import { fieldOf } from "../../rules/site/field-list.ts";
import { gone, withChecked } from "./checked.ts";
import { type AnyElement, type Edit, refused } from "./edit.ts";
import { calledAs, elementWords } from "./element-words.ts";

/** Sets one field of an element, in the file's own units; `undefined` takes it away (it is not known, or its default). */
export function setField(id: string, field: string, value: unknown): Edit {
  return {
    label: "Change a field",
    apply(site) {
      const element = site.elements.find((candidate) => candidate.id === id);
      if (!element) return gone(id);
      if (field === "id" || field === "kind") return refused(`The ${field} of an element stays as it is.`, id, field);
      const known = isKnownKind(element.kind) ? fieldOf(element.kind, field) : null;
      if (!known && field !== "name") {
        return refused(`${calledAs(element)} has no field "${field}" that this version could change.`, id, field);
      }
      if (value === undefined && known?.required) {
        return refused(`${known.label} of ${elementWords(element)} has to be given.`, id, field);
      }
      if (field === "name" && value !== undefined && typeof value !== "string")
        return refused("A name is a text.", id, field);
      if (sameValue((element as Readonly<Record<string, unknown>>)[field], value)) return { ok: true, site };
      const what = known ? lowerFirst(known.label) : field;
      const verb = value === undefined ? "Clear" : "Set";
      return withChecked(site, withField(element, field, value), `${verb} ${what} of ${elementWords(element)}`);
    },
  };
}

function withField(element: AnyElement, field: string, value: unknown): AnyElement {
  const fields: Record<string, unknown> = { ...element, [field]: value };
  if (value === undefined) delete fields[field];
  return fields as unknown as AnyElement;
}

/** Equal as the file writes them. */
export function sameValue(a: unknown, b: unknown): boolean {
  return Object.is(a, b) || (a !== undefined && b !== undefined && JSON.stringify(a) === JSON.stringify(b));
}

/** `Largest dimension` inside a sentence; words of capitals (`GFCI`) stay. */
export function lowerFirst(label: string): string {
  return /^[A-Z][A-Z]/.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1);
}
