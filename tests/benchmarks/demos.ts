/** Recompute of every demo site beside the naive pipeline, in one run. */
import { readdirSync, readFileSync } from "node:fs";
import { recompute } from "../../rules/recompute.ts";
import { readSite } from "../../rules/site/reader.ts";
import { inTurn, ms } from "./measure.ts";
import { naivePipeline } from "./naive-turf.ts";

const RUNS = 9;
const WARM_UPS = 2;

export function benchDemos(folder: URL): void {
  console.log("Recompute of the demo sites, milliseconds (median of", RUNS, "runs, A and B in turn)");
  console.log("site               elements    quick     full    naive  naive/full  naive/quick");
  for (const file of readdirSync(folder).filter((name) => name.endsWith(".site.json"))) {
    const read = readSite(readFileSync(new URL(file, folder), "utf8"));
    if (!read.ok) throw new Error(`${file}: ${read.refusal.message}`);
    const { site } = read;
    const full = inTurn(
      () => void recompute(site),
      () => void naivePipeline(site),
      RUNS,
      WARM_UPS,
    );
    const quick = inTurn(
      () => void recompute(site, { withoutRoutes: true }),
      () => void naivePipeline(site),
      RUNS,
      1,
    );
    console.log(
      file.replace(".site.json", "").padEnd(18),
      String(site.elements.length).padStart(8),
      ms(quick.a.median),
      ms(full.a.median),
      ms(full.b.median),
      `${(full.b.median / full.a.median).toFixed(1)} x`.padStart(11),
      `${(quick.b.median / quick.a.median).toFixed(1)} x`.padStart(12),
    );
  }
}
