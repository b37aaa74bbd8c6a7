/** What moving, turning, mirroring and lining up share: elements each taken somewhere by a motion, or nothing at all. */
import { nearestOnEdge } from "../../geometry/edge.ts";
import { pathFrom } from "../../geometry/outline.ts";
import { boundsDistance, boundsOfPoints } from "../../geometry/points.ts";
import type { Path, Point } from "../../geometry/types.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import type { Site } from "../../rules/site/site.ts";
import { refuseLocked } from "./arrangement.ts";
import { gone, refuseElement } from "./checked.ts";
import { type AnyElement, type EditResult, type Refused, refused } from "./edit.ts";
import { calledAs, elementsWords } from "./element-words.ts";
import { inItsPool, insetsOf, refuseLeavingPool } from "./inset-place.ts";
import { type Motion, placed } from "./moved.ts";

/** Ids of elements, each with the motion that takes it away. */
export type Motions = ReadonlyMap<string, Motion>;

/**
 * The site with elements taken elsewhere. Doors and windows go with the wall or building that they lie in, steps and
 * ledges with their pool. `verb` opens the undo label. Refused as a whole when one of them is locked, gone, or may not lie where it would come to.
 */
export function placeElements(site: Site, motions: Motions, verb: string): EditResult {
  const all = withInsets(site, withOpenings(site, motions));
  const refusal = refuseLocked(site, motions.keys());
  if (refusal) return refusal;
  const before: AnyElement[] = [];
  const elements: AnyElement[] = [];
  let found = 0;
  for (const element of site.elements) {
    const motion = all.get(element.id);
    if (!motion) {
      elements.push(element);
      continue;
    }
    const there = takenTo(element, motion);
    if (!there.ok && motions.size > 1 && !isKnownKind(element.kind)) {
      return refused(`${there.reason} Take it out of the selection, and the rest can be.`, element.id);
    }
    if (!there.ok) return there;
    if (motions.has(element.id)) {
      before.push(element);
      found += 1;
    }
    elements.push(there.element);
  }
  if (found < motions.size) {
    const there = new Set(site.elements.map(({ id }) => id));
    return gone([...motions.keys()].find((id) => !there.has(id)) as string);
  }
  const after = { ...site, elements };
  for (const [i, was] of site.elements.entries()) {
    const outside = motions.has(was.id) ? refuseLeavingPool(site, was, after, elements[i] as AnyElement) : null;
    if (outside) return outside;
    if (was.kind === "inset" && motions.has(was.id)) elements[i] = inItsPool(after, elements[i] as AnyElement);
  }
  return { ok: true, site: after, label: `${verb} ${elementsWords(before)}` };
}

/** An element taken away by a motion, or why it may not be. */
export function takenTo(
  element: AnyElement,
  motion: Motion,
  verb: "move" | "copy" = "move",
): { readonly ok: true; readonly element: AnyElement } | Refused {
  const there = placed(element, motion);
  if (!there) return refused(`${calledAs(element)} is of a kind that this version cannot ${verb}.`, element.id);
  return refuseElement(there) ?? { ok: true, element: there };
}

/** How far a door or window may lie off the line of a wall, beyond half its thickness, to go with it, inches. */
const OPENING_OFF_LINE = 6;

/** The ids with those of the doors and windows, steps and ledges that lie in the walls, buildings and pools among them. */
export function idsWithOpenings(site: Site, ids: readonly string[]): string[] {
  const motion: Motion = { at: (point) => point, isMirrored: false };
  return [...withInsets(site, withOpenings(site, new Map(ids.map((id) => [id, motion])))).keys()];
}

function withOpenings(site: Site, motions: Motions): Motions {
  const hosts = site.elements.filter(
    (element) => motions.has(element.id) && (element.kind === "wall" || element.kind === "building"),
  );
  if (hosts.length === 0) return motions;
  const openings = site.elements.filter((element) => element.kind === "opening" && !motions.has(element.id));
  if (openings.length === 0) return motions;
  const all = new Map(motions);
  for (const host of hosts) {
    const [path, half] = lineOf(host);
    const motion = motions.get(host.id) as Motion;
    for (const opening of openings) {
      if (!all.has(opening.id) && liesIn(opening, path, half + OPENING_OFF_LINE)) all.set(opening.id, motion);
    }
  }
  return all;
}

function withInsets(site: Site, motions: Motions): Motions {
  const carried = insetsOf(site, motions).filter(({ id }) => !motions.has(id));
  if (carried.length === 0) return motions;
  return new Map([...motions, ...carried.map(({ id, pool }) => [id, motions.get(pool ?? "") as Motion] as const)]);
}

const lines = new WeakMap<AnyElement, readonly [Path, number]>();

function lineOf(host: AnyElement): readonly [Path, number] {
  const known = lines.get(host);
  if (known) return known;
  const fields = host as Readonly<Record<string, unknown>>;
  const path = pathFrom((fields.path ?? fields.outline) as Parameters<typeof pathFrom>[0]);
  const line = [path, ((fields.thickness as number | undefined) ?? 0) / 2] as const;
  lines.set(host, line);
  return line;
}

function liesIn(opening: AnyElement, line: Path, slack: number): boolean {
  const { vertices } = (opening as unknown as { path: { vertices: readonly (readonly number[])[] } }).path;
  const ends = [vertices[0], vertices.at(-1)].map((vertex): Point => [vertex?.[0] ?? 0, vertex?.[1] ?? 0]);
  if (boundsDistance(line.bounds, boundsOfPoints(ends)) > slack) return false;
  return ends.every((end) => line.edges.some((edge) => nearestOnEdge(edge, end).distance <= slack));
}
