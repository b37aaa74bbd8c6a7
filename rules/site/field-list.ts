/**
 * The fields of every kind as a form needs them: type, unit, options, whether required, what absence means, and plain
 * words. Types, options and limits are read off the schemas; only the words come from a table.
 */
import type { z } from "zod";
import { ABSENT_MEANS, DEFAULT_GRADE, DEFAULT_SETTINGS, DEFAULT_WATER_LEVEL } from "./defaults.ts";
import { elementSchemas, type Kind } from "./elements.ts";
import { definition, isOptional, limitsOf, unwrapped } from "./expected.ts";
import { FIELD_LABELS, type FieldLabel, type Measure, SITE_LABELS } from "./field-labels.ts";
import { openPath, outline, outlines, path, position, shape, zRange } from "./fields.ts";
import { optionLabel } from "./kind-labels.ts";
import { headSchema, settingsSchema } from "./site.ts";

export { geometryField } from "./geometry-fields.ts";
export { KIND_LABELS, type KindLabel } from "./kind-labels.ts";

/**
 * What a field holds. `number` has no unit; `length`, `area`, `count`, `amps`, `volts` and `gauge` are numbers (a
 * `gauge` may also be a text); `level` is a height above the datum, `level-range` [bottom, top], `level-or-range`
 * either. `element` is the id of an element, `elements` a list of ids.
 */
export type FieldType =
  | "text"
  | "flag"
  | "choice"
  | "number"
  | Measure
  | "level-range"
  | "level-or-range"
  | "lengths"
  | "element"
  | "elements"
  | "position"
  | "path"
  | "outline"
  | "outlines"
  | "shape";

/** What it means that the field is absent: it may not be; nothing is known; a value is taken; there is none. */
export type Absence =
  | { readonly means: "required" }
  | { readonly means: "unknown" }
  | { readonly means: "default"; readonly value: boolean | number | string | readonly number[] }
  | { readonly means: "none" };

export interface Field {
  readonly name: string;
  readonly type: FieldType;
  readonly unit: "in." | "sq in." | "A" | "V" | "AWG" | "degrees" | null;
  readonly required: boolean;
  readonly absent: Absence;
  /** Required beside id and geometry: it says which sort of its kind an element is. */
  readonly isTypeField: boolean;
  readonly isGeometry: boolean;
  /** Of a `choice`: the only values it takes. */
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** Of free text: what it usually holds. */
  readonly suggestions: readonly string[];
  readonly least: number | null;
  readonly most: number | null;
  readonly label: string;
  readonly help: string;
}

const UNITS: Partial<Record<FieldType, Field["unit"]>> = {
  length: "in.",
  lengths: "in.",
  level: "in.",
  "level-range": "in.",
  "level-or-range": "in.",
  area: "sq in.",
  amps: "A",
  volts: "V",
  gauge: "AWG",
};

const GEOMETRY: ReadonlySet<FieldType> = new Set(["position", "path", "outline", "outlines", "shape"]);

/** Fields that are simply not there when absent. */
const NONE_WHEN_ABSENT: ReadonlySet<string> = new Set(["name", "islands", "holes"]);

/** Every field of a kind in the order of its schema, without `kind` itself. */
export function fieldsOf(kind: Kind): readonly Field[] {
  return lists[kind];
}

/** One field of a kind, or null when the kind has none of that name. */
export function fieldOf(kind: Kind, name: string): Field | null {
  return lists[kind].find((field) => field.name === name) ?? null;
}

/** The fields that say which sort of its kind an element is: none, one, or two for a pool (its body first, then its shell). */
export function typeFieldsOf(kind: Kind): readonly Field[] {
  return lists[kind].filter((field) => field.isTypeField);
}

/**
 * The words for a field of a kind; null when the table lacks them. A kind that is not known, as a site may hold, or none
 * (the site itself) has the words that fields of every kind share.
 */
export function labelOf(kind: string | undefined, name: string): FieldLabel | null {
  return (kind === undefined ? undefined : FIELD_LABELS[`${kind}.${name}`]) ?? FIELD_LABELS[name] ?? null;
}

