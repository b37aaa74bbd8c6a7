/** What an absent field means where it does not mean "unknown" (the site format's own list), and the plan's default settings. */

export const ABSENT_MEANS = {
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
} as const;

/** Levels that are not given, inches above the datum. */
export const DEFAULT_WATER_LEVEL = 0;
export const DEFAULT_GRADE = 0;

/** Settings of a site that names none. Basis: judgement, common practice (spare 10 %: one published estimating guide;
 * grid rolls of 50, 100, 125 and 150 ft: published by several sellers). */
export const DEFAULT_SETTINGS = {
  ringOffset: 21,
  ringMargin: 1,
  ties: 4,
  spareFraction: 0.1,
  junctionAllowance: 12,
  spools: [3780, 6000],
  ringStyle: "even",
  perimeterMethod: "least-copper",
  gridRolls: [600, 1200, 1500, 1800],
} as const;

/** Copper from a buried branch up to the ground at the part it serves, inches. Basis: judgement, common practice (ring depth, base and slab). */
export const RISE_TO_GROUND = 12;
