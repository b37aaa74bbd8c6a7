/** The program's icons, as drawing and pixels. Expectations are arithmetic on their shapes; the file form after ISO/IEC 15948. */
import { inflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { iconPixels, iconSvg } from "../../../app/offline/icon.ts";
import { pngOf } from "../../../app/offline/png.ts";

describe("the icon", () => {
  const SIZE = 64;
  const at = (pixels: Uint8Array, x: number, y: number) => [
    ...pixels.subarray((y * SIZE + x) * 4, (y * SIZE + x) * 4 + 4),
  ];

  it("has water in the middle, copper around it, and corners that are clear or filled", () => {
    const pixels = iconPixels(SIZE, false);
    expect(at(pixels, 32, 32)).toEqual([176, 214, 236, 255]);
    // The ring runs 0.335 of the side from the middle: at pixel 32 + 21.
    expect(at(pixels, 53, 32)).toEqual([179, 72, 0, 255]);
    // The wall stands 0.15 of the side below the middle.
    expect(at(pixels, 32, 41)).toEqual([24, 34, 43, 255]);
    expect(at(pixels, 0, 0)).toEqual([0, 0, 0, 0]);
    expect(at(pixels, 4, 32)).toEqual([252, 251, 247, 255]);
    expect(at(iconPixels(SIZE, true), 0, 0)).toEqual([252, 251, 247, 255]);
    expect(iconSvg()).toMatch(/^<svg .*<\/svg>$/);
  });

  it("is mirrored left to right and top to bottom", () => {
    const pixels = iconPixels(SIZE, false);
    for (const [x, y] of [
      [3, 9],
      [11, 20],
      [17, 31],
      [30, 22],
    ] as const) {
      expect(at(pixels, x, y)).toEqual(at(pixels, SIZE - 1 - x, y));
      expect(at(pixels, x, y)).toEqual(at(pixels, x, SIZE - 1 - y));
    }
  });
});

describe("a PNG file", () => {
  it("holds its size and every pixel", () => {
    const pixels = Uint8Array.from({ length: 3 * 2 * 4 }, (_, i) => i * 7);
    const file = Buffer.from(pngOf(pixels, 3, 2));
    expect([...file.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    expect([file.readUInt32BE(16), file.readUInt32BE(20)]).toEqual([3, 2]);
    const start = file.indexOf("IDAT") + 4;
    const rows = inflateSync(file.subarray(start, start + file.readUInt32BE(start - 8)));
    expect([...rows]).toEqual([0, ...pixels.subarray(0, 12), 0, ...pixels.subarray(12)]);
    // The check sum of the end, as every PNG file has it.
    expect(file.subarray(-4).toString("hex")).toBe("ae426082");
    expect(() => pngOf(pixels, 4, 2)).toThrow(RangeError);
  });
});