function fieldList(kind: Kind): Field[] {
  const fields: Field[] = [];
  for (const [name, schema] of Object.entries<z.ZodType>(elementSchemas[kind].shape)) {
    if (name === "kind") continue;
    const label = labelOf(kind, name);
    if (label === null) throw new Error(`The field "${name}" of "${kind}" has no label.`);
    const field = fieldFrom(name, `${kind}.${name}`, schema, label);
    fields.push({ ...field, isTypeField: field.required && !field.isGeometry && name !== "id" });
  }
  return fields;
}

function fieldFrom(name: string, key: string, schema: z.ZodType, label: FieldLabel): Field {
  const inner = unwrapped(schema);
  const type = typeOf(inner, label);
  const required = !isOptional(schema);
  const def = definition(inner);
  const values = def.type === "enum" ? Object.values(def.entries).map(String) : [];
  const { least, most } = limitsOf(inner);
  return {
    name,
    type,
    unit: name === "north" ? "degrees" : (UNITS[type] ?? null),
    required,
    absent: required ? { means: "required" } : absenceOf(key),
    isTypeField: false,
    isGeometry: GEOMETRY.has(type),
    options: values.map((value) => ({ value, label: optionLabel(value, key) })),
    suggestions: label.suggestions ?? [],
    least: def.type === "number" ? least : null,
    most: def.type === "number" ? most : null,
    label: label.label,
    help: label.help,
  };
}

function typeOf(schema: z.core.$ZodType, label: FieldLabel): FieldType {
  if (schema === position) return "position";
  if (schema === outline) return "outline";
  if (schema === outlines) return "outlines";
  if (schema === path || schema === openPath) return "path";
  if (schema === shape) return "shape";
  if (schema === zRange) return "level-range";
  const def = definition(schema);
  switch (def.type) {
    case "boolean":
      return "flag";
    case "enum":
      return "choice";
    case "number":
      return label.measure ?? "number";
    case "string":
      return label.refersTo ?? "text";
    case "array":
      return label.refersTo ? "elements" : "lengths";
    case "union":
      if (def.options.includes(zRange)) return "level-or-range";
      return label.measure ?? (label.refersTo ? "elements" : "text");
    default:
      throw new Error(`No form can show a schema of type ${def.type}.`);
  }
}

function absenceOf(key: string): Absence {
  const [owner, name = owner] = key.split(".") as [string, string | undefined];
  if (owner === "settings" && Object.hasOwn(DEFAULT_SETTINGS, name)) {
    return { means: "default", value: DEFAULT_SETTINGS[name as keyof typeof DEFAULT_SETTINGS] };
  }
  if (Object.hasOwn(ABSENT_MEANS, name)) {
    return { means: "default", value: ABSENT_MEANS[name as keyof typeof ABSENT_MEANS] };
  }
  if (name === "waterLevel") return { means: "default", value: DEFAULT_WATER_LEVEL };
  if (key === "grade") return { means: "default", value: DEFAULT_GRADE };
  if (key === "accuracy") return { means: "default", value: 0 };
  return { means: NONE_WHEN_ABSENT.has(name) ? "none" : "unknown" };
}

/** The fields of the site itself; those of its settings are named `settings.ringOffset` and so on. */
export function siteFields(): readonly Field[] {
  const fields: Field[] = [];
  for (const [key, label] of Object.entries(SITE_LABELS)) {
    const name = key.replace("settings.", "");
    const owner: Record<string, z.ZodType> = key === name ? headSchema.shape : settingsSchema.shape;
    const schema = owner[name];
    if (schema === undefined) throw new Error(`The site has no field "${key}".`);
    fields.push({ ...fieldFrom(key, key, schema, label) });
  }
  return fields;
}

const lists = Object.fromEntries(
  (Object.keys(elementSchemas) as Kind[]).map((kind) => [kind, fieldList(kind)]),
) as unknown as Readonly<Record<Kind, readonly Field[]>>;
