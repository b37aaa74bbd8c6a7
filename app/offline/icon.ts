/**
 * The program's sign: water in its wall, a copper ring around it, four ties. One description gives the drawing and the
 * pixels. Lengths are parts of the icon's side, from its center, y down.
 */

type Color = readonly [number, number, number];
const PAPER: Color = [252, 251, 247];
const WATER: Color = [176, 214, 236];
const INK: Color = [24, 34, 43];
const COPPER: Color = [179, 72, 0];

/** Half width and half height, and the corner's radius. */
interface Rounded {
  readonly w: number;
  readonly h: number;
  readonly r: number;
}
const POOL: Rounded = { w: 0.23, h: 0.15, r: 0.09 };
const RING: Rounded = { w: 0.335, h: 0.255, r: 0.18 };
const GROUND: Rounded = { w: 0.5, h: 0.5, r: 0.11 };
const WALL = 0.03;
const BAND = 0.036;
const TIE = 0.052;
const TIES: readonly (readonly [number, number])[] = [
  [RING.w, 0],
  [-RING.w, 0],
  [0, RING.h],
  [0, -RING.h],
];

const css = ([r, g, b]: Color) => `rgb(${r} ${g} ${b})`;

/** The sign as a drawing. */
export function iconSvg(): string {
  const box = ({ w, h, r }: Rounded, rest: string) =>
    `<rect x="${-w}" y="${-h}" width="${2 * w}" height="${2 * h}" rx="${r}" ${rest}/>`;
  const ties = TIES.map(([x, y]) => `<circle cx="${x}" cy="${y}" r="${TIE}" fill="${css(COPPER)}"/>`);
  return [
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-0.5 -0.5 1 1" width="512" height="512">',
    box(GROUND, `fill="${css(PAPER)}"`),
    box(RING, `fill="none" stroke="${css(COPPER)}" stroke-width="${BAND}"`),
    box(POOL, `fill="${css(WATER)}" stroke="${css(INK)}" stroke-width="${WALL}"`),
    ...ties,
    "</svg>",
  ].join("");
}

/** The sign as pixels, red, green, blue and opacity, row by row. `fills`: the ground reaches into the corners. */
export function iconPixels(size: number, fills: boolean): Uint8Array {
  const pixels = new Uint8Array(size * size * 4);
  const at = (px: number, py: number) => colorAt(px / size - 0.5, py / size - 0.5, fills);
  for (let py = 0; py < size; py++) {
    for (let px = 0; px < size; px++) {
      const corner = at(px, py);
      const isPlain = [at(px + 1, py), at(px, py + 1), at(px + 1, py + 1)].every((other) => other === corner);
      // Only where colors meet is a pixel a mixture.
      const seen = isPlain ? [corner] : PARTS.flatMap((y) => PARTS.map((x) => at(px + x, py + y)));
      const inked = seen.filter((color) => color !== null);
      const mean = (band: 0 | 1 | 2) => Math.round(inked.reduce((sum, color) => sum + color[band], 0) / inked.length);
      const opacity = Math.round((255 * inked.length) / seen.length);
      if (inked.length > 0) pixels.set([mean(0), mean(1), mean(2), opacity], (py * size + px) * 4);
    }
  }
  return pixels;
}

/** Where a mixed pixel is looked at, along each side. */
const PARTS = [1 / 8, 3 / 8, 5 / 8, 7 / 8];

function colorAt(x: number, y: number, fills: boolean): Color | null {
  if (TIES.some(([tx, ty]) => Math.hypot(x - tx, y - ty) <= TIE)) return COPPER;
  const pool = outside(x, y, POOL);
  if (Math.abs(pool) <= WALL / 2) return INK;
  if (pool < 0) return WATER;
  if (Math.abs(outside(x, y, RING)) <= BAND / 2) return COPPER;
  return fills || outside(x, y, GROUND) <= 0 ? PAPER : null;
}

/** How far a point lies outside a rounded rectangle; negative inside. */
function outside(x: number, y: number, { w, h, r }: Rounded): number {
  const dx = Math.abs(x) - (w - r);
  const dy = Math.abs(y) - (h - r);
  return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - r;
}
