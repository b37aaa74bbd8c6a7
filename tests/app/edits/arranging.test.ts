/** Turning, mirroring, lining up, spacing out, order. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { alignElements, distributeElements } from "../../../app/edits/align-elements.ts";
import { groupElements, setLocked } from "../../../app/edits/arrangement.ts";
import { deleteElements } from "../../../app/edits/delete-elements.ts";
import { mirrorCopies } from "../../../app/edits/duplicate-elements.ts";
import { boxOf } from "../../../app/edits/element-box.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { setOrder } from "../../../app/edits/set-order.ts";
import { mirrorElements, turnElements } from "../../../app/edits/turn-elements.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import { findAnswer, printOf } from "../../../rules/measures/answers.ts";
import { LARGEST_NUMBER } from "../../../rules/site/limits.ts";
import type { Site } from "../../../rules/site/site.ts";
import { applied, field, labelOf, refusalOf, sampleYard } from "./yard.ts";

const yard = sampleYard();

function siteOf(...elements: readonly unknown[]): Site {
  return { ...emptySite(), elements } as unknown as Site;
}

const post = (id: string, x: number, y: number) => ({ id, kind: "metal", shape: { point: [x, y] }, part: "post" });
const slab = (id: string, x: number, y: number, w: number, h: number) => ({
  id,
  kind: "surface",
  material: "concrete",
  outline: {
    closed: true,
    vertices: [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ],
  },
});
const wall = {
  id: "wall-1",
  kind: "wall",
  thickness: 8,
  path: {
    closed: false,
    vertices: [
      [0, 0],
      [200, 0],
    ],
  },
};
const door = {
  id: "opening-1",
  kind: "opening",
  opening: "hinged-door",
  path: {
    closed: false,
    vertices: [
      [40, 0],
      [76, 0],
    ],
  },
};

describe("turning and mirroring", () => {
  it("a quarter turn is exact to the last digit", () => {
    const site = applied(siteOf(slab("surface-1", 10, 20, 30, 5)), turnElements(["surface-1"], 90, [10, 20]));
    expect(field(site, "surface-1", "outline")).toEqual({
      closed: true,
      vertices: [
        [10, 20],
        [10, 50],
        [5, 50],
        [5, 20],
      ],
    });
    expect(labelOf(siteOf(post("metal-1", 0, 0)), turnElements(["metal-1"], 45, [0, 0]))).toMatch(/^Turn /);
    expect(turnElements(["surface-1"], 360, [0, 0]).apply(site)).toEqual({ ok: true, site });
  });

  it("mirroring makes bulges the opposite and leaves heights of wires", () => {
    const site = applied(yard, mirrorElements(["pool-1", "wires-1"], [0, 0], 90));
    const island = (field(yard, "pool-1", "islands") as { vertices: number[][] }[])[0]?.vertices ?? [];
    expect((field(site, "pool-1", "islands") as { vertices: number[][] }[])[0]?.vertices).toEqual(
      island.map(([x, y, bulge]) => [-(x ?? 0), y, -(bulge ?? 0)]),
    );
    const wires = (field(yard, "wires-1", "path") as { vertices: number[][] }).vertices;
    expect((field(site, "wires-1", "path") as { vertices: number[][] }).vertices.map(([, , z]) => z)).toEqual(
      wires.map(([, , z]) => z),
    );
  });

  it("a door goes with its wall, moved, turned or copied in a mirror; one beside it stays", () => {
    const far = {
      ...door,
      id: "opening-2",
      path: {
        closed: false,
        vertices: [
          [40, 11],
          [76, 11],
        ],
      },
    };
    const site = siteOf(wall, door, far);
    const turned = applied(site, turnElements(["wall-1"], 90, [0, 0]));
    expect(field(turned, "opening-1", "path")).toMatchObject({
      vertices: [
        [0, 40],
        [0, 76],
      ],
    });
    expect(field(turned, "opening-2", "path")).toEqual(far.path);
    expect(field(applied(site, moveElements(["wall-1"], 5, 6)), "opening-1", "path")).toMatchObject({
      vertices: [
        [45, 6],
        [81, 6],
      ],
    });
    const copied = applied(site, mirrorCopies(["wall-1"], [0, -50], 0));
    expect(copied.elements).toHaveLength(5);
    expect(field(copied, "opening-3", "path")).toMatchObject({
      vertices: [
        [40, -100],
        [76, -100],
      ],
    });
    expect(field(copied, "opening-1", "path")).toEqual(door.path);
  });

  it("a door is deleted with its wall, unless it lies in another wall, too; a locked one keeps both", () => {
    const site = siteOf(wall, door, post("metal-1", 40, 0));
    const deletion = deleteElements(["wall-1"]);
    expect(applied(site, deletion).elements.map(({ id }) => id)).toEqual(["metal-1"]);
    expect(labelOf(site, deletion)).toMatch(/^Delete wall 1 with .*door/);
    const twice = siteOf(wall, { ...wall, id: "wall-2" }, door);
    expect(applied(twice, deletion).elements.map(({ id }) => id)).toEqual(["wall-2", "opening-1"]);
    expect(applied(twice, deleteElements(["wall-1", "wall-2"])).elements).toEqual([]);
    const locked = applied(site, setLocked(["opening-1"], true));
    expect(refusalOf(locked, deletion).reason).toMatch(/is locked/);
  });

  it("refuses what the reader would refuse, and what has no place", () => {
    const far = siteOf(post("metal-1", LARGEST_NUMBER, 0));
    expect(refusalOf(far, turnElements(["metal-1"], 180, [LARGEST_NUMBER / -2, 0])).reason).toMatch(
      /farther from the origin/,
    );
    expect(refusalOf(yard, turnElements(["statue-1"], 5, [0, 0])).reason).toMatch(/cannot move/);
    expect(refusalOf(yard, mirrorElements(["pool-1"], [0, Number.NaN], 0)).reason).toMatch(/needs a place/);
    expect(refusalOf(yard, turnElements([], 5, [0, 0])).reason).toMatch(/Nothing is selected/);
  });

  it("an answer about what was turned lapses; one about another thing stands", () => {
    const about = (id: string) => ({
      question: "q",
      element: id,
      answer: "yes",
      about: printOf(yard, "nec-2020", id, null),
    });
    const site = { ...yard, answers: [about("fence-1"), about("pump-1")] };
    const turned = applied(site, turnElements(["fence-1"], 10, [0, 0]));
    expect(findAnswer(turned, "nec-2020", "q", "fence-1", null)?.lapsed).toBe(true);
    expect(findAnswer(turned, "nec-2020", "q", "pump-1", null)?.lapsed).toBe(false);
  });
});

describe("lining up and spacing out", () => {
  const three = siteOf(
    slab("surface-1", 0, 0, 10, 10),
    slab("surface-2", 50, 30, 20, 10),
    slab("surface-3", 100, 90, 30, 20),
  );
  const ids = ["surface-1", "surface-2", "surface-3"];
  const boxes = (site: Site) => site.elements.map((one) => boxOf(one));

  it.each([
    ["left", "minX", [0, 0, 0]],
    ["right", "maxX", [130, 130, 130]],
    ["top", "maxY", [110, 110, 110]],
    ["bottom", "minY", [0, 0, 0]],
    ["middle", "minX", [60, 55, 50]],
    ["center", "minY", [50, 50, 45]],
  ] as const)("%s", (alignment, side, expected) => {
    expect(boxes(applied(three, alignElements(ids, alignment))).map((box) => box?.[side])).toEqual(expected);
  });

  it("the same gap between each and the next, the outermost staying", () => {
    // 130 across less 10 + 20 + 30 leaves two gaps of 35.
    expect(boxes(applied(three, distributeElements(ids, "across"))).map((box) => box?.minX)).toEqual([0, 45, 100]);
    // 110 up less 10 + 10 + 20 leaves two gaps of 35.
    expect(boxes(applied(three, distributeElements(ids, "up"))).map((box) => box?.minY)).toEqual([0, 45, 90]);
    const again = applied(three, distributeElements(ids, "up"));
    expect(distributeElements(ids, "up").apply(again)).toEqual({ ok: true, site: again });
  });

  it("a group goes as one; a wall counts with its thickness", () => {
    const grouped = applied(three, groupElements(["surface-1", "surface-2"]));
    expect(boxes(applied(grouped, alignElements(ids, "right"))).map((box) => box?.maxX)).toEqual([70, 130, 130]);
    expect(refusalOf(grouped, alignElements(["surface-1", "surface-2"], "left")).reason).toMatch(/not one group/);
    expect(refusalOf(grouped, distributeElements(ids, "up")).reason).toMatch(/at least three/);
    const beside = applied(siteOf(wall, post("metal-1", 300, 50)), alignElements(["wall-1", "metal-1"], "bottom"));
    expect(field(beside, "metal-1", "shape")).toEqual({ point: [300, -4] });
  });

  it("is refused where one of them is locked", () => {
    const site = applied(three, setLocked(["surface-2"], true));
    expect(refusalOf(site, alignElements(ids, "left")).reason).toBe("Concrete surface 2 is locked. Unlock it first.");
  });
});

describe("order", () => {
  it("several keep their order among themselves, on top and underneath", () => {
    const site = siteOf(post("a", 0, 0), post("b", 0, 0), post("c", 0, 0), post("d", 0, 0));
    const ids = (one: Site) => one.elements.map(({ id }) => id).join("");
    expect(ids(applied(site, setOrder(["c", "a"], "over")))).toBe("bdac");
    expect(ids(applied(site, setOrder(["d", "b"], "under")))).toBe("bdac");
    expect(setOrder(["c", "d"], "over").apply(site)).toEqual({ ok: true, site });
    expect(refusalOf(site, setOrder(["z"], "over")).reason).toMatch(/no element "z"/);
  });
});
