/** Parts, devices and lines: metal, equipment, electrical devices, underwater lights, water contacts, lines overhead and below. */
import { pointToArea } from "../../geometry/distance.ts";
import { areaFrom, pathFrom } from "../../geometry/outline.ts";
import type { Path, Point } from "../../geometry/types.ts";
import { shapeOf } from "../../rules/measures/shapes.ts";
import type { DeviceElement, KnownElement, MetalElement, OverheadElement } from "../../rules/site/elements.ts";
import type { Drafting } from "./drafting.ts";
import { marksAlong } from "./ground-layers.ts";
import type { SymbolItem } from "./scene.ts";
import { areaSteps, pathSteps } from "./steps.ts";
import { EQUIPMENT_LETTERS, type SymbolName } from "./symbols.ts";

/** Draws a part into its layer; false when it is not of this sort. */
export function drawPart(element: KnownElement, drafting: Drafting): boolean {
  switch (element.kind) {
    case "metal":
      drawMetal(element, drafting);
      return true;
    case "equipment":
      drafting.add("equipment", {
        ...symbol("equipment", element.at, element.id),
        role: "equipment",
        letters: EQUIPMENT_LETTERS[element.unit]?.[0] ?? "E",
      });
      return true;
    case "device":
      drafting.add("devices", { ...symbol(deviceSymbol(element), element.at, element.id), role: "device" });
      return true;
    case "underwater-light": {
      const turn = turnFromWater(element.at, drafting);
      drafting.add("lights", { ...symbol("underwater-light", element.at, element.id), role: "light", turn });
      return true;
    }
    case "water-bond":
      drafting.add("lights", { ...symbol("water-bond", element.at, element.id), role: "copper-symbol" });
      return true;
    case "overhead-line":
      drawLine(lineOf(element), "overhead", element.id, drafting);
      return true;
    case "underground-run":
      drawLine(pathFrom(element.path), "underground", element.id, drafting);
      return true;
    default:
      return false;
  }
}

function symbol(name: SymbolName, at: Point, element: string): Omit<SymbolItem, "role"> {
  return { kind: "symbol", symbol: name, at, turn: 0, element };
}

/** The device names of the format are the names of their symbols. */
function deviceSymbol(device: DeviceElement): SymbolName {
  return device.device;
}

/** The symbol of a metal part that is a point, by its trade name. */
export function metalSymbol(part: string | undefined): SymbolName {
  const name = part?.toLowerCase() ?? "";
  if (/ladder|rail|step/.test(name)) return "ladder";
  if (/drain|skimmer|grate/.test(name)) return "drain";
  if (/cup|anchor|socket|escutcheon/.test(name)) return "cup";
  if (/pole|post|column|awning|umbrella|light/.test(name)) return "post";
  return "metal-part";
}

function drawMetal(metal: MetalElement, drafting: Drafting): void {
  const shape = shapeOf(metal);
  if (shape.kind === "point") {
    const name = metalSymbol(metal.part);
    const turn = name === "ladder" ? turnFromWater(shape.at, drafting) : 0;
    drafting.add("metal", { ...symbol(name, shape.at, metal.id), role: "metal", turn });
    return;
  }
  const steps = shape.kind === "path" ? pathSteps(shape.path) : areaSteps(shape.area);
  drafting.add("metal", { kind: "shape", role: "metal-area", steps, element: metal.id });
  const outline = shape.kind === "path" ? shape.path : shape.area.outer;
  const [first] = marksAlong(outline, Number.POSITIVE_INFINITY);
  if (first) drafting.add("metal", { ...symbol("metal-part", first.at, metal.id), role: "metal" });
}

/** Degrees by which a symbol is turned so that its foot points to the nearest water. */
function turnFromWater(at: Point, drafting: Drafting): number {
  let best: { length: number; toward: Point } | null = null;
  for (const pool of drafting.pools) {
    const water = areaFrom(pool.outline, pool.islands);
    const { length, from } = pointToArea(at, water);
    if (length > 0 && (best === null || length < best.length)) best = { length, toward: from };
  }
  if (best === null) return 0;
  const angle = Math.atan2(best.toward[1] - at[1], best.toward[0] - at[0]);
  return (angle * 180) / Math.PI + 90;
}

function lineOf(element: OverheadElement): Path {
  return pathFrom({ closed: false, vertices: element.path.vertices.map(([x, y]): Point => [x, y]) });
}

function drawLine(path: Path, layer: "overhead" | "underground", element: string, drafting: Drafting): void {
  drafting.add(layer, { kind: "shape", role: layer, steps: pathSteps(path), element });
}

/** A direction in degrees turned round where type along it would stand on its head. */
export function readable(turn: number): number {
  const around = ((turn % 360) + 360) % 360;
  return around > 90 && around <= 270 ? around - 180 : around > 270 ? around - 360 : around;
}
