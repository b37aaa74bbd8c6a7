/**
 * Names and marks while something is dragged: placing them anew takes too long for every frame, so those of the last
 * placed scene stay, ride along with what is moved, and turn with their findings.
 */
import type { Point } from "../../geometry/types.ts";
import { findingNumbers } from "../../rules/findings-by-part.ts";
import type { Finding, Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import type { Item, MarkItem, Scene, TextItem } from "../drawing/scene.ts";
import type { AnyElement } from "../edits/edit.ts";
import { keptShape, shapeBounds } from "../hit-test/kept-shape.ts";

/** A scene with its lettering, and the site that it was placed for. */
export interface Lettered {
  readonly scene: Scene;
  readonly site: Site;
}

/** The scene without lettering, with names and marks of the lettered one put in where they belong now. */
export function withKeptLettering(scene: Scene, last: Lettered, site: Site, report: Report): Scene {
  const shifts = shiftsBetween(last.site, site);
  const findings = new Map(report.findings.map((finding) => [finding.id, finding]));
  const numbers = findingNumbers(report);
  const kept = (name: "names" | "marks"): Item[] => {
    const items = last.scene.layers.find((layer) => layer.name === name)?.items ?? [];
    return items.flatMap((item) => keptItem(item, shifts, findings, numbers, report.ties));
  };
  const layers = scene.layers.map((layer) =>
    layer.name === "names" || layer.name === "marks" ? { ...layer, items: kept(layer.name) } : layer,
  );
  return { ...scene, layers };
}

/** How far each element has moved; null for one that is gone. Elements that are as they were have no entry. */
function shiftsBetween(before: Site, now: Site): Map<string, Point | null> {
  const shifts = new Map<string, Point | null>();
  if (before === now) return shifts;
  const present = new Map<string, AnyElement>(now.elements.map((element) => [element.id, element]));
  for (const element of before.elements) {
    const other = present.get(element.id);
    if (other === element) continue;
    const [was, is] = [keptShape(element), other ? keptShape(other) : null];
    if (!was || !is) {
      shifts.set(element.id, null);
      continue;
    }
    const [from, to] = [shapeBounds(was), shapeBounds(is)];
    shifts.set(element.id, [to.minX - from.minX, to.minY - from.minY]);
  }
  return shifts;
}

function keptItem(
  item: Item,
  shifts: ReadonlyMap<string, Point | null>,
  findings: ReadonlyMap<string, Finding>,
  numbers: ReadonlyMap<string, number>,
  ties: Report["ties"],
): Item[] {
  if (item.kind === "text" && item.tie !== undefined) return keptTieNumber(item, ties[item.tie]);
  const shift = item.element === undefined ? undefined : shifts.get(item.element);
  if (shift === null || item.kind === "shape") return [];
  const moved = ([x, y]: Point): Point => (shift ? [x + shift[0], y + shift[1]] : [x, y]);
  if (item.kind === "symbol") return [{ ...item, at: moved(item.at) }];
  if (item.kind === "text") return [withMoved(item, moved)];
  const [id = ""] = item.findings ?? [];
  const finding = findings.get(id);
  const number = numbers.get(id);
  if (!finding || number === undefined) return [];
  const from = item.from && moved(item.from);
  return [{ ...withMoved(item, moved), from, number, outcome: finding.outcome }];
}

function withMoved<T extends TextItem | MarkItem>(item: T, moved: (p: Point) => Point): T {
  const { at, beside } = item;
  return { ...item, at: moved(at), ...(beside ? { beside: { ...beside, of: moved(beside.of) } } : {}) };
}

/** The number of a tie stays beside it, wherever the tie lies now. */
function keptTieNumber(item: TextItem, tie: Report["ties"][number] | undefined): Item[] {
  const { at, beside } = item;
  if (!tie || !beside) return [];
  const [dx, dy] = [tie.to[0] - beside.of[0], tie.to[1] - beside.of[1]];
  return [{ ...item, at: [at[0] + dx, at[1] + dy], beside: { ...beside, of: tie.to } }];
}
