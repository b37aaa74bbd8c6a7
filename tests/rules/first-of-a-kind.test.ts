/** The first element of a kind, drawn after a report was made without any: nothing about it may be missed. */
import { expect, it } from "vitest";
import { Recomputer, recompute } from "../../rules/recompute.ts";
import type { Site } from "../../rules/site/site.ts";

const pool = {
  id: "pool-1",
  kind: "pool",
  body: "pool",
  shell: "unknown",
  outline: {
    vertices: [
      [-192, -96],
      [192, -96],
      [192, 96],
      [-192, 96],
    ],
    closed: true,
  },
};
const line = (y: number) => ({
  vertices: [
    [-192, y],
    [192, y],
  ],
  closed: false,
});
const FIRST = [
  { id: "fence-1", kind: "fence", metal: true, path: line(-130) },
  { id: "metal-1", kind: "metal", shape: { point: [0, -120] } },
  { id: "equipment-1", kind: "equipment", unit: "pump", at: [250, 0] },
  { id: "device-1", kind: "device", device: "receptacle", at: [0, 130] },
  { id: "light-1", kind: "underwater-light", formingShell: "metal", at: [0, 96] },
  { id: "surface-1", kind: "surface", material: "concrete", outline: { ...pool.outline, closed: true } },
  { id: "overhead-1", kind: "overhead-line", class: "to-50kv", path: line(0) },
  { id: "run-1", kind: "underground-run", method: "pvc", path: line(-110) },
  {
    id: "building-1",
    kind: "building",
    outline: {
      vertices: [
        [-192, 130],
        [192, 130],
        [192, 200],
      ],
      closed: true,
    },
  },
  {
    id: "structure-1",
    kind: "structure",
    structure: "slide",
    outline: {
      vertices: [
        [0, 100],
        [20, 100],
        [20, 130],
      ],
      closed: true,
    },
  },
  { id: "conductor-1", kind: "conductor", role: "ring", path: line(-115) },
  { id: "tie-1", kind: "tie", at: [0, -96], joins: [] },
];

const siteOf = (...elements: unknown[]) => ({ format: "copperband-site", version: 1, elements }) as unknown as Site;

it.each(FIRST)("of $kind gives the report that is given from nothing", (element) => {
  const kept = new Recomputer();
  kept.recompute(siteOf());
  kept.recompute(siteOf(pool));
  const site = siteOf(pool, element);
  expect(kept.recompute(site)).toEqual(recompute(site));
});
