/** Whether a piece of equipment is connected to electricity: said so, or so by its nature; for a tank an open question. */
import type { EquipmentElement } from "../../site/elements.ts";
import { NO, notGiven, open, type Truth, YES } from "./truth.ts";

/** Units that need electricity to work. */
const ELECTRIC_BY_NATURE: ReadonlySet<string> = new Set([
  "pump",
  "heater",
  "controller",
  "cover-motor",
  "blower",
  "heat-pump",
]);

/** The open fact asks whether it is NOT electric, which is what frees it. */
export function isElectric(element: EquipmentElement): Truth {
  if (element.electric !== undefined) return element.electric ? YES : NO;
  if (ELECTRIC_BY_NATURE.has(element.unit)) return YES;
  return open(notGiven("electric", "Whether it is electric", "Is it without any connection to electricity?"));
}
