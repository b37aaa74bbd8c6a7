/** What taking back is called, by what was placed last. */
export const TAKE_BACK = {
  corner: "Take back the last corner",
  firstCorner: "Take back the first corner",
  point: "Take back the last point",
  begin: "Take back where it begins",
  end: "Take back the last end",
  through: "Take back the place on the arc",
  press: "Take back the last press",
} as const;

export type TakeBack = (typeof TAKE_BACK)[keyof typeof TAKE_BACK];
