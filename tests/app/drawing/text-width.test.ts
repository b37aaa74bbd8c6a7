// The widths of type are held against the font files themselves (format: OpenType cmap and hmtx tables in a WOFF 1.0 wrapper,
// W3C recommendation). Whoever changes the font package changes these numbers too.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { inflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { cutPoints, textPoints, wrapPoints } from "../../../app/drawing/text-width.ts";

/** The tables of a WOFF file by name. */
function tablesOf(file: Buffer): Map<string, Buffer> {
  const tables = new Map<string, Buffer>();
  for (let i = 0; i < file.readUInt16BE(12); i++) {
    const at = 44 + 20 * i;
    const name = file.toString("latin1", at, at + 4);
    const [offset, packed, whole] = [file.readUInt32BE(at + 4), file.readUInt32BE(at + 8), file.readUInt32BE(at + 12)];
    const data = file.subarray(offset, offset + packed);
    tables.set(name, packed < whole ? inflateSync(data) : data);
  }
  return tables;
}

/** Advance width of a character, thousandths of an em, through cmap format 4. */
function widthsOf(weight: number): (code: number) => number {
  const name = `@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-${weight}-normal.woff`;
  const tables = tablesOf(readFileSync(fileURLToPath(import.meta.resolve(name))));
  const table = (key: string): Buffer => {
    const found = tables.get(key);
    if (!found) throw new Error(`The font has no table "${key}".`);
    return found;
  };
  const cmap = table("cmap");
  const offsets = Array.from({ length: cmap.readUInt16BE(2) }, (_, i) => cmap.readUInt32BE(8 + 8 * i));
  const map = offsets.map((offset) => cmap.subarray(offset)).find((sub) => sub.readUInt16BE(0) === 4);
  if (!map) throw new Error("The font has no character map of format 4.");
  const count = map.readUInt16BE(6) / 2;
  const glyphOf = (code: number): number => {
    for (let i = 0; i < count; i++) {
      if (map.readUInt16BE(14 + 2 * i) < code) continue;
      const start = map.readUInt16BE(16 + 2 * (count + i));
      if (start > code) return 0;
      const delta = map.readUInt16BE(16 + 2 * (2 * count + i));
      const rangeAt = 16 + 2 * (3 * count + i);
      const range = map.readUInt16BE(rangeAt);
      if (range === 0) return (code + delta) & 0xffff;
      const glyph = map.readUInt16BE(rangeAt + range + 2 * (code - start));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };
  const units = table("head").readUInt16BE(18);
  const longMetrics = table("hhea").readUInt16BE(34);
  return (code) => (table("hmtx").readUInt16BE(4 * Math.min(glyphOf(code), longMetrics - 1)) * 1000) / units;
}

describe("the width of type", () => {
  for (const [weight, isStrong] of [
    [400, false],
    [600, true],
  ] as const) {
    it(`is that of the font, weight ${weight}`, () => {
      const widthOf = widthsOf(weight);
      const wrong: string[] = [];
      for (let code = 32; code < 127; code++) {
        const character = String.fromCharCode(code);
        if (Math.abs(textPoints(character, 1000, isStrong) - widthOf(code)) > 0.5) wrong.push(character);
      }
      expect(wrong).toEqual([]);
    });
  }

  it("adds up and grows with the size (arithmetic)", () => {
    expect(textPoints("ab", 10)).toBeCloseTo(textPoints("a", 10) + textPoints("b", 10), 12);
    expect(textPoints("ab", 20)).toBeCloseTo(2 * textPoints("ab", 10), 12);
  });

  it("bounds every wrapped line, and no word is lost", () => {
    const text =
      "Lay one bare solid copper conductor of 8 AWG or larger, 1' 6\" to 2' 0\" from the wall, andaverylongwordwithoutend";
    const lines = wrapPoints(text, 80, 6);
    for (const line of lines) expect(textPoints(line, 6)).toBeLessThanOrEqual(80);
    expect(lines.join("").replaceAll(" ", "")).toBe(text.replaceAll(" ", ""));
  });

  it("bounds a cut text, and says that it was cut", () => {
    const cut = cutPoints("A site with a name that is far too long", 60, 6);
    expect(cut.endsWith("...")).toBe(true);
    expect(textPoints(cut, 6)).toBeLessThanOrEqual(60);
    expect(cutPoints("Short", 60, 6)).toBe("Short");
  });
});
