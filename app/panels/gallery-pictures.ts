/** Small pictures of sites, worked out one after the other in a worker of their own, so that the sheet stays quick. */
import { readSite } from "../../rules/site/reader.ts";
import type { Site } from "../../rules/site/site.ts";
import type { PaletteName } from "../drawing/palette.ts";
import { planScene } from "../drawing/plan-scene.ts";
import { sceneToSvg } from "../drawing/svg.ts";
import type { RecomputeReply, RecomputeRequest } from "../workers/messages.ts";

/** Points to an inch: small, so that lines stay firm once the picture is shrunk to a card. */
const PICTURE_SCALE = 0.4;

export interface PictureMaker {
  /** Draws each site in turn; `onPicture` gets the address of its picture. Sites that cannot be read are passed over. */
  draw(sites: readonly { readonly id: string; readonly text: string }[], palette: PaletteName): void;
  /** Ends the work; what is drawn already stays. */
  close(): void;
}

export function pictureMaker(onPicture: (id: string, address: string) => void): PictureMaker {
  const worker = new Worker(new URL("../workers/recompute.worker.ts", import.meta.url), { type: "module" });
  const waiting = new Map<number, { id: string; site: Site; palette: PaletteName }>();
  let revision = 0;
  worker.onmessage = ({ data }: MessageEvent<RecomputeReply>) => {
    const asked = waiting.get(data.revision);
    waiting.delete(data.revision);
    // A site whose report fails has no picture; its card stands without one.
    if (!asked || !data.ok || !("report" in data)) return;
    const scene = planScene(asked.site, data.report, { withoutLettering: true, pointsPerInch: PICTURE_SCALE });
    const svg = sceneToSvg(scene, { title: asked.site.name ?? asked.id, palette: asked.palette, margin: 8 });
    // In the address itself: there is nothing to free while the picture may still be on its way into the page.
    onPicture(asked.id, `data:image/svg+xml,${encodeURIComponent(svg)}`);
  };
  return {
    draw(sites, palette) {
      for (const { id, text } of sites) {
        const read = readSite(text);
        if (!read.ok) continue;
        revision += 1;
        waiting.set(revision, { id, site: read.site, palette });
        const request: RecomputeRequest = { revision, site: read.site, depth: "quick" };
        worker.postMessage(request);
      }
    },
    close() {
      worker.terminate();
    },
  };
}
