/** The worker that compares two editions, as the page opens it. */
import type { ComparePort } from "./live-comparison.ts";

export function openCompareWorker(): ComparePort {
  return new Worker(new URL("../workers/compare.worker.ts", import.meta.url), {
    type: "module",
  }) as unknown as ComparePort;
}
