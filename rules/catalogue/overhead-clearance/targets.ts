/**
 * What an overhead line has to keep clear of: the water with its edge, the base of diving platforms, rafts, and the tops of
 * stands, towers and platforms. Source: NEC 680.9, restated.
 */
import type { Area } from "../../../geometry/types.ts";
import type { ParameterId } from "../../editions/parameter-types.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { OverheadElement, StructureElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";

export interface Target {
  readonly name: string;
  readonly area: Area;
  /** Level of its highest part; undefined: not given. */
  readonly level: number | undefined;
  /** The field that gives it. */
  readonly field: string;
  readonly parameter: LimitId;
  /** Not named by the code: too near is a question. */
  readonly argued: boolean;
}

type LimitId = Extract<ParameterId, `overhead.${string}`>;

/** Limits to the water and to stands. */
const LIMITS: Readonly<Record<OverheadElement["class"], readonly [LimitId, LimitId]>> = {
  "insulated-750": ["overhead.insulated750", "overhead.platformInsulated750"],
  "to-15kv": ["overhead.to15kv", "overhead.platformTo15kv"],
  "to-50kv": ["overhead.to50kv", "overhead.platformTo50kv"],
  communications: ["overhead.communications", "overhead.communications"],
  broadband: ["overhead.broadband", "overhead.platformBroadband"],
};

/** Structures with a base that people dive or climb from at the water. */
const WITH_BASE: ReadonlySet<string> = new Set(["diving-board", "platform"]);

export function targetsOf(yard: Yard, body: Body, line: OverheadElement): Target[] {
  const [toWater, toStands] = LIMITS[line.class];
  const water: Target = {
    name: elementName(body.element),
    area: body.water,
    level: body.waterLevel,
    field: `waterLevel of ${body.id}`,
    parameter: toWater,
    argued: false,
  };
  const targets = [water];
  for (const structure of structuresOf(yard, body)) {
    const shape = yard.shape(structure);
    if (shape.kind !== "area") continue;
    const { area } = shape;
    const name = elementName(structure);
    const kind = structure.structure;
    const itself = { name, area, level: structure.top, field: `top of ${structure.id}` };
    if (kind === "raft") {
      targets.push({ ...itself, parameter: toWater, argued: false });
      continue;
    }
    if (WITH_BASE.has(kind))
      targets.push({
        ...itself,
        name: `the base of ${name}`,
        ...baseOf(yard, area),
        parameter: toWater,
        argued: false,
      });
    targets.push({ ...itself, parameter: toStands, argued: kind === "slide" });
  }
  return targets;
}

/** The structures that stand nearest to this body. */
function structuresOf(yard: Yard, body: Body): StructureElement[] {
  return yard.all("structure").filter((structure) => yard.nearestBody(structure) === body);
}

/** The structures that carry the clearance out to their outer edge: all but slides, which the code does not name. */
export function standsOf(yard: Yard, body: Body): StructureElement[] {
  return structuresOf(yard, body).filter(({ structure }) => structure !== "slide");
}

/** Level of the ground that it stands on, the highest under its corners. */
function baseOf(yard: Yard, area: Area): Pick<Target, "level" | "field"> {
  const feet = area.outer.edges.map(({ from }) => yard.levelAt(from));
  const unknown = feet.find(({ given }) => !given);
  if (unknown) return { level: undefined, field: `level of ${unknown.surface}` };
  return { level: Math.max(...feet.map(({ z }) => z)), field: "grade" };
}
