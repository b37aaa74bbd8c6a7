/**
 * Handbook figures of round copper wire, worked out rather than tabled.
 * Source: ASTM B258, diameter d = 0.005 in. x 92^((36 - n) / 39) for American wire gage n; density of copper 8.89 g/cm3
 * (ASTM B3); resistivity 10.371 ohm-cmil per ft at 20 C (100 % IACS).
 */

const GRAMS_PER_POUND = 453.59237;
const CM_PER_INCH = 2.54;
const COPPER_DENSITY = 8.89;
const OHM_CMIL_PER_FOOT = 10.371;

/** Diameter in inches of a gage number (0 = 1/0, -1 = 2/0 ...). */
export function wireDiameter(awg: number): number {
  return 0.005 * 92 ** ((36 - awg) / 39);
}

/** Area in circular mils: the square of the diameter in thousandths of an inch. */
export function wireCircularMils(awg: number): number {
  return (wireDiameter(awg) * 1000) ** 2;
}

/** Pounds of bare solid copper in a length in inches. */
export function copperPounds(awg: number, inches: number): number {
  const radius = (wireDiameter(awg) / 2) * CM_PER_INCH;
  return (Math.PI * radius * radius * inches * CM_PER_INCH * COPPER_DENSITY) / GRAMS_PER_POUND;
}

/** Ohms of a length in inches at 20 C. */
export function copperOhms(awg: number, inches: number): number {
  return (OHM_CMIL_PER_FOOT / wireCircularMils(awg)) * (inches / 12);
}
