/** What the page and the worker that recomputes say to each other. */
import type { Report } from "../../rules/report.ts";
import type { Site } from "../../rules/site/site.ts";

/** `quick` leaves the routes of branches for later. */
export type Depth = "quick" | "full";

export interface RecomputeRequest {
  readonly revision: number;
  readonly site: Site;
  readonly depth: Depth;
}

export type RecomputeReply =
  | {
      readonly revision: number;
      readonly depth: Depth;
      readonly ok: true;
      readonly report: Report;
      /** Milliseconds of work. */
      readonly took: number;
    }
  | { readonly revision: number; readonly depth: Depth; readonly ok: false; readonly message: string };
