/** The fields for forms. Sources: the schemas (this project's), and the site format's own list of what absence means. */
import { describe, expect, it } from "vitest";
import { elementSchemas, KINDS, type Kind } from "../../../rules/site/elements.ts";
import { FIELD_LABELS } from "../../../rules/site/field-labels.ts";
import {
  type Field,
  fieldOf,
  fieldsOf,
  geometryField,
  KIND_LABELS,
  siteFields,
  typeFieldsOf,
} from "../../../rules/site/field-list.ts";

const all = KINDS.flatMap((kind) => fieldsOf(kind).map((field) => ({ kind, field })));

function field(kind: Kind, name: string): Field {
  const found = fieldOf(kind, name);
  if (found === null) throw new Error(`No field ${kind}.${name}`);
  return found;
}

describe("the list of fields", () => {
  it("has every field of every schema, in order, but the kind", () => {
    for (const kind of KINDS) {
      const names = Object.keys(elementSchemas[kind].shape).filter((name) => name !== "kind");
      expect(fieldsOf(kind).map((item) => item.name)).toEqual(names);
    }
  });

  it("uses every entry of the table of labels", () => {
    const used = new Set(
      all.map(({ kind, field: { name } }) => (`${kind}.${name}` in FIELD_LABELS ? `${kind}.${name}` : name)),
    );
    expect(Object.keys(FIELD_LABELS).filter((key) => !used.has(key))).toEqual([]);
  });

  it("has words for every kind and field, the help a sentence that ends with a period", () => {
    for (const { label, plural, help } of Object.values(KIND_LABELS)) {
      expect(label && plural).toBeTruthy();
      expect(help).toMatch(/^[A-Z].*\.$/);
    }
    for (const { field: item } of all) {
      expect(item.label).toMatch(/^[A-Z][^.]*$/);
      expect(item.help).toMatch(/^[A-Z].*\.$/);
      for (const option of item.options) expect(option.label).toMatch(/^[A-Z]/);
    }
  });

  it("never uses one label twice in a kind", () => {
    for (const kind of KINDS) {
      const labels = fieldsOf(kind).map((item) => item.label);
      expect(new Set(labels).size).toBe(labels.length);
    }
  });

  it("names the type fields that the site format prints in bold", () => {
    const names = Object.fromEntries(
      KINDS.map((kind) => [
        kind,
        typeFieldsOf(kind)
          .map((item) => item.name)
          .join(" "),
      ]),
    );
    expect(names).toEqual({
      pool: "body shell",
      inset: "",
      surface: "material",
      building: "",
      wall: "",
      fence: "",
      opening: "opening",
      structure: "structure",
      metal: "",
      equipment: "unit",
      "underwater-light": "formingShell",
      device: "device",
      "overhead-line": "class",
      "underground-run": "method",
      "water-bond": "",
      conductor: "role",
      tie: "joins",
      "keep-out": "",
    });
  });

  it("says what absence means: the careful value where the format has one, otherwise unknown", () => {
    const values = new Map<string, unknown>();
    for (const { field: item } of all) if (item.absent.means === "default") values.set(item.name, item.absent.value);
    expect(Object.fromEntries(values)).toEqual({
      existing: false,
      lowVoltage: false,
      cordConnected: false,
      gasFired: false,
      doubleInsulated: false,
      listedLowVoltage: false,
      inPoolStructure: false,
      fixed: true,
      metalParts: true,
      servesWater: true,
      anchors: 1,
      waterLevel: 0,
    });
    expect(field("fence", "metal").absent).toEqual({ means: "unknown" });
    expect(field("pool", "normalWaterLevel").absent).toEqual({ means: "unknown" });
    expect(field("pool", "islands").absent).toEqual({ means: "none" });
    expect(field("pool", "body").absent).toEqual({ means: "required" });
  });

  it("knows types, units, limits and options", () => {
    expect(field("wall", "thickness")).toMatchObject({
      type: "length",
      unit: "in.",
      least: 0,
      most: 1e6,
      required: false,
    });
    expect(field("wall", "top")).toMatchObject({ type: "level", unit: "in.", least: -1e6 });
    expect(field("metal", "z")).toMatchObject({ type: "level-range", unit: "in." });
    expect(field("device", "z")).toMatchObject({ type: "level-or-range", unit: "in." });
    expect(field("metal", "wettedArea")).toMatchObject({ type: "area", unit: "sq in." });
    expect(field("equipment", "ratedAmps")).toMatchObject({ type: "amps", unit: "A" });
    expect(field("conductor", "awg")).toMatchObject({ type: "gauge", unit: "AWG" });
    expect(field("fence", "gates")).toMatchObject({ type: "count", unit: null });
    expect(field("fence", "metal")).toMatchObject({ type: "flag", unit: null });
    expect(field("tie", "joins")).toMatchObject({ type: "elements", required: true, suggestions: ["perimeter"] });
    expect(field("inset", "pool")).toMatchObject({ type: "element" });
    expect(field("device", "serves")).toMatchObject({ type: "elements" });
    expect(field("pool", "outline")).toMatchObject({ type: "outline", isGeometry: true, required: true });
    expect(field("pool", "islands")).toMatchObject({ type: "outlines", isGeometry: true, required: false });
    expect(field("opening", "path")).toMatchObject({ type: "path" });
    expect(field("metal", "shape")).toMatchObject({ type: "shape" });
    expect(field("equipment", "at")).toMatchObject({ type: "position" });
    expect(field("pool", "body").options.map((option) => option.value)).toEqual(["pool", "spa", "basin"]);
    expect(field("underground-run", "method").options[0]).toEqual({ value: "rmc", label: "Rigid metal conduit (RMC)" });
    expect(field("surface", "support").options[0]).toEqual({ value: "grade", label: "On the ground" });
    expect(fieldOf("pool", "kind")).toBeNull();
  });

  it("knows the one field of the geometry of each kind", () => {
    for (const kind of KINDS) expect(field(kind, geometryField(kind)).isGeometry).toBe(true);
    expect([geometryField("pool"), geometryField("wall"), geometryField("metal"), geometryField("tie")]).toEqual([
      "outline",
      "path",
      "shape",
      "at",
    ]);
  });
});

describe("the fields of the site", () => {
  it("have units and the defaults of the settings", () => {
    const fields = Object.fromEntries(siteFields().map((item) => [item.name, item]));
    expect(fields.grade).toMatchObject({ type: "level", unit: "in.", absent: { means: "default", value: 0 } });
    expect(fields.north).toMatchObject({ type: "number", unit: "degrees" });
    expect(fields["settings.ringOffset"]).toMatchObject({ type: "length", absent: { means: "default", value: 21 } });
    expect(fields["settings.spools"]).toMatchObject({
      type: "lengths",
      absent: { means: "default", value: [3780, 6000] },
    });
    expect(fields["settings.ringStyle"]).toMatchObject({ type: "choice", absent: { means: "default", value: "even" } });
  });
});
