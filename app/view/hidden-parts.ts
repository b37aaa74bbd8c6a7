/** Layers by the code's parts: what is not drawn while parts are hidden. It is judged all the same. */
import type { PartId } from "../../rules/catalogue/rule.ts";
import { partOf } from "../../rules/findings-by-part.ts";
import type { Report } from "../../rules/report.ts";
import type { Item, LayerName, Scene } from "../drawing/scene.ts";

/** Layers that are hidden with a part: what only this part draws. */
const DRAWN_FOR: Partial<Readonly<Record<PartId, readonly LayerName[]>>> = {
  perimeter: ["band", "grid", "ring"],
  ties: ["ties"],
  "fixed-metal": ["reach"],
  copper: ["branches", "recorded"],
};

const hiddenBy = new WeakMap<Report, Map<string, ReadonlySet<string>>>();

/**
 * Ids of the elements that are not drawn while parts are hidden: those with findings in hidden parts only. Water always
 * stays, to measure from.
 */
export function idsOfHiddenParts(report: Report, parts: readonly PartId[]): ReadonlySet<string> {
  const key = parts.join(" ");
  const known = hiddenBy.get(report)?.get(key);
  if (known) return known;
  const hidden = new Set<PartId>(parts);
  const ids = new Set<string>();
  if (parts.length > 0) {
    for (const finding of report.findings) if (finding.element !== null) ids.add(finding.element);
    for (const finding of report.findings) {
      if (finding.element !== null && !hidden.has(partOf(finding))) ids.delete(finding.element);
      if (finding.body !== null) ids.delete(finding.body);
    }
  }
  hiddenBy.set(report, (hiddenBy.get(report) ?? new Map()).set(key, ids));
  return ids;
}

/** Of these, the elements that hidden parts leave drawn; all of them before there is a report. */
export function drawnOf(ids: readonly string[], report: Report | null, parts: readonly PartId[]): readonly string[] {
  if (!report || parts.length === 0) return ids;
  const hidden = idsOfHiddenParts(report, parts);
  return ids.filter((id) => !hidden.has(id));
}

/** The scene without the geometry, names and numbers of hidden parts; the same scene when none is. */
export function withoutParts(scene: Scene, report: Report, parts: readonly PartId[]): Scene {
  if (parts.length === 0) return scene;
  const ids = idsOfHiddenParts(report, parts);
  const hidden = new Set<PartId>(parts);
  const layers = new Set(parts.flatMap((part) => DRAWN_FOR[part] ?? []));
  const ofHidden = new Set(report.findings.filter((finding) => hidden.has(partOf(finding))).map(({ id }) => id));
  const stays = ({ element, findings = [] }: Item): boolean =>
    !(element !== undefined && ids.has(element)) &&
    (findings.length === 0 || findings.some((finding) => !ofHidden.has(finding)));
  return {
    ...scene,
    layers: scene.layers.map(({ name, items }) => {
      if (name === "focus" || name === "water") return { name, items };
      return { name, items: layers.has(name) ? [] : items.filter(stays) };
    }),
  };
}
