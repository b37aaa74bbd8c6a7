/**
 * The symbols of the plan, in points of paper round their own origin, y up. They are our own; outlets, lamp, switch, fan
 * and isolator follow the ideas of IEC 60617 (recalled from memory): half circle with stem a socket, crossed circle a
 * lamp, a blade on a dot a switch, the barred gap an isolator. Every one is told in the legend of the sheet that uses it.
 */

export type SymbolName =
  | "metal-part"
  | "ladder"
  | "drain"
  | "cup"
  | "post"
  | "equipment"
  | "receptacle"
  | "switch"
  | "luminaire"
  | "fan"
  | "outlet"
  | "junction-box"
  | "disconnect"
  | "underwater-light"
  | "water-bond"
  | "tie-needed"
  | "tie-recorded"
  | "connection"
  | "fence-cross"
  | "fence-ring"
  | "fence-unknown"
  | "tick"
  | "first-corner"
  | "witness-end"
  | "way-in"
  | "unknown";

/** A part of a symbol. `paint`: `edge` stroked, `area` filled and stroked as the role says, `solid` filled with the stroke's color. */
export type Part =
  | { readonly line: readonly number[]; readonly closed?: boolean; readonly paint: "edge" | "area" | "solid" }
  | { readonly circle: readonly [x: number, y: number, radius: number]; readonly paint: "edge" | "area" | "solid" };

export interface SymbolDrawing {
  readonly parts: readonly Part[];
  /** Half its greatest extent, points: what labels keep clear of. */
  readonly reach: number;
}

const edge = (...line: number[]): Part => ({ line, paint: "edge" });
const area = (...line: number[]): Part => ({ line, closed: true, paint: "area" });
const solid = (...line: number[]): Part => ({ line, closed: true, paint: "solid" });
const disc = (x: number, y: number, radius: number): Part => ({ circle: [x, y, radius], paint: "area" });
const dot = (x: number, y: number, radius: number): Part => ({ circle: [x, y, radius], paint: "solid" });

/** Points along an arc, degrees. */
function arc(x: number, y: number, radius: number, from: number, to: number, steps = 16): number[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = ((from + ((to - from) * i) / steps) * Math.PI) / 180;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  }).flat();
}

/** A blade of the fan: a long loop to one side of the hub. */
function blade(side: 1 | -1): number[] {
  return Array.from({ length: 21 }, (_, i) => {
    const angle = (i / 20) * 2 * Math.PI;
    return [side * (1.6 - 1.6 * Math.cos(angle)), 0.95 * Math.sin(angle)];
  }).flat();
}

const X = 3.4 * Math.SQRT1_2;

