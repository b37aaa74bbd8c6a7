// Common practice, no source: what a stranger's copy of the project must not hold. The words that are looked for are put
// together from parts, so that this file does not find itself.
import { describe, expect, it } from "vitest";
import { projectFiles, textOf } from "./tree.ts";

const machinePath = /(?<![\w.:/-])\/(?:work|root|tmp|home|Users)\/[\w.-]/;
const lockedHost = /"resolved":\s*"https?:/;
const mark = new RegExp(
  `\\b(?:${["TO" + "DO", "FIX" + "ME", "XX" + "X", "HA" + "CK", "lor" + "em", "st" + "ub"].join("|")})\\b`,
);
const swallowed = /catch\s*(?:\([^)]*\))?\s*\{\s*\}/;
const setAside = /\b(?:it|test|describe)\.(?:skip|only|todo|fails)\b/;

const isText = (file: string) => !/\.(png|jpe?g|webp|woff2?|ttf|pdf|ico)$/.test(file);
const inFolders = (file: string) => /^(app|geometry|rules|tests)\//.test(file);

/** Each line of the given files that the pattern finds, as file:line: text. */
function linesWith(pattern: RegExp, files: string[]): string[] {
  return files.flatMap((file) =>
    textOf(file)
      .split("\n")
      .flatMap((line, index) => (pattern.test(line) ? [`${file}:${index + 1}: ${line.trim()}`] : [])),
  );
}

describe("the words of the project", () => {
  const files = projectFiles().filter(isText);

  it("name no path of one machine", () => {
    expect(
      linesWith(
        machinePath,
        files.filter((file) => file !== "package-lock.json"),
      ),
    ).toEqual([]);
  });

  it("name no host in the lock file", () => {
    expect(linesWith(lockedHost, ["package-lock.json"])).toEqual([]);
  });

  it("leave no mark of unfinished work", () => {
    expect(linesWith(mark, files.filter(inFolders))).toEqual([]);
  });

  it("swallow no error and set no test aside", () => {
    expect(linesWith(swallowed, files.filter(inFolders))).toEqual([]);
    expect(linesWith(setAside, files.filter(inFolders))).toEqual([]);
  });
});

describe("the patterns", () => {
  it.each([
    [machinePath, `"/ro${"ot"}/site.json"`, `../ro${"ot"}/site.json or https://example.invalid/home/page`],
    [lockedHost, '"resolved": "https://host.invalid/a.tgz"', '"resolved": "packages/a"'],
    [mark, `// TO${"DO"} later`, "a stubborn bolt"],
    [swallowed, `try { a() } ca${"tch"} (error) {}`, "catch (error) { report(error) }"],
    [setAside, `it.sk${"ip"}("x")`, "it.each([])"],
  ])("%s finds what it is for and nothing near it", (pattern, found, left) => {
    expect(pattern.test(found)).toBe(true);
    expect(pattern.test(left)).toBe(false);
  });
});
