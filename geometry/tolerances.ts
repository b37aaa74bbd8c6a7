/** Every tolerance of the geometry, in inches, each with its reason. No other file holds an epsilon of its own. */

/** A value within this of a limit equals the limit (the report's contract). */
export const LIMIT_TOLERANCE = 1e-6;

/** Greatest gap between an arc and the chords drawn for it, in regions and paths that are reported or drawn. */
export const FLATTEN_TOLERANCE = 1 / 64;

/** The same for the lengths and areas that are reported: 16 times finer, so that a 21 in. arc is short by less than 2 parts in 100,000. */
export const FINE_FLATTEN_TOLERANCE = 1 / 1024;

/** The clipping adapter's grid: integer units to an inch. */
export const CLIP_UNITS_PER_INCH = 4096;

/** Two positions closer than this are one vertex. Site files hold taped and typed inches; nothing real is smaller. */
export const SAME_POINT = 1e-9;

/** Slack when a computed position is tested against the curve it was computed on (rounding of sums near 1e6 in.). */
export const ON_CURVE = 1e-7;

/** A bulge this small bows its edge by less than the rounding of the arc's own center: it is a line. */
export const FLATTEST_BULGE = 1e-8;

/** A mitred wall corner may stick out this many half thicknesses before it is cut off square (walls turning by more than 157 degrees). */
export const WALL_MITER_LIMIT = 5;
