/** Sites to draw: the demo sites with their reports, and one invented yard that holds every kind of element. */
import { recompute } from "../../../rules/recompute.ts";
import type { Report } from "../../../rules/report.ts";
import { readSite } from "../../../rules/site/reader.ts";
import type { Site } from "../../../rules/site/site.ts";
import { DEMO_SITES } from "../../support/demo-sites.ts";

export interface Drawn {
  readonly name: string;
  readonly site: Site;
  readonly report: Report;
}

export const DRAWN: readonly Drawn[] = DEMO_SITES.map(({ name, site }) => ({ name, site, report: recompute(site) }));

export function drawn(name: string): Drawn {
  const found = DRAWN.find((one) => one.name === name);
  if (!found) throw new Error(`There is no demo site "${name}".`);
  return found;
}

/** A site of these elements, checked by the reader as any other. */
export function siteOf(elements: readonly object[], head: object = {}): Drawn {
  const read = readSite(JSON.stringify({ format: "copperband-site", version: 1, name: "Drawn", ...head, elements }));
  if (!read.ok) throw new Error(read.refusal.message);
  return { name: "drawn", site: read.site, report: recompute(read.site) };
}

export const POOL = {
  id: "p",
  kind: "pool",
  outline: {
    vertices: [
      [0, 0],
      [240, 0],
      [240, 120, 1],
      [0, 120],
    ],
    closed: true,
  },
  body: "pool",
  shell: "sprayed-concrete",
  steel: "bare",
};

const line = (...vertices: number[][]) => ({ vertices, closed: false });
const box = (x: number, y: number, w: number, h: number) => ({
  vertices: [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ],
  closed: true,
});

export const EVERY_KIND: readonly object[] = [
  { id: "lawn", kind: "surface", outline: box(-200, -200, 700, 700), material: "lawn" },
  POOL,
  { id: "inset", kind: "inset", outline: box(0, 0, 40, 40), pool: "p" },
  { id: "house", kind: "building", outline: box(-200, 400, 400, 100) },
  { id: "wall", kind: "wall", path: line([-60, -60], [200, -60]), thickness: 8, top: 72, permanent: true },
  { id: "fence", kind: "fence", path: line([-200, -200], [500, -200]), metal: true },
  { id: "door", kind: "opening", path: line([-100, 400], [-60, 400]), opening: "hinged-door" },
  { id: "board", kind: "structure", outline: box(230, 40, 60, 20), structure: "diving-board" },
  { id: "rail", kind: "metal", shape: { point: [20, -6] }, part: "handrail" },
  { id: "roof", kind: "metal", shape: box(300, 300, 60, 60), part: "awning" },
  { id: "pump", kind: "equipment", at: [400, 100], unit: "pump" },
  { id: "lamp", kind: "underwater-light", at: [240, 60], pool: "p", formingShell: "metal" },
  { id: "socket", kind: "device", at: [-100, 300], device: "receptacle" },
  { id: "drop", kind: "overhead-line", path: line([-2000, 0, 300], [2000, 0, 300]), class: "to-15kv" },
  { id: "run", kind: "underground-run", path: line([400, 100], [400, 300]), method: "pvc" },
  { id: "fitting", kind: "water-bond", at: [120, 0], pool: "p" },
  { id: "copper", kind: "conductor", path: line([-21, 0], [-21, 120]), role: "ring" },
  { id: "tie-x", kind: "tie", at: [-21, 60], joins: ["copper", "p"] },
  { id: "oak", kind: "keep-out", outline: box(420, -150, 40, 40) },
  { id: "odd", kind: "sky-hook", at: [-150, -150] },
];
