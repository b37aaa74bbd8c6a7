/** The table that a plan is drawn on: layers being filled, and what every part of the drawing has to know. */
import type { PathData } from "../../geometry/types.ts";
import type { Report } from "../../rules/report.ts";
import { KINDS, type KnownElement, type PoolElement, type UnknownElement } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { type Item, LAYERS, type Layer, type LayerName } from "./scene.ts";
import { SYMBOLS } from "./symbols.ts";

export class Drafting {
  readonly site: Site;
  readonly report: Report;
  /** Points of paper to an inch of the site. */
  readonly pointsPerInch: number;
  readonly units: Units;
  readonly pools: readonly PoolElement[];
  readonly byId: ReadonlyMap<string, KnownElement | UnknownElement>;
  /** Numbers of findings that found no room on the plan. */
  readonly unmarked: number[] = [];
  private readonly items = new Map<LayerName, Item[]>(LAYERS.map((name) => [name, []]));

  constructor(site: Site, report: Report, pointsPerInch: number) {
    if (!(pointsPerInch > 0) || !Number.isFinite(pointsPerInch)) {
      throw new RangeError(`A plan needs a scale above 0 points to the inch, not ${pointsPerInch}.`);
    }
    this.site = site;
    this.report = report;
    this.pointsPerInch = pointsPerInch;
    this.units = site.display?.units ?? "ft-in";
    this.pools = site.elements.filter((element): element is PoolElement => element.kind === "pool");
    this.byId = new Map(site.elements.map((element) => [element.id, element]));
  }

  add(layer: LayerName, item: Item): void {
    this.items.get(layer)?.push(item);
  }

  /** Inches of the site that take up so many points of paper. */
  inches(points: number): number {
    return points / this.pointsPerInch;
  }

  itemsOf(layer: LayerName): readonly Item[] {
    return this.items.get(layer) ?? [];
  }

  /** Half the size of the symbol that an element is drawn as, points; 0 where it has none. */
  symbolReach(element: string): number {
    for (const items of this.items.values()) {
      for (const item of items) {
        if (item.kind === "symbol" && item.element === element) return SYMBOLS[item.symbol].reach;
      }
    }
    return 0;
  }

  layers(): Layer[] {
    return LAYERS.map((name) => ({ name, items: this.items.get(name) ?? [] }));
  }
}

/** The outline of an element that is always an area; null for other kinds. */
export function outlineOf(element: KnownElement | UnknownElement): PathData | null {
  if (!isKnown(element)) return null;
  switch (element.kind) {
    case "pool":
    case "inset":
    case "surface":
    case "building":
    case "structure":
    case "keep-out":
      return element.outline;
    default:
      return null;
  }
}

const KNOWN: ReadonlySet<string> = new Set(KINDS);

export function isKnown(element: KnownElement | UnknownElement): element is KnownElement {
  return KNOWN.has(element.kind);
}
