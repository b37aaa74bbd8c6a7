/** What a schema expects, in plain words, so that a refusal never shows the validator's own wording. */
import type { z } from "zod";
import { openPath, outline, outlines, path, position, shape, vertex, zRange } from "./fields.ts";
import { either } from "./refusal.ts";

type AnySchema = z.core.$ZodType;

/** Schemas that have a name people know better than their parts. */
const NAMED = new Map<AnySchema, string>([
  [position, "[x, y]"],
  [vertex, "[x, y] or [x, y, bulge]"],
  [path, 'a path {"vertices": [...], "closed": true or false}'],
  [openPath, 'an open path {"vertices": [...], "closed": false}'],
  [outline, 'a closed outline {"vertices": [...], "closed": true}'],
  [outlines, "a list of closed outlines"],
  [shape, 'a path {"vertices": [...], "closed": true or false} or {"point": [x, y]}'],
  [zRange, "[bottom, top]"],
]);

/** A schema without its "may be absent" wrapping. */
export function unwrapped(schema: AnySchema): AnySchema {
  const def = definition(schema);
  return def.type === "optional" ? unwrapped(def.innerType) : schema;
}

/** True when the field may be left out. */
export function isOptional(schema: AnySchema): boolean {
  return definition(schema).type === "optional";
}

/** The definition of a schema, discriminated by `type`. */
export function definition(schema: AnySchema): z.core.$ZodTypes["_zod"]["def"] {
  return (schema as z.core.$ZodTypes)._zod.def;
}

/** The least and the greatest number (or length of a text) that a schema takes, null where it sets no limit. */
export function limitsOf(schema: AnySchema): { least: number | null; above: number | null; most: number | null } {
  const limits: { least: number | null; above: number | null; most: number | null } = {
    least: null,
    above: null,
    most: null,
  };
  const def = definition(schema);
  for (const check of ("checks" in def && def.checks) || []) {
    const rule = (check as z.core.$ZodChecks)._zod.def;
    if (rule.check === "min_length") limits.least = rule.minimum;
    else if (rule.check === "less_than") limits.most = Number(rule.value);
    else if (rule.check === "greater_than" && rule.inclusive) limits.least = Number(rule.value);
    else if (rule.check === "greater_than") limits.above = Number(rule.value);
  }
  return limits;
}

function written(value: number): string {
  return value.toLocaleString("en-US");
}

/** What the schema expects, as words that fit after "expected". */
export function expectedBy(schema: AnySchema): string {
  const named = NAMED.get(schema);
  if (named !== undefined) return named;
  const def = definition(schema);
  switch (def.type) {
    case "optional":
      return expectedBy(def.innerType);
    case "boolean":
      return "true or false";
    case "null":
      return "null";
    case "string":
      return (limitsOf(schema).least ?? 0) > 0 ? "a text that is not empty" : "a text";
    case "number": {
      const { least, above, most } = limitsOf(schema);
      if (above !== null && most !== null) return `a number above ${written(above)}, up to ${written(most)}`;
      if (least !== null && most !== null) return `a number from ${written(least)} to ${written(most)}`;
      return "a number";
    }
    case "enum":
      return either(Object.values(def.entries).map((value) => JSON.stringify(value)));
    case "literal":
      return either(def.values.map((value) => JSON.stringify(value)));
    case "array":
      return `a list, each ${expectedBy(def.element)}`;
    case "tuple":
      return `[${def.items.map(expectedBy).join(", ")}]`;
    case "union":
      return either(def.options.map(expectedBy));
    case "object":
      return "an object";
    default:
      return `a value of type ${def.type}`;
  }
}

/**
 * The schema that a place inside a value has to fit; where the place leads into a choice of schemas or outside what
 * the schema names, the last one found on the way.
 */
export function schemaAt(root: AnySchema, place: readonly PropertyKey[]): AnySchema {
  let schema = unwrapped(root);
  for (const step of place) {
    const def = definition(schema);
    let next: AnySchema | undefined;
    if (def.type === "object" && Object.hasOwn(def.shape, step)) next = def.shape[step as string];
    else if (def.type === "array") next = def.element;
    else if (def.type === "tuple" && typeof step === "number") next = def.items[step];
    if (next === undefined) return schema;
    schema = unwrapped(next);
  }
  return schema;
}