export const SYMBOLS: Readonly<Record<SymbolName, SymbolDrawing>> = {
  "metal-part": { reach: 3.4, parts: [disc(0, 0, 3.2), edge(-3.2, 0, 3.2, 0), edge(0, -3.2, 0, 3.2)] },
  ladder: {
    reach: 4.6,
    parts: [
      edge(-2.6, -4, -2.6, 3),
      edge(2.6, -4, 2.6, 3),
      edge(-2.6, -2.6, 2.6, -2.6),
      edge(-2.6, -0.6, 2.6, -0.6),
      dot(-2.6, 3, 1.3),
      dot(2.6, 3, 1.3),
    ],
  },
  drain: {
    reach: 4,
    parts: [
      area(-3, -3, 3, -3, 3, 3, -3, 3),
      edge(-1, -3, -1, 3),
      edge(1, -3, 1, 3),
      edge(-3, -1, 3, -1),
      edge(-3, 1, 3, 1),
    ],
  },
  cup: { reach: 2.6, parts: [disc(0, 0, 2.4), dot(0, 0, 0.9)] },
  post: { reach: 3.4, parts: [disc(0, 0, 3.2), solid(-1.4, -1.4, 1.4, -1.4, 1.4, 1.4, -1.4, 1.4)] },
  equipment: { reach: 6, parts: [area(-5.5, -5.5, 5.5, -5.5, 5.5, 5.5, -5.5, 5.5)] },
  receptacle: {
    reach: 4.6,
    parts: [area(...arc(0, -1.6, 3.6, 0, 180)), edge(0, 2, 0, 5)],
  },
  switch: { reach: 4.6, parts: [disc(-1.6, -2.4, 1.5), edge(-0.8, -1.1, 2.6, 4.2, 4.6, 3)] },
  luminaire: { reach: 3.4, parts: [disc(0, 0, 3.4), edge(-X, -X, X, X), edge(-X, X, X, -X)] },
  fan: {
    reach: 4.4,
    parts: [
      disc(0, 0, 4.2),
      { line: blade(1), closed: true, paint: "edge" },
      { line: blade(-1), closed: true, paint: "edge" },
    ],
  },
  outlet: { reach: 4.4, parts: [disc(0, -0.8, 2.8), edge(0, 2, 0, 4.6), edge(-1.6, 4.6, 1.6, 4.6)] },
  "junction-box": { reach: 3.4, parts: [disc(0, 0, 3.2), dot(0, 0, 1.2)] },
  disconnect: {
    reach: 5,
    parts: [
      area(-4, -5, 4, -5, 4, 5, -4, 5),
      edge(0, -4.2, 0, -1.8, -2.2, 2.2),
      edge(0, 4.2, 0, 2.4),
      edge(-1.5, 2.4, 1.5, 2.4),
    ],
  },
  "underwater-light": {
    reach: 4.8,
    parts: [
      disc(0, 0, 3),
      edge(-2.1, -2.1, 2.1, 2.1),
      edge(-2.1, 2.1, 2.1, -2.1),
      edge(...arc(0, 0, 4.6, 25, 155)),
      edge(...arc(0, 0, 4.6, 205, 335)),
    ],
  },
  "water-bond": {
    reach: 4.6,
    parts: [
      area(0, 4.6, ...arc(0, -1, 2.9, 22, -202, 18)),
      edge(-1.5, -0.4, 1.5, -0.4),
      edge(-0.9, -1.4, 0.9, -1.4),
      edge(-0.35, -2.4, 0.35, -2.4),
    ],
  },
  "tie-needed": { reach: 4, parts: [area(0, -3.7, 3.7, 0, 0, 3.7, -3.7, 0)] },
  "tie-recorded": { reach: 4, parts: [solid(0, -3.7, 3.7, 0, 0, 3.7, -3.7, 0)] },
  connection: { reach: 2.2, parts: [dot(0, 0, 1.7)] },
  "fence-cross": { reach: 1.8, parts: [edge(-1.6, -1.6, 1.6, 1.6), edge(-1.6, 1.6, 1.6, -1.6)] },
  "fence-ring": { reach: 1.8, parts: [{ circle: [0, 0, 1.4], paint: "edge" }] },
  "fence-unknown": { reach: 1.8, parts: [edge(-1.6, -1.6, 1.6, 1.6)] },
  tick: { reach: 2.6, parts: [edge(-2, -2, 2, 2)] },
  "first-corner": { reach: 3, parts: [solid(0, 0, -2, 4, 2, 4)] },
  "witness-end": { reach: 1.6, parts: [disc(0, 0, 1.2)] },
  "way-in": { reach: 2.6, parts: [area(-1.8, -1.8, 1.8, -1.8, 1.8, 1.8, -1.8, 1.8)] },
  unknown: { reach: 5, parts: [area(-4, -4, 4, -4, 4, 4, -4, 4)] },
};

/** The letter code of each kind of equipment, and what it says in the legend. */
export const EQUIPMENT_LETTERS: Readonly<Record<string, readonly [letters: string, words: string]>> = {
  pump: ["P", "pump"],
  heater: ["H", "heater"],
  filter: ["F", "filter"],
  chlorinator: ["C", "chlorinator"],
  controller: ["K", "controller"],
  "cover-motor": ["CM", "cover motor"],
  blower: ["B", "blower"],
  "heat-pump": ["HP", "heat pump"],
  other: ["E", "other equipment"],
};
