/**
 * The JSON Schema (draft 2020-12) of the site file, made from the schemas that the reader itself uses, with the words
 * of the editor's forms as titles and descriptions. What a schema cannot say (an outline that crosses itself, an id
 * used twice) only the reader finds.
 */
import { z } from "zod";
import { elementSchemas, KINDS } from "./elements.ts";
import { type FieldLabel, SITE_LABELS } from "./field-labels.ts";
import { KIND_LABELS, labelOf } from "./field-list.ts";
import { openPath, outline, path, position, shape, vertex, zRange } from "./fields.ts";
import { headSchema, SITE_VERSION } from "./site.ts";

interface SchemaNote {
  id: string;
  description: string;
}

const OTHER_KIND = "other-kind";

/** An element of a kind that this version does not know. */
const otherKind = z.looseObject({ id: z.string().min(1), kind: z.string().min(1) });

const GEOMETRY_NOTES: readonly (readonly [z.ZodType, SchemaNote])[] = [
  [position, { id: "position", description: "[x, y], inches; x grows right, y grows up." }],
  [
    vertex,
    {
      id: "vertex",
      description:
        "[x, y] or [x, y, bulge]. The bulge shapes the edge that leaves the vertex: tangent of a quarter of the arc's included angle, positive counter-clockwise, 0 or absent for a straight edge. In an overhead line the third number is the height z, inches above the datum.",
    },
  ],
  [path, { id: "path", description: "An open or closed path. A closed path does not repeat its first vertex." }],
  [openPath, { id: "open-path", description: "An open path." }],
  [
    outline,
    {
      id: "outline",
      description:
        "A closed outline, in either direction. It does not repeat its first vertex and does not cross itself.",
    },
  ],
  [shape, { id: "shape", description: "A point, or a path: closed it is an area, unless `line` is true." }],
  [zRange, { id: "z-range", description: "[bottom, top], inches above the datum." }],
];

/** The published JSON Schema of a whole site file, as a plain JSON value. */
export function siteJsonSchema(): Record<string, unknown> {
  const notes = z.registry<SchemaNote>();
  for (const [schema, note] of GEOMETRY_NOTES) notes.add(schema, note);
  for (const kind of KINDS) notes.add(elementSchemas[kind], { id: kind, description: KIND_LABELS[kind].help });
  notes.add(otherKind, {
    id: OTHER_KIND,
    description: "A kind that this version does not know. It is kept, and the report asks about it.",
  });
  const document = headSchema.extend({
    elements: z.array(z.union([...KINDS.map((kind): z.ZodType => elementSchemas[kind]), otherKind])),
  });
  const schema = z.toJSONSchema(document, { metadata: notes, target: "draft-2020-12", io: "input" });
  const plain = JSON.parse(JSON.stringify(schema)) as JsonSchema;
  const definitions = plain.$defs ?? {};
  for (const kind of KINDS) {
    addWords(definitions[kind], (name) => labelOf(kind, name));
    Object.assign(definitions[kind] as JsonSchema, { title: KIND_LABELS[kind].label });
  }
  addWords(plain, (name) => SITE_LABELS[name] ?? null);
  addWords(plain.properties?.settings, (name) => SITE_LABELS[`settings.${name}`] ?? null);
  const other = definitions[OTHER_KIND]?.properties?.kind;
  if (other === undefined) throw new Error("The schema has lost its elements of other kinds.");
  other.not = { enum: [...KINDS] };
  const { $schema, ...rest } = plain;
  return {
    $schema,
    title: `Copperband site file, version ${SITE_VERSION}`,
    description:
      "A swimming pool and its yard. Lengths are inches, areas square inches, angles degrees; levels (z) are inches above the site's datum. Fields that are not required may be absent, which mostly means that they are not known. Unknown fields are kept.",
    ...rest,
  };
}

interface JsonSchema {
  $schema?: string;
  $defs?: Record<string, JsonSchema | undefined>;
  properties?: Record<string, JsonSchema | undefined>;
  title?: string;
  description?: string;
  not?: { enum: string[] };
}

/** Puts a form's words beside the properties of one object's schema. */
function addWords(schema: JsonSchema | undefined, words: (name: string) => FieldLabel | null): void {
  if (schema?.properties === undefined) throw new Error("The schema has lost the properties of an object.");
  for (const [name, property] of Object.entries(schema.properties)) {
    const found = words(name);
    if (property === undefined || found === null) continue;
    property.title = found.label;
    property.description = found.help;
  }
}

/** The text of the published schema file, ending with a line break. */
export function siteJsonSchemaText(): string {
  return `${JSON.stringify(siteJsonSchema(), null, 2)}\n`;
}
