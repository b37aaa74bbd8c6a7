/** How large a site file, and what stands in it, may be. Far above any real yard; they keep a broken or hostile file from exhausting the machine. */

/** Levels of lists and objects inside each other, the document itself being the first. A vertex of an outline lies on level 6. */
export const MOST_LEVELS = 64;

/** Characters of the text of a site file. */
export const MOST_CHARACTERS = 64 * 1024 * 1024;

/** Numbers, texts, lists and objects of a document, counted one by one. */
export const MOST_VALUES = 10_000_000;

export const MOST_ELEMENTS = 100_000;

/** The largest coordinate, length, area or count a site may hold, inches. */
export const LARGEST_NUMBER = 1e6;

/** Ties of a pool that a setting or a local amendment may ask for. */
export const MOST_TIES = 1_000;

/** Vertices of one path. */
export const MOST_VERTICES = 20_000;

/** Entries of any other list that a rule reads: islands, joins, answers, spools... */
export const MOST_ENTRIES = 20_000;

/** Problems that one refusal lists. */
export const MOST_PROBLEMS = 50;
