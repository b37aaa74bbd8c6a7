// @vitest-environment happy-dom
// Parts of the page that come later, or do not: the rest of the page goes on. React's documentation on lazy and boundaries.
import { act } from "react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { later } from "../../../app/panels/later.tsx";
import { PartBoundary } from "../../../app/panels/part-boundary.tsx";
import { StoppedPage } from "../../../app/panels/stopped-page.tsx";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "./panel-bench.tsx";

let page: Bench;
beforeEach(() => {
  page = bench(siteOf([]));
  // React tells of what a boundary catches.
  vi.spyOn(console, "error").mockImplementation(() => undefined);
});
afterEach(() => {
  page.close();
  vi.restoreAllMocks();
});

const settled = () => act(async () => {});

describe("a part that comes later", () => {
  const failingOnce = (failures: number) => {
    let calls = 0;
    return later(async () => {
      calls += 1;
      if (calls <= failures) throw new Error("no network");
      return () => <p>It is here.</p>;
    });
  };
  const beside = (part: React.ReactNode) => (
    <>
      <p>The sheet.</p>
      {part}
    </>
  );

  it("that does not come leaves the page as it is, says so, and comes when it is asked for again", async () => {
    const Part = failingOnce(1);
    page.show(beside(<Part />));
    await settled();
    expect(page.box.textContent).toContain("The sheet.");
    expect(page.query("[role=alert]").textContent).toContain("no network");
    page.press(page.button("Try again"));
    await settled();
    expect(page.box.textContent).toContain("It is here.");
    expect(page.all("[role=alert]")).toHaveLength(0);
  });

  it("is asked for again when it is shown the next time", async () => {
    const Part = failingOnce(1);
    page.show(beside(<Part />));
    await settled();
    page.show(beside(null));
    page.show(beside(<Part />));
    await settled();
    expect(page.box.textContent).toContain("It is here.");
  });

  it("that breaks off once it is there takes nothing else with it", async () => {
    const Part = later(async () => (): React.ReactNode => {
      throw new Error("a part broke");
    });
    page.show(beside(<Part />));
    await settled();
    page.show(beside(null));
    page.show(beside(<Part />));
    expect(page.box.textContent).toContain("The sheet.");
    expect(page.query("[role=alert]").textContent).toContain("a part broke");
  });
});

function Broken(): React.ReactNode {
  throw new Error("a panel broke");
}

describe("a page that breaks", () => {
  it("says why, and lets the site be saved", () => {
    page.show(
      <PartBoundary instead={(failure) => <StoppedPage failure={failure} />}>
        <Broken />
      </PartBoundary>,
    );
    expect(page.query("[role=alert]").textContent).toContain("a panel broke");
    page.press(page.button("Save the site"));
    expect(page.asked).toContain("files.save");
  });
});
