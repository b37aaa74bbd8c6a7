/** Works out reports off the page's own thread. A crash of a rule is reported as a crash, never as a finding. */
import { Recomputer } from "../../rules/recompute.ts";
import type { Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";
import { reportWithLabels } from "../../rules/words/field-words.ts";
import { briefReport } from "./brief-report.ts";
import type { RecomputeReply, RecomputeRequest } from "./messages.ts";
import { patchedSite, reportPatch } from "./patch.ts";

let recomputer = new Recomputer();
/** The last site that was answered with a report, and that report as it was sent. */
let held: { readonly site: Site; readonly report: Report } | null = null;

self.addEventListener("message", (event: MessageEvent<RecomputeRequest>) => {
  const request = event.data;
  const { revision, depth } = request;
  const started = performance.now();
  let reply: RecomputeReply;
  try {
    const before = "edit" in request ? held : null;
    const site = "site" in request ? request.site : patchedSite(heldSite(), request.edit);
    const report = reportWithLabels(recomputer.recompute(site, { withoutRoutes: depth === "quick" }), site);
    const given = before && request.watched ? briefReport(before.report, report, new Set(request.watched)) : report;
    held = { site, report: given };
    const took = performance.now() - started;
    reply = before
      ? { revision, depth, ok: true, changes: reportPatch(before.report, given), took, isBrief: given !== report }
      : { revision, depth, ok: true, report, took };
  } catch (error) {
    // What was kept half done is not used again.
    recomputer = new Recomputer();
    held = null;
    reply = { revision, depth, ok: false, message: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
});

function heldSite(): Site {
  if (!held) throw new Error("an edit came before any site");
  return held.site;
}
