import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  fitted,
  LARGEST_SCALE,
  type ScreenView,
  SMALLEST_SCALE,
  siteBounds,
  toScreen,
  toSite,
  zoomedAt,
} from "../../../app/canvas/screen-view.ts";
import { runs } from "../../oracles/seed.ts";

const view: ScreenView = { camera: { x: 100, y: 50, scale: 2 }, width: 800, height: 600 };
const place = fc.tuple(fc.double({ min: 0, max: 800, noNaN: true }), fc.double({ min: 0, max: 600, noNaN: true }));

describe("the view", () => {
  it("has the camera's place in its middle, y up on the site and down on the screen", () => {
    expect(toScreen(view, [100, 50])).toEqual([400, 300]);
    expect(toScreen(view, [110, 60])).toEqual([420, 280]);
    expect(siteBounds(view)).toEqual({ minX: -100, minY: -100, maxX: 300, maxY: 200 });
  });

  it("goes from the screen to the site and back", () => {
    fc.assert(
      fc.property(place, ([x, y]) => {
        const [sx, sy] = toScreen(view, toSite(view, [x, y]));
        expect(sx).toBeCloseTo(x, 8);
        expect(sy).toBeCloseTo(y, 8);
      }),
      runs(100),
    );
  });

  it("keeps the place under the pointer while it zooms, also at the ends of the zoom", () => {
    fc.assert(
      fc.property(place, fc.double({ min: 1e-4, max: 1e4, noNaN: true }), ([x, y], factor) => {
        const camera = zoomedAt(view, factor, [x, y]);
        expect(camera.scale).toBeGreaterThanOrEqual(SMALLEST_SCALE);
        expect(camera.scale).toBeLessThanOrEqual(LARGEST_SCALE);
        const [sx, sy] = toScreen({ ...view, camera }, toSite(view, [x, y]));
        expect(sx).toBeCloseTo(x, 6);
        expect(sy).toBeCloseTo(y, 6);
      }),
      runs(100),
    );
  });

  it("fits a box with its margin on every side", () => {
    const camera = fitted({ minX: 0, minY: 0, maxX: 720, maxY: 100 }, 800, 600, 40);
    expect(camera).toEqual({ x: 360, y: 50, scale: 1 });
  });

  it("fits a single point without dividing by nothing", () => {
    expect(fitted({ minX: 5, minY: 5, maxX: 5, maxY: 5 }, 800, 600, 40).scale).toBeLessThanOrEqual(LARGEST_SCALE);
  });
});
