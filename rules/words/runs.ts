/** What the runs of conductor in a takeoff are called. */
import type { Report } from "../report.ts";

/** The runs in the order in which they are laid; the ring names its links where copper joins loops of it. */
export function runNames({
  ring,
}: Pick<Report, "ring">): readonly (readonly [Exclude<keyof Report["takeoff"]["conductor"], "total">, string])[] {
  return [
    ["ring", (ring.links ?? []).length > 0 ? "ring with its links" : "ring"],
    ["grid", "grid"],
    ["ties", "ties to the shell"],
    ["branches", "branches"],
    ["drops", "drops"],
    ["tails", "tails"],
    ["spare", "spare"],
  ];
}
