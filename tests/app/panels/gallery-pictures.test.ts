// Pictures of the demo sites. Our own design, no source.
import { afterEach, expect, it, vi } from "vitest";
import { pictureMaker } from "../../../app/panels/gallery-pictures.ts";
import type { RecomputeRequest } from "../../../app/workers/messages.ts";
import { recompute } from "../../../rules/recompute.ts";
import { concretePool, siteOf } from "../../rules/recorded/yards.ts";

afterEach(() => vi.unstubAllGlobals());

/** A worker that answers at once, in the page itself. */
class WorkerAtHand {
  onmessage: ((event: { data: unknown }) => void) | null = null;
  postMessage(request: RecomputeRequest): void {
    if (!("site" in request)) throw new Error("the gallery asks about whole sites");
    const { revision, site } = request;
    this.onmessage?.({ data: { ok: true, revision, report: recompute(site, { withoutRoutes: true }) } });
  }
  terminate(): void {
    this.onmessage = null;
  }
}

it("a picture is whole in its address: a gallery that is closed meanwhile takes nothing from under it", () => {
  vi.stubGlobal("Worker", WorkerAtHand);
  const revoked = vi.spyOn(URL, "revokeObjectURL");
  const shown: string[] = [];
  const maker = pictureMaker((_, address) => shown.push(address));
  maker.draw(
    [
      { id: "pool", text: JSON.stringify(siteOf([concretePool()])) },
      { id: "no site", text: "{" },
    ],
    "sheet",
  );
  maker.close();
  expect(shown).toHaveLength(1);
  const [, svg = ""] = /^data:image\/svg\+xml,(.*)$/.exec(shown[0] ?? "") ?? [];
  expect(decodeURIComponent(svg)).toMatch(/^(<\?xml[^>]*>\s*)?<svg[^>]*>[\s\S]*<\/svg>\s*$/);
  expect(revoked).not.toHaveBeenCalled();
});
