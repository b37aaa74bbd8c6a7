/** What a device says that it serves. */
import type { Yard } from "../../measures/yard.ts";
import type { DeviceElement, KnownElement } from "../../site/elements.ts";

/** The entries of `serves`; undefined where it is not given. */
export function servedBy(device: DeviceElement): readonly string[] | undefined {
  if (device.serves === undefined) return undefined;
  return typeof device.serves === "string" ? [device.serves] : device.serves;
}

/** The elements that it serves, by id. */
export function servedElements(yard: Yard, device: DeviceElement): KnownElement[] {
  return (servedBy(device) ?? []).flatMap((id) => yard.get(id) ?? []);
}

/** Whether an outlet is for a luminaire or a fan; `unknown` where what it serves is not given. */
export function servesLighting(yard: Yard, outlet: DeviceElement): "yes" | "no" | "unknown" {
  const serves = servedBy(outlet);
  if (serves === undefined) return "unknown";
  const isLight = (entry: string) => {
    const served = yard.get(entry);
    if (served) return served.kind === "device" && (served.device === "luminaire" || served.device === "fan");
    return /\b(lights?|lighting|lamps?|lanterns?|luminaires?|fans?)\b/i.test(entry.replaceAll(/[-_]/g, " "));
  };
  return serves.some(isLight) ? "yes" : "no";
}
