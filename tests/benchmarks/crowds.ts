/**
 * Invented sites of growing size beside the naive pipeline: a drag frame (one post moved, the rest kept, routes left for
 * later), everything but the routes from nothing, and everything with its routes from nothing.
 */
import type { PathData } from "../../geometry/types.ts";
import { Recomputer, recompute } from "../../rules/recompute.ts";
import { checkSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";
import { crowdedSite, lobed } from "./crowd.ts";
import { alone, ms } from "./measure.ts";
import { naivePipeline } from "./naive-turf.ts";

interface Crowd {
  readonly name: string;
  readonly site: Site;
}

/** A kidney of four arcs, about 20 by 40 ft. */
const KIDNEY: PathData = {
  vertices: [
    [-150, -60, 0.3],
    [150, -60, 0.9],
    [150, 60, -0.2],
    [-150, 60, 0.9],
  ],
  closed: true,
};

const DEEPLY_LOBED: PathData = { vertices: lobed(512, 120, 5, 0.45), closed: true };

function withPool(site: Site, outline: PathData): Site {
  const elements = site.elements.map((one) => (one.kind === "pool" ? { ...one, outline } : one));
  return { ...site, elements: elements as Site["elements"] };
}

const CROWDS: readonly Crowd[] = [
  { name: "200 objects, 24 vertices", site: crowdedSite(200, 24) },
  { name: "200 objects, kidney of arcs", site: withPool(crowdedSite(200, 24), KIDNEY) },
  { name: "200 objects, 512 vertices", site: crowdedSite(200, 512) },
  { name: "200 objects, deeply lobed, 512", site: withPool(crowdedSite(200, 24), DEEPLY_LOBED) },
  { name: "200 objects, 5,000 vertices", site: crowdedSite(200, 5000) },
  { name: "1,000 objects, 512 vertices", site: crowdedSite(1000, 512) },
  { name: "10,000 objects, 512 vertices", site: crowdedSite(10_000, 512) },
];

/** The same site with one post moved each time it is asked for. */
function dragged({ site }: Crowd): () => Site {
  const post = site.elements.findIndex(({ id }) => id.startsWith("post-"));
  let frame = 0;
  return () => {
    frame += 1;
    const moved = { ...site.elements[post], shape: { point: [190 + (frame % 50), 130] } } as Site["elements"][number];
    return { ...site, elements: site.elements.map((one, i) => (i === post ? moved : one)) };
  };
}

export function benchCrowds(): void {
  console.log(
    "Invented crowds round one pool, six walls and a house; naive = the same questions asked of turf, run once.",
  );
  console.log("Times naive takes as a multiple, then milliseconds (medians).");
  console.log(
    "site".padEnd(31),
    "naive/drag".padStart(10),
    "naive/full".padStart(10),
    "    drag    quick     full    naive",
  );
  for (const crowd of CROWDS) {
    const read = checkSite(crowd.site);
    if (!read.ok) throw new Error(`${crowd.name}: ${read.refusal.message}`);
    // From nothing first, as it is when a site is opened: nothing of it is kept yet.
    const runs = crowd.name.includes("5,000") ? 5 : 15;
    const quick = alone(() => void recompute(crowd.site, { withoutRoutes: true }), runs, 5).median;
    const full = alone(() => void recompute(crowd.site), runs, 3).median;
    const recomputer = new Recomputer();
    const next = dragged(crowd);
    const drag = alone(() => void recomputer.recompute(next(), { withoutRoutes: true }), 60, 20).median;
    const naive = alone(() => void naivePipeline(crowd.site), 1, 0).median;
    console.log(
      crowd.name.padEnd(31),
      `${(naive / drag).toFixed(0)} x`.padStart(10),
      `${(naive / full).toFixed(1)} x`.padStart(10),
      ms(drag),
      ms(quick),
      ms(full),
      ms(naive),
    );
  }
}
