/** Which items of a scene stay strong when a part of the article is chosen; the rest steps back behind the veil. */
import type { PartId } from "../../rules/catalogue/rule.ts";
import { partOf } from "../../rules/findings-by-part.ts";
import type { Report } from "../../rules/report.ts";
import type { Item, LayerName, Scene } from "../drawing/scene.ts";

/** Layers that belong to a part as a whole, whatever element their items stand for. */
const LAYERS_OF: Partial<Readonly<Record<PartId, readonly LayerName[]>>> = {
  shell: ["grid"],
  perimeter: ["band", "grid", "ring"],
  ties: ["ring", "ties"],
  "fixed-metal": ["reach"],
  copper: ["grid", "ring", "branches", "recorded", "ties"],
};

/** Zones and copper of a pool are not drawn strong because the pool is. */
const OF_A_PART_ONLY: ReadonlySet<LayerName> = new Set(["band", "reach", "grid", "ring", "ties", "dimensions"]);

/** The items of the scene that belong to the part, layer by layer in their order. Water always stays, to measure from. */
export function itemsOfPart(scene: Scene, report: Report, part: PartId): Item[] {
  const ids = new Set<string>();
  for (const finding of report.findings) {
    if (partOf(finding) !== part) continue;
    for (const id of [finding.element, finding.body]) if (id !== null) ids.add(id);
  }
  const whole = new Set(LAYERS_OF[part]);
  return scene.layers.flatMap(({ name, items }) => {
    if (name === "marks" || name === "water" || whole.has(name)) return items;
    if (OF_A_PART_ONLY.has(name)) return [];
    return items.filter(({ element }) => element !== undefined && ids.has(element));
  });
}
