/**
 * Invented sites of any shape, awkward ones above all: vertices on a coarse lattice (collinear runs, shared edges, touching
 * and overlapping things, walls over a pool's edge, spikes), edges of a hair's length, arcs, islands, pools in buildings,
 * things far from the origin, no pools, unknown kinds. Not every one may be read: the reader has the first word.
 */
import type { Point, Vertex } from "../../geometry/types.ts";
import { numbersFrom } from "../oracles/random-yards.ts";

interface Drawing {
  readonly next: () => number;
  readonly at: (span: number) => Point;
}

const STEPS = [0.001, 0.25, 1, 12, 24];
const FAR: readonly Point[] = [
  [0, 0],
  [0, 0],
  [0, 0],
  [100_000, -70_000],
  [-900_000, 900_000],
];

/** The site document of a number: the same for the same number. */
export function anySite(number: number): object {
  const next = numbersFrom(number);
  const step = pick(next, STEPS);
  const [ox, oy] = pick(next, FAR);
  const snap = (v: number) => Math.round(v / step) * step;
  const at = (span: number): Point => [ox + snap((next() - 0.5) * span), oy + snap((next() - 0.5) * span)];
  const drawing = { next, at };
  const elements: Record<string, unknown>[] = [];
  const add = (kind: string, fields: object) => elements.push({ id: `${kind}-${elements.length}`, kind, ...fields });
  const pools = pick(next, [0, 1, 1, 1, 2, 2, 3]);
  for (let i = 0; i < pools; i++) add("pool", pool(drawing, i));
  for (let i = some(next, 3); i > 0; i--) add("surface", surface(drawing));
  for (let i = some(next, 4); i > 0; i--) add("wall", wall(drawing));
  for (let i = some(next, 2); i > 0; i--) add("building", building(drawing));
  for (let i = some(next, 2); i > 0; i--) add("keep-out", { outline: outline(drawing, 60, 600) });
  for (let i = some(next, 5); i > 0; i--) add(...thing(drawing));
  if (next() < 0.1) add("gazebo-of-tomorrow", { at: at(100) });
  return {
    format: "copperband-site",
    version: 1,
    name: `Invented site ${number}`,
    ...(next() < 0.8 ? { edition: pick(next, ["nec-2017", "nec-2020", "nec-2023"]) } : {}),
    ...(next() < 0.3 ? { accuracy: next() } : {}),
    ...(next() < 0.3 ? { settings: { ringStyle: "short", ringOffset: 18 + 6 * next() } } : {}),
    elements,
  };
}

function pick<T>(next: () => number, list: readonly T[]): T {
  return list[Math.floor(next() * list.length)] as T;
}

function some(next: () => number, most: number): number {
  return Math.floor(next() * (most + 1));
}

function maybe(next: () => number, fields: object): object {
  return next() < 0.5 ? fields : {};
}

/** A closed outline about a place of the yard: a box, a star, a lobed noisy ring, a comb, or a box with awkward vertices. */
function outline({ next, at }: Drawing, size: number, span: number, center: Point = at(span)) {
  const [cx, cy] = center;
  const half = (): number => size * pick(next, [0.25, 0.5, 0.5, 1]);
  const [w, h] = [half(), half()];
  const box: Vertex[] = [
    [cx - w, cy - h],
    [cx + w, cy - h],
    [cx + w, cy + h],
    [cx - w, cy + h],
  ];
  const shape = next();
  if (shape < 0.3) return { vertices: bulged(next, box), closed: true };
  if (shape < 0.5) {
    const count = 5 + some(next, 40);
    const vertices = Array.from({ length: count }, (_, i): Vertex => {
      const angle = (i / count) * 2 * Math.PI;
      const r = 0.6 + 0.4 * next();
      return [cx + w * r * Math.cos(angle), cy + h * r * Math.sin(angle)];
    });
    return { vertices, closed: true };
  }
  if (shape < 0.65) {
    const teeth = 2 + some(next, 4);
    const vertices: Vertex[] = [
      [cx - w, cy - h],
      [cx + w, cy - h],
    ];
    for (let i = teeth; i > 0; i--) {
      const [right, left] = [cx - w + (2 * w * i) / teeth, cx - w + (2 * w * (i - 0.5)) / teeth];
      vertices.push([right, cy + h], [left, cy + h], [left, cy - h * 0.5], [left - (w / teeth) * 0.9, cy - h * 0.5]);
    }
    return { vertices, closed: true };
  }
  return { vertices: awkward(next, bulged(next, box)), closed: true };
}

