/** Works out reports off the page's own thread. A crash of a rule is reported as a crash, never as a finding. */
import { recompute } from "../../rules/recompute.ts";
import type { RecomputeReply, RecomputeRequest } from "./messages.ts";

self.addEventListener("message", (event: MessageEvent<RecomputeRequest>) => {
  const { revision, site, depth } = event.data;
  const started = performance.now();
  let reply: RecomputeReply;
  try {
    const report = recompute(site, { withoutRoutes: depth === "quick" });
    reply = { revision, depth, ok: true, report, took: performance.now() - started };
  } catch (error) {
    reply = { revision, depth, ok: false, message: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
});
