// Common practice, no source: the house's own rules of who may import whom, set out in DEVELOPERS.md.
import { describe, expect, it } from "vitest";
import { importProblems, importsOf } from "./import-rules.ts";
import { projectFiles, sourcesUnder } from "./tree.ts";

const longestFile = 350;
const topLevel =
  /^(package\.json|package-lock\.json|tsconfig\.json|vite\.config\.ts|README\.md|DEVELOPERS\.md|LICENSE|app|geometry|rules|tests|demo-sites|\..*)$/;

describe("the project", () => {
  it("imports only as the house allows", () => {
    const sources = sourcesUnder("app", "geometry", "rules");
    expect(sources.size).toBeGreaterThan(0);
    expect(importProblems(sources)).toEqual([]);
  });

  it("has no file too long to read", () => {
    const lengths = [...sourcesUnder("app", "geometry", "rules", "tests")].map(
      ([file, text]) => [file, text.trimEnd().split("\n").length] as const,
    );
    expect(lengths.filter(([, lines]) => lines > longestFile)).toEqual([]);
  });

  it("has nothing at its top but the agreed names", () => {
    const names = new Set(projectFiles().map((file) => file.split("/")[0] ?? ""));
    expect([...names].filter((name) => !topLevel.test(name))).toEqual([]);
  });
});

/** Problems of a small invented project, given as file -> text. */
const check = (files: Record<string, string>) => importProblems(new Map(Object.entries(files)));

describe("the import checker", () => {
  it("reads every way of importing", () => {
    const text = `
      import type { A } from "./a.ts"; import { type B, c } from "./b.ts"; import "./c.css";
      import * as d from "d"; import e from "e"; export { f } from "./f.ts"; export * from "./g.ts";
      import { type H } from "./h.ts"; export type { I } from "./i.ts";
      const j = await import("./j.ts"); type K = import("./k.ts").K;`;
    const found = importsOf("app/x.ts", text);
    expect(found.map((one) => one.specifier.match(/[a-z]/)?.[0]).join("")).toBe("abcdefghijk");
    const erased = found.filter((one) => one.erased).map((one) => one.specifier);
    expect(erased).toEqual(["./a.ts", "./h.ts", "./i.ts", "./k.ts"]);
    expect(found.filter((one) => one.whole).map((one) => one.specifier)).toEqual(["d", "e", "./g.ts"]);
    expect(found[1]?.file).toBe("app/b.ts");
  });

  it("accepts a sound project", () => {
    expect(
      check({
        "geometry/types.ts": "export type P = 1;",
        "geometry/clipping.ts": 'import { Clipper } from "clipper2-ts"; import type { P } from "./types.ts";',
        "rules/need.ts":
          'import { z } from "zod"; import { P } from "../geometry/types.ts"; import { bbox } from "@turf/turf";',
        "app/canvas/sheet.tsx": 'import { Stage } from "react-konva"; import "./sheet.css";',
        "app/editor.ts": 'import "./ports.ts"; export type Editor = 1;',
        "app/ports.ts": 'import type { Editor } from "./editor.ts";',
        "app/command-line/main.ts":
          'import "node:fs"; import "../../rules/need.ts"; import { createStore } from "zustand/vanilla";',
      }),
    ).toEqual([]);
  });

  const bad: [string, Record<string, string>, RegExp][] = [
    [
      "geometry reaching up",
      { "geometry/a.ts": 'import "../rules/b.ts";', "rules/b.ts": "" },
      /may import only geometry/,
    ],
    ["rules reaching up", { "rules/a.ts": 'import "../app/b.ts";', "app/b.ts": "" }, /may import only rules, geometry/],
    ["a type reaching up", { "rules/a.ts": 'type B = import("../app/b.ts").B;', "app/b.ts": "" }, /may import only/],
    ["the app using tests", { "app/a.ts": 'import "../tests/b.ts";', "tests/b.ts": "" }, /app may import only/],
    ["react in rules", { "rules/a.ts": 'import { useState } from "react";' }, /only the packages/],
    ["node in geometry", { "geometry/a.ts": 'import { readFileSync } from "node:fs";' }, /only the packages/],
    ["node by its bare name", { "rules/a.ts": 'import { readFileSync } from "fs";' }, /only the packages/],
    ["zod in geometry", { "geometry/a.ts": 'import { z } from "zod";' }, /only the packages/],
    [
      "the canvas outside its folder",
      { "app/panels/a.tsx": 'import { Line } from "react-konva";' },
      /only app\/canvas/,
    ],
    [
      "a second clipping adapter",
      { "geometry/offset.ts": 'import { Clipper } from "clipper2-ts";' },
      /only geometry\/clipping/,
    ],
    ["turf as a whole", { "geometry/a.ts": 'import * as turf from "@turf/turf";' }, /by name/],
    ["a missing extension", { "rules/a.ts": 'import "./b";' }, /extension/],
    ["a missing file", { "rules/a.ts": 'import "./b.ts";' }, /no such file/],
    [
      "a circle",
      { "rules/a.ts": 'import "./b.ts";', "rules/b.ts": 'import "./c.ts";', "rules/c.ts": 'import "./a.ts";' },
      /rules\/a.ts -> rules\/b.ts -> rules\/c.ts -> rules\/a.ts/,
    ],
    [
      "a circle of what runs in app, one of its arrows late",
      { "app/a.ts": 'const b = await import("./b.ts");', "app/b.ts": 'import { a } from "./a.ts";' },
      /app\/a.ts -> app\/b.ts -> app\/a.ts/,
    ],
    [
      "react reached from the command line",
      {
        "app/command-line/main.ts": 'import "../panels/a.tsx";',
        "app/panels/a.tsx": 'import { useState } from "react";',
      },
      /main.ts -> app\/panels\/a.tsx -> react/,
    ],
    [
      "the store's react half reached from a worker",
      { "app/workers/w.ts": 'import "../store.ts";', "app/store.ts": 'import { create } from "zustand";' },
      /w.ts -> app\/store.ts -> zustand/,
    ],
  ];
  it.each(bad)("finds %s", (_name, files, expected) => {
    const problems = check(files);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(expected);
  });

  it("stops at an import that it cannot read", () => {
    expect(() => check({ "app/a.ts": "const name = 'b'; await import(name);" })).toThrow(/app\/a.ts.*computed/);
    expect(() => check({ "app/a.ts": "import {" })).toThrow(/app\/a.ts/);
  });
});
