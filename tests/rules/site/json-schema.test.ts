import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { siteJsonSchema, siteJsonSchemaText } from "../../../rules/site/json-schema.ts";
import { checkSite } from "../../../rules/site/reader.ts";
import { sample, sampleWith } from "./sample-site.ts";

const cases = new URL("../../fixtures/cases/", import.meta.url);
const demos = new URL("../../../demo-sites/", import.meta.url);
const validate = new Ajv2020({ strict: true, strictTypes: false, allErrors: false }).compile(siteJsonSchema());

function siteFiles(folder: URL): URL[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith(".site.json"))
    .map((name) => new URL(name, folder));
}

describe("the published JSON Schema", () => {
  it("is in step with the schemas of the reader (npm run schema rewrites it)", () => {
    expect(readFileSync(new URL("site.schema.json", demos), "utf8")).toBe(siteJsonSchemaText());
  });

  it.each([...siteFiles(cases), ...siteFiles(demos)])("takes %s", (file) => {
    validate(JSON.parse(readFileSync(file, "utf8")));
    expect(validate.errors ?? []).toEqual([]);
  });

  it("takes a site of every kind, unknown fields and an unknown kind", () => {
    validate(sample());
    expect(validate.errors ?? []).toEqual([]);
  });

  // Wrong in a way that a schema can tell: it has to agree with the reader.
  it.each([
    ["version", { ...sample(), version: 2 }],
    ["format", { ...sample(), format: "other" }],
    ["elements", { ...sample(), elements: {} }],
    ["display", { ...sample(), display: { units: "furlong" } }],
    ["kind", sampleWith("statue-1", { kind: undefined })],
    ["id", sampleWith("statue-1", { id: "" })],
    ["body", sampleWith("pool-1", { body: "lake" })],
    ["no type field", sampleWith("pool-1", { shell: undefined })],
    ["no joins", sampleWith("tie-1", { joins: undefined })],
    [
      "open outline",
      sampleWith("tree-1", {
        outline: {
          vertices: [
            [0, 0],
            [1, 0],
            [0, 1],
          ],
          closed: false,
        },
      }),
    ],
    [
      "long vertex",
      sampleWith("tree-1", {
        outline: {
          vertices: [
            [0, 0],
            [1, 0],
            [0, 1, 0, 0],
          ],
          closed: true,
        },
      }),
    ],
    ["far away", sampleWith("pump-1", { at: [0, 1e7] })],
    ["flag", sampleWith("fence-1", { metal: "yes" })],
    ["shape", sampleWith("pole-1", { shape: {} })],
    ["unknown kind by the name of a known one", sampleWith("pump-1", { unit: undefined })],
  ])("refuses what the reader refuses: %s", (_, document) => {
    const plain: unknown = JSON.parse(JSON.stringify(document));
    expect(checkSite(plain).ok).toBe(false);
    expect(validate(plain)).toBe(false);
  });

  it("says in plain words what each field of each kind is", () => {
    const schema = siteJsonSchema() as {
      $defs: Record<string, { properties?: Record<string, { description?: string }> }>;
    };
    const pool = schema.$defs.pool?.properties ?? {};
    expect(Object.keys(pool)).toContain("normalWaterLevel");
    for (const [name, property] of Object.entries(pool)) if (name !== "kind") expect(property.description).toBeTruthy();
  });
});
