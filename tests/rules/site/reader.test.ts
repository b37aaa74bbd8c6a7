/** What the reader takes. Source of every expectation: the site format's own description (this project's contract). */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { KINDS } from "../../../rules/site/elements.ts";
import { checkSite, readSite } from "../../../rules/site/reader.ts";
import { SAMPLE_TEXT, sample, sampleWith } from "./sample-site.ts";

const cases = new URL("../../fixtures/cases/", import.meta.url);

describe("what is taken", () => {
  it("takes a site that holds every kind, and leaves every value as it is", () => {
    expect(new Set(sample().elements.map((element) => element.kind))).toEqual(new Set([...KINDS, "statue"]));
    const result = readSite(SAMPLE_TEXT);
    expect(result).toEqual({ ok: true, site: sample() });
  });

  it("keeps the order of keys and elements", () => {
    const result = readSite(SAMPLE_TEXT);
    if (!result.ok) throw new Error(result.refusal.message);
    expect(JSON.stringify(result.site)).toBe(JSON.stringify(sample()));
  });

  it("takes the smallest document", () => {
    expect(readSite('{"format":"copperband-site","version":1,"elements":[]}').ok).toBe(true);
  });

  it("passes over a byte order mark", () => {
    expect(readSite(`\uFEFF${SAMPLE_TEXT}`).ok).toBe(true);
  });

  it.each(readdirSync(cases).filter((name) => name.endsWith(".site.json")))("takes the published case %s", (name) => {
    const result = readSite(readFileSync(new URL(name, cases), "utf8"));
    expect(result.ok ? null : result.refusal).toBeNull();
  });

  it("leaves to the rules what rules judge: size, stranding, metal, hardware, joints", () => {
    const odd = { awg: "14 or so", solid: false, material: "gold", covering: "paint", joint: "glue", cover: -3 };
    expect(checkSite(sampleWith("ring-1", odd)).ok).toBe(true);
    expect(checkSite(sampleWith("tie-1", { hardware: "string", conductorsInClamp: 9 })).ok).toBe(true);
  });

  it("takes references to elements that are not there", () => {
    expect(checkSite(sampleWith("light-1", { pool: "gone" })).ok).toBe(true);
    expect(checkSite(sampleWith("tie-1", { joins: ["gone", "gone too"] })).ok).toBe(true);
  });

  it("takes every field but id, kind, geometry and type field as absent", () => {
    const outline = {
      vertices: [
        [0, 0],
        [10, 0],
        [0, 10],
      ],
      closed: true,
    };
    const line = {
      vertices: [
        [0, 0],
        [10, 0],
      ],
      closed: false,
    };
    const bare: Record<string, unknown>[] = [
      { kind: "pool", outline, body: "spa", shell: "unknown" },
      { kind: "inset", outline },
      { kind: "surface", outline, material: "lawn" },
      { kind: "building", outline },
      { kind: "wall", path: line },
      { kind: "fence", path: line },
      { kind: "opening", path: line, opening: "window" },
      { kind: "structure", outline, structure: "raft" },
      { kind: "metal", shape: line },
      { kind: "equipment", at: [0, 0], unit: "pump" },
      { kind: "underwater-light", at: [0, 0], formingShell: "none" },
      { kind: "device", at: [0, 0], device: "switch" },
      { kind: "overhead-line", path: line, class: "broadband" },
      { kind: "underground-run", path: line, method: "other" },
      { kind: "water-bond", at: [0, 0] },
      { kind: "conductor", path: line, role: "tail" },
      { kind: "tie", at: [0, 0], joins: [] },
      { kind: "keep-out", outline },
    ];
    expect(bare.map((element) => element.kind)).toEqual(KINDS);
    const elements = bare.map((element, i) => ({ id: `e${i}`, ...element }));
    const result = checkSite({ format: "copperband-site", version: 1, elements });
    expect(result.ok ? null : result.refusal.problems).toBeNull();
  });

  it("takes an outline of two vertices when an arc gives it area, in either direction", () => {
    for (const bulges of [
      [1, 1],
      [-1, -1],
      [0, 1],
      [0.5, 0],
      [-0.2, 0.7],
    ] as const) {
      const vertices = [
        [0, 0, bulges[0]],
        [100, 0, bulges[1]],
      ];
      const result = checkSite(sampleWith("tree-1", { outline: { vertices, closed: true } }));
      expect(result.ok ? null : result.refusal.problems).toBeNull();
    }
  });

  it("takes paths that cross themselves where they bound nothing", () => {
    const vertices = [
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ];
    for (const id of ["fence-1", "wall-1", "ring-1"]) {
      for (const closed of [true, false]) {
        expect(checkSite(sampleWith(id, { path: { vertices, closed } })).ok).toBe(true);
      }
    }
    expect(checkSite(sampleWith("rail-1", { shape: { vertices, closed: false } })).ok).toBe(true);
    expect(checkSite(sampleWith("rail-1", { shape: { vertices, closed: true, line: true } })).ok).toBe(true);
  });

  it("reads the third number of an overhead line as a height, whatever its size, and a vertical stretch as a length", () => {
    const vertices = [
      [0, 0, 400],
      [0, 0, 12],
      [900, 0, 300],
    ];
    expect(checkSite(sampleWith("wires-1", { path: { vertices, closed: false } })).ok).toBe(true);
  });
});

describe("names that mean something to JavaScript", () => {
  it("are names like any other", () => {
    const text = SAMPLE_TEXT.replace(
      '"grade": 0',
      '"__proto__": {"polluted": true}, "constructor": 5, "toString": null',
    )
      .replaceAll('"pole-1"', '"__proto__"')
      .replaceAll('"pump-1"', '"constructor"');
    const result = readSite(text);
    if (!result.ok) throw new Error(result.refusal.message);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect(Object.hasOwn(result.site, "__proto__")).toBe(true);
    expect(Object.getPrototypeOf(result.site)).toBe(Object.prototype);
  });

  it("are not kinds", () => {
    for (const kind of ["__proto__", "constructor", "toString", "hasOwnProperty"]) {
      expect(checkSite(sampleWith("statue-1", { kind })).ok).toBe(true);
    }
  });
});
