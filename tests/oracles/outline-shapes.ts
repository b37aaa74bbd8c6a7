/** Outlines of invented pools for tests: counter-clockwise, inches. */
import type { PathData, Vertex } from "../../geometry/types.ts";

const closed = (...vertices: Vertex[]): PathData => ({ vertices, closed: true });

/** 16 x 32 ft. */
export const rectangle = closed([0, 0], [384, 0], [384, 192], [0, 192]);

/** 30 x 16 ft with a half circle of 10 ft across at one end. */
export const romanEnd = closed([0, 0], [360, 0], [360, 36, 1], [360, 156], [360, 192], [0, 192]);

export const circle = closed([60, 0, 1], [-60, 0, 1]);

/** Straight sides, half circles at both ends. */
export const stadium = closed([0, 0], [200, 0, 1], [200, 120], [0, 120, 1]);

export const ell = closed([0, 0], [360, 0], [360, 150], [160, 150], [160, 320], [0, 320]);

export const wideU = closed([0, 0], [300, 0], [300, 200], [200, 200], [200, 60], [100, 60], [100, 200], [0, 200]);

export const tee = closed([120, 0], [240, 0], [240, 180], [360, 180], [360, 300], [0, 300], [0, 180], [120, 180]);

export const plus = closed(
  [120, 0],
  [240, 0],
  [240, 120],
  [360, 120],
  [360, 240],
  [240, 240],
  [240, 360],
  [120, 360],
  [120, 240],
  [0, 240],
  [0, 120],
  [120, 120],
);

export const zed = closed([0, 0], [240, 0], [240, 140], [420, 140], [420, 260], [130, 260], [130, 120], [0, 120]);

/** A kidney: arcs only, one of them bowed inward. */
export const kidney = closed([0, 0, 0.7], [220, 40, 0.75], [200, 200, -0.42], [40, 190, 0.8]);

/** A keyhole: a round pool with a narrow straight bay. */
export const keyhole = closed([90, 0], [150, 0], [150, 160, 2.2], [90, 160]);

/** Two round ends with a waist of arcs bowed inward. */
export const hourglass = closed([0, 0, 1.1], [0, 160, -0.5], [260, 160, 1.1], [260, 0, -0.5]);

export const star = closed(
  ...Array.from({ length: 10 }, (_, i): Vertex => {
    const radius = i % 2 === 0 ? 220 : 95;
    const angle = (i * Math.PI) / 5 + 0.1;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  }),
);

/** Open to one side only by a channel 30 in. wide: a pocket of ground at offsets above 15. */
export const pocket = closed(
  [0, 0],
  [400, 0],
  [400, 300],
  [215, 300],
  [215, 240],
  [300, 240],
  [300, 100],
  [100, 100],
  [100, 240],
  [185, 240],
  [185, 300],
  [0, 300],
);

/** An inlet with parallel sides `width` inches apart, 140 deep. */
export const inlet = (width: number): PathData =>
  closed(
    [0, 0],
    [300, 0],
    [300, 200],
    [150 + width / 2, 200],
    [150 + width / 2, 60],
    [150 - width / 2, 60],
    [150 - width / 2, 200],
    [0, 200],
  );

export const concaveOutlines: Readonly<Record<string, PathData>> = {
  romanEnd,
  ell,
  wideU,
  tee,
  plus,
  zed,
  kidney,
  keyhole,
  hourglass,
  star,
  wideInlet: inlet(70),
  pocket,
};
