/** Where a picture lies from two places on it. Source: plane geometry (a similarity has two fixed places). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { setUnderlay } from "../../../app/edits/set-underlay.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import { placeOf, placeUnderlay } from "../../../app/underlay/place-underlay.ts";
import { POINTED, tracedAccuracy } from "../../../app/underlay/traced-accuracy.ts";
import { recompute } from "../../../rules/recompute.ts";
import { checkSite } from "../../../rules/site/reader.ts";
import type { Underlay } from "../../../rules/site/site.ts";
import { runs } from "../../oracles/seed.ts";
import { sample } from "../../rules/site/sample-site.ts";

const number = fc.double({ min: 1, max: 2000, noNaN: true });
const pixel = fc.tuple(number, number);

const picture: Underlay = {
  picture: "data:image/png;base64,iVBORw0KGgo=",
  width: 400,
  height: 300,
  at: [0, 0],
  inchesPerPixel: 2,
};

describe("calibration", () => {
  it("an upright picture: 100 pixels that are 200 in.", () => {
    const placed = placeUnderlay(300, {
      first: [50, 250],
      second: [150, 250],
      length: 200,
      at: [10, 20],
      bearing: null,
    });
    // The first place lies 50 pixels in and 50 up: 100 in. each way from the picture's corner.
    expect(placed).toEqual({ at: [-90, -80], inchesPerPixel: 2, turn: 0 });
  });

  it("puts both places where they belong, however the picture is turned", () => {
    fc.assert(
      fc.property(
        pixel,
        pixel,
        number,
        pixel,
        fc.double({ min: 0, max: 360, noNaN: true }),
        (a, b, length, at, bearing) => {
          fc.pre(Math.hypot(a[0] - b[0], a[1] - b[1]) > 1);
          const placed = placeUnderlay(1500, { first: a, second: b, length, at, bearing });
          if (!placed) throw new Error("not placed");
          const [p, q] = [placeOf({ height: 1500, ...placed }, a), placeOf({ height: 1500, ...placed }, b)];
          expect(p[0]).toBeCloseTo(at[0], 6);
          expect(p[1]).toBeCloseTo(at[1], 6);
          const turn = (bearing * Math.PI) / 180;
          expect(q[0]).toBeCloseTo(at[0] + length * Math.cos(turn), 6);
          expect(q[1]).toBeCloseTo(at[1] + length * Math.sin(turn), 6);
        },
      ),
      runs(200),
    );
  });

  it("needs two places", () => {
    expect(placeUnderlay(300, { first: [5, 5], second: [5, 5], length: 10, at: [0, 0], bearing: null })).toBeNull();
  });
});

describe("what is traced over it", () => {
  it("is off by no more than is said when every place is pointed out a pixel off", () => {
    const place = fc.tuple(
      fc.double({ min: 0, max: 2000, noNaN: true }),
      fc.double({ min: 0, max: 1500, noNaN: true }),
    );
    const slip = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
    fc.assert(
      fc.property(place, place, place, place, fc.tuple(slip, slip, slip, slip), (a, b, p, q, slips) => {
        const far = (one: readonly number[], other: readonly number[]) =>
          Math.hypot((one[0] ?? 0) - (other[0] ?? 0), (one[1] ?? 0) - (other[1] ?? 0));
        // A stretch no longer than the one that gives the scale, which is long.
        fc.pre(far(a, b) > 200 && far(p, q) <= far(a, b));
        const off = ([x, y]: readonly [number, number], i: number): [number, number] => [
          x + POINTED * Math.cos(slips[i] ?? 0),
          y + POINTED * Math.sin(slips[i] ?? 0),
        ];
        const length = 2 * far(a, b);
        const placed = placeUnderlay(1500, {
          first: off(a, 0),
          second: off(b, 1),
          length,
          at: [0, 0],
          bearing: null,
        });
        if (!placed) throw new Error("not placed");
        const on = (one: [number, number]) => placeOf({ height: 1500, ...placed }, one);
        const measured = far(on(off(p, 2)), on(off(q, 3)));
        expect(Math.abs(measured - 2 * far(p, q))).toBeLessThanOrEqual(tracedAccuracy(placed) + 0.05);
      }),
      runs(200),
    );
    // 2 in. to a pixel.
    expect(tracedAccuracy({ inchesPerPixel: 2 })).toBe(8);
    expect(tracedAccuracy({ inchesPerPixel: 0.1 })).toBe(0.5);
  });

  it("makes the site no more exact, in the same step; a fault in it lays nothing", () => {
    const laid = setUnderlay(picture, undefined, 8).apply(emptySite());
    expect(laid).toMatchObject({ ok: true, site: { underlay: picture, accuracy: 8 } });
    expect(setUnderlay(picture, undefined, Number.NaN).apply(emptySite()).ok).toBe(false);
  });
});

describe("in the site file", () => {
  it("is read back, and no rule looks at it", () => {
    const plain = checkSite(sample());
    const laid = checkSite({ ...sample(), underlay: picture });
    if (!plain.ok || !laid.ok) throw new Error("refused");
    expect(laid.site.underlay).toEqual(picture);
    expect(recompute(laid.site)).toEqual(recompute(plain.site));
  });

  it.each([
    ["a picture from elsewhere", { picture: "https://example.com/a.png" }],
    ["a drawing that could hold a program", { picture: "data:image/svg+xml;base64,PHN2Zz4=" }],
    ["no size", { width: 0 }],
    ["no scale", { inchesPerPixel: 0 }],
  ])("is refused with %s", (_, change) => {
    const result = checkSite({ ...sample(), underlay: { ...picture, ...change } });
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.refusal.problems[0]?.field).toContain(`underlay.${Object.keys(change)[0]}`);
  });

  it("is laid and taken away in one step each", () => {
    const laid = setUnderlay(picture).apply(emptySite());
    if (!laid.ok) throw new Error(laid.reason);
    expect(laid.site.underlay).toEqual(picture);
    const gone = setUnderlay(null).apply(laid.site);
    expect(gone.ok && "underlay" in gone.site).toBe(false);
  });
});
