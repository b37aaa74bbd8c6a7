/** Which of the two rings the plan lays: the even one, or the short one where the site asks for it and there is room. */
import type { RingLoop, RingReport } from "../report.ts";

export function laidRing(ring: RingReport, style: "even" | "short"): { loops: readonly RingLoop[]; length: number } {
  return style === "short" && ring.short ? ring.short : ring;
}
