/** Whether a site has pools and all of them are storable, so that nothing recorded is held against 680.26. */
import type { Yard } from "../../measures/yard.ts";
import { bondedBodies } from "./storable.ts";

/** Why nothing is asked of recorded copper on this site; null where something is. */
export function storableOnly(yard: Yard): string | null {
  if (yard.bodies.length === 0 || bondedBodies(yard).length > 0) return null;
  return "every pool of this site is storable, and 680.26 does not ask for bonding there.";
}