/** Collinear vertices, a hair's-breadth edge, or a thin spike in one of the sides. */
function awkward(next: () => number, vertices: readonly Vertex[]): Vertex[] {
  const made: Vertex[] = [];
  for (const [i, vertex] of vertices.entries()) {
    made.push(vertex);
    const to = vertices[(i + 1) % vertices.length] as Vertex;
    if (vertex[2] !== undefined) continue;
    const along = (t: number, off = 0): Vertex => {
      const [dx, dy] = [to[0] - vertex[0], to[1] - vertex[1]];
      return [vertex[0] + dx * t - dy * off, vertex[1] + dy * t + dx * off];
    };
    const kind = next();
    if (kind < 0.25) made.push(along(0.25), along(0.5), along(0.75));
    else if (kind < 0.4) made.push(along(0.5), along(0.5 + 1e-7));
    else if (kind < 0.6) made.push(along(0.5), along(0.5005, pick(next, [-0.3, 0.3, 0.01])), along(0.501));
  }
  return made;
}

function bulged(next: () => number, vertices: readonly Vertex[]): Vertex[] {
  return vertices.map(([x, y]) => (next() < 0.25 ? [x, y, pick(next, [1, 0.4, -0.3, 1e-7, 0.05])] : [x, y]));
}

function pool(drawing: Drawing, i: number) {
  const { next, at } = drawing;
  const center = i === 0 ? at(1) : at(pick(next, [200, 400]));
  const size = pick(next, [30, 96, 200]);
  const water = outline(drawing, size, 0, center);
  const islands = next() < 0.2 ? [outline(drawing, size / 6, 0, center)] : undefined;
  return {
    outline: water,
    ...(islands ? { islands } : {}),
    body: pick(next, ["pool", "spa", "basin"]),
    shell: pick(next, ["cast-concrete", "sprayed-concrete", "vinyl-liner", "fiberglass", "metal", "unknown"]),
    ...maybe(next, { steel: pick(next, ["bare", "encapsulated", "none"]) }),
    ...maybe(next, { depth: 60 }),
    ...maybe(next, { storable: false }),
  };
}

function surface(drawing: Drawing) {
  const { next } = drawing;
  return {
    outline: outline(drawing, pick(next, [100, 300]), 200),
    material: pick(next, ["concrete", "wood", "lawn", "pavers", "artificial-turf"]),
    ...maybe(next, { steel: pick(next, ["rebar", "mesh", "none"]) }),
    ...maybe(next, { level: pick(next, [0, 0, 24]) }),
  };
}

function line({ next, at }: Drawing, span: number) {
  const count = 2 + some(next, 3);
  const start = at(span);
  const vertices: Vertex[] = [start];
  for (let i = 1; i < count; i++) vertices.push(next() < 0.3 ? [start[0] + i * 40, start[1]] : at(span));
  return { vertices, closed: count > 2 && next() < 0.1 };
}

function wall(drawing: Drawing) {
  const { next } = drawing;
  return {
    path: line(drawing, pick(next, [200, 500])),
    ...maybe(next, { thickness: pick(next, [0.01, 6, 12]) }),
    ...maybe(next, { top: pick(next, [40, 72]) }),
    ...maybe(next, { permanent: true }),
  };
}

function building(drawing: Drawing) {
  const { next, at } = drawing;
  const round = next() < 0.3;
  return { outline: outline(drawing, round ? 500 : 150, 500, round ? at(1) : at(500)), ...maybe(next, { top: 120 }) };
}

function thing(drawing: Drawing): [string, object] {
  const { next, at } = drawing;
  const place = at(pick(next, [100, 300, 2000]));
  const all: readonly (() => [string, object])[] = [
    () => ["metal", { shape: { point: place }, ...maybe(next, { z: [0, 60] }) }],
    () => ["metal", { shape: line(drawing, 300), part: "pipe" }],
    () => ["fence", { path: line(drawing, 400), ...maybe(next, { metal: true }), ...maybe(next, { top: 60 }) }],
    () => [
      "device",
      { device: pick(next, ["receptacle", "switch", "luminaire", "disconnect", "junction-box"]), at: place },
    ],
    () => ["equipment", { unit: pick(next, ["pump", "filter", "heater"]), at: place }],
    () => [
      "underground-run",
      { method: pick(next, ["pvc", "rmc", "other"]), path: { ...line(drawing, 300), closed: false } },
    ],
    () => ["conductor", { role: pick(next, ["ring", "grid"]), path: line(drawing, 260) }],
    () => ["tie", { at: place, joins: ["perimeter", "pool-0"] }],
    () => ["water-bond", { at: place }],
    () => [
      "opening",
      { opening: pick(next, ["hinged-door", "passage"]), path: { vertices: [place, at(100)], closed: false } },
    ],
  ];
  return pick(next, all)();
}
