/** Every tolerance of the geometry, in inches, each with its reason. No other file holds an epsilon of its own. */

/** A value within this of a limit equals the limit (the report's contract). */
export const LIMIT_TOLERANCE = 1e-6;

/** Greatest gap between an arc and the chords drawn for it, in regions and paths that are reported or drawn. */
export const FLATTEN_TOLERANCE = 1 / 64;

/** The same for the lengths and areas that are reported: 16 times finer, so that a 21 in. arc is short by less than 2 parts in 100,000. */
export const FINE_FLATTEN_TOLERANCE = 1 / 1024;

/** The clipping adapter's grid: integer units to an inch. */
export const CLIP_UNITS_PER_INCH = 4096;

/** How thick on average, in steps of the clipping grid, a ring may be that is only an edge folded over by rounding. */
export const FOLDED_EDGE = 16;

/** Two positions closer than this are one vertex. Site files hold taped and typed inches; nothing real is smaller. */
export const SAME_POINT = 1e-9;

/** Slack when a computed position is tested against the curve it was computed on (rounding of sums near 1e6 in.). */
export const ON_CURVE = 1e-7;

/** A bulge this small bows its edge by less than the rounding of the arc's own center: it is a line. */
export const FLATTEST_BULGE = 1e-8;

/** A mitred wall corner may stick out this many half thicknesses before it is cut off flat (corners that turn by more than 157 degrees). */
export const WALL_MITER_LIMIT = 5;

/** Pieces of an offset that meet within this are cut at one place: well above rounding, well below anything laid in the ground. */
export const OFFSET_JOINT = 1e-6;

/** A piece of an offset stays when nothing is nearer than the offset less this: rounding of arcs near 1e6 in. */
export const OFFSET_KEEP = 1e-7;

/** Pieces left over longer than this (inches) mean that an offset was not put together right; shorter ones come from grazing contact. */
export const OFFSET_LEFTOVER = 0.02;

/** Gap between the exact limits and the chords that the shortest ring is pulled tight between, always on the legal side. */
export const TAUT_TOLERANCE = 1 / 1024;

/** A grid line this near to the edge of the region it fills runs along it, not inside it. */
export const GRID_EDGE = 1e-6;

/** Grids whose lengths differ by less than this share are as long: regions come from the clipping grid. */
export const GRID_SAME_LENGTH = 1e-4;

/** Grids whose lines lie nearer than this to each other lie alike: several steps of the clipping grid. */
export const GRID_LEAN = 1 / 256;

/** Ground smaller than a grid's spacing and on average narrower than this is a seam between surfaces, not ground to bond. */
export const GRID_SLIVER = 1 / 64;

/** Straight edges whose lengths differ by less than this share are as long. */
export const SAME_EDGE_LENGTH = 1e-6;

/** An outline whose edges favor a direction by less than this share of their length is round. */
export const ROUND_OUTLINE = 1e-3;

/** A step or ledge drawn along the inside wall may reach past it by this: what taped and typed corners on an arc are off by. */
export const ALONG_WALL = 1 / 4;

/** Corners of barriers this close are one corner: footprints of walls drawn to one point differ by rounding only. */
export const SAME_CORNER = 1e-6;

/** A sight line may pass this far on the wrong side of a barrier's line: ten times under SAME_CORNER, far above the rounding of sums near 1e6 in. */
export const SIGHT_SLACK = 1e-7;

/** How far beside a barrier's line its two sides are sampled: above SAME_CORNER, below anything drawn. */
export const SIDE_PROBE = 1e-5;

/** A gap between two barriers narrower than this is a drawing slip, not a way through. */
export const SEALED_GAP = 1 / 64;

/** A position this deep inside a wall or building is on its face: a box screwed to the wall, taped to the wall's line. */
export const FACE_DEPTH = 1 / 64;

/** A corner turns a path only when the free ground round it spans more than a half turn by this, radians. */
export const STRAIGHT_ANGLE = 1e-9;

/** Added to sines and cosines against their rounding, where too much only costs a look at one edge more. */
export const SINE_ROUNDING = 1e-9;

/** The longest chord of a region's arc, radians, however small the circle: keeps small quarter circles round. */
export const LONGEST_CHORD_ANGLE = 0.2;

/** How far, radians, the ground behind a barrier's corner overlaps the ground seen past it, so that the union has no seam. */
export const SEAM_OVERLAP = 0.01;

/** How far, inches, a shadow is drawn past what it takes away: well above chord gaps; ground lost to it is given back. */
export const SHADOW_MARGIN = 1 / 16;

/** Slices of a shadow narrower than this (inches, or radians) hold nothing. */
export const THIN_SLICE = 1e-12;

/** How far corners may be moved so that no three are in line before they are triangulated: a tenth of LIMIT_TOLERANCE. */
export const TAUT_JITTER = 1e-7;

/** A line or circle that dips less than this into a circle touches it in one point (rounding of positions near 1e4 in.). */
export const TANGENT_DEPTH = 1e-11;

/** A clipped ring's corner this near to the exact offset lies on it: two chord gaps and the clipping grid. */
export const RING_ON_OFFSET = 2 * FLATTEN_TOLERANCE + 2 / CLIP_UNITS_PER_INCH;

/** How far the water reaches into the ground beside it before the two are united: two steps of the clipping grid. */
export const RING_SEAM = 2 / CLIP_UNITS_PER_INCH;

/** Half the width of slits and bridges of ground that are rounding: up to three steps of the clipping grid where grounds meet. */
export const HAIRLINE = 2 / CLIP_UNITS_PER_INCH;

/** Ground whose edge loses more than this (inches) with its hairlines has some; less are corners rounded. */
export const SHORTEST_HAIRLINE = 1 / 3;

/** A spike or slit of a clipped ring narrower than this is a seam between grounds; a ring this near beside its ground runs over it. */
export const RING_SPIKE = 1 / 256;

/** A change to the branches that saves less than this is none (inches of copper). */
export const BRANCH_GAIN = 1e-6;

/** How far the corner of a wall reaches into the strips beside it before they are united: well above the clipping grid, unseen in a plan. */
export const STRIP_OVERLAP = 1 / 64;

/** Half the thickness of a wall below which its strips would vanish on the clipping grid. */
export const THINNEST_HALF = 2 / CLIP_UNITS_PER_INCH;

/** Below this angle, radians, an angle less its sine is summed as a series: the difference itself has lost its digits. */
export const SERIES_ANGLE = 0.5;

/** An arc of less than this half angle, radians, has its bow's centroid at 3/5 of its height, to within 1e-5 of that height. */
export const FLAT_BOW = 0.01;

/** How far ground that is reached straight is widened before it is taken from all ground, so that chords leave no slivers: four chord gaps. */
export const SHADOW_SLIVER = 1 / 16;

/** Width of the strip that stands for a barrier without thickness where only areas serve: 64 steps of the clipping grid, unseen in a plan. */
export const THIN_STRIP = 1 / 64;

/** Every vertex of an outline within this of where a shape puts it: it is that shape. Below what a file's rounding or a typed sixteenth changes. */
export const SAME_SHAPE = 1e-3;
