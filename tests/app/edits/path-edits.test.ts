/** Edits of corners, sides and outlines. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { deleteVertex } from "../../../app/edits/delete-vertex.ts";
import { addInnerOutline, removeInnerOutline } from "../../../app/edits/inner-outlines.ts";
import { insertVertex } from "../../../app/edits/insert-vertex.ts";
import { moveVertex } from "../../../app/edits/move-vertex.ts";
import { type PathRef, pathOf, pathRefs } from "../../../app/edits/path-ref.ts";
import { setBulge } from "../../../app/edits/set-bulge.ts";
import { setHeight } from "../../../app/edits/set-height.ts";
import { setPath } from "../../../app/edits/set-path.ts";
import { edgeFromVertices } from "../../../geometry/edge.ts";
import { pathFrom, pathLength, signedArea } from "../../../geometry/outline.ts";
import type { PathData } from "../../../geometry/types.ts";
import type { Site } from "../../../rules/site/site.ts";
import { applied, element, field, labelOf, refusalOf, sampleYard } from "./yard.ts";

const OUTLINE: PathRef = { field: "outline" };
const PATH: PathRef = { field: "path" };
const yard = sampleYard();

function path(site: Site, id: string, ref: PathRef): PathData {
  const found = pathOf(element(site, id), ref);
  if (!found) throw new Error(`"${id}" has no such path.`);
  return found;
}

describe("moving a corner", () => {
  it("moves that corner only and keeps the bulge of its side", () => {
    const site = applied(yard, moveVertex("pool-1", OUTLINE, 1, [400, -10]));
    expect(path(site, "pool-1", OUTLINE).vertices).toEqual([
      [0, 0],
      [400, -10, 0.25],
      [384, 192],
      [0, 192],
    ]);
    expect(field(site, "pool-1", "islands")).toBe(field(yard, "pool-1", "islands"));
    expect(labelOf(yard, moveVertex("deck-1", OUTLINE, 0, [0, 0]))).toBe("Move a corner of concrete surface 1");
  });

  it("keeps a height, an island and a hole", () => {
    const line = applied(yard, moveVertex("wires-1", PATH, 1, [610, 310]));
    expect(path(line, "wires-1", PATH).vertices[1]).toEqual([610, 310, 300]);
    const island = applied(yard, moveVertex("pool-1", { field: "islands", index: 0 }, 0, [90, 80]));
    expect(path(island, "pool-1", { field: "islands", index: 0 }).vertices[0]).toEqual([90, 80, 1]);
    const hole = applied(yard, moveVertex("deck-1", { field: "holes", index: 0 }, 2, [-42, -42]));
    expect(path(hole, "deck-1", { field: "holes" }).vertices[2]).toEqual([-42, -42]);
  });

  it("to where it is changes nothing at all", () => {
    const result = moveVertex("pool-1", OUTLINE, 0, [0, 0]).apply(yard);
    expect(result.ok && result.site).toBe(yard);
  });

  it("is refused when the outline would cross itself, with the corners counted from 1", () => {
    // Corner 3 drawn far below the side from corner 1 to corner 2 (edges 0 and 2 of a rectangle cross).
    const refusal = refusalOf(yard, moveVertex("deck-1", OUTLINE, 2, [200, -200]));
    expect(refusal.reason).toBe("The outline would cross itself between corner 1 and corner 3.");
    expect(refusal).toMatchObject({ element: "deck-1", field: "outline" });
  });

  it("is refused on its neighbor, off the earth, folded back, and where there is no corner", () => {
    expect(refusalOf(yard, moveVertex("deck-1", OUTLINE, 1, [-60, -60])).reason).toBe(
      "The outline would have corner 2 on corner 1.",
    );
    expect(refusalOf(yard, moveVertex("deck-1", OUTLINE, 3, [-60, -60])).reason).toBe(
      "The outline would have its last corner on its first.",
    );
    expect(refusalOf(yard, moveVertex("deck-1", OUTLINE, 1, [2e6, 0])).reason).toMatch(/farther from the origin/);
    expect(refusalOf(yard, moveVertex("deck-1", OUTLINE, 1, [Number.NaN, 0])).reason).toMatch(/without a place/);
    expect(refusalOf(yard, moveVertex("board-1", OUTLINE, 2, [370, 80])).reason).toMatch(/fold|cross/);
    expect(refusalOf(yard, moveVertex("deck-1", OUTLINE, 9, [0, 0])).reason).toMatch(/no corner 10/);
    expect(refusalOf(yard, moveVertex("pump-1", OUTLINE, 0, [0, 0])).reason).toMatch(/no such outline/);
    expect(refusalOf(yard, moveVertex("nobody", OUTLINE, 0, [0, 0])).reason).toMatch(/no element "nobody"/);
    expect(refusalOf(yard, moveVertex("statue-1", OUTLINE, 0, [0, 0])).element).toBe("statue-1");
  });

  it("names an island or an opening that would cross itself", () => {
    const square: PathData = {
      vertices: [
        [20, 20],
        [60, 20],
        [60, 60],
        [20, 60],
      ],
      closed: true,
    };
    const site = applied(yard, addInnerOutline("pool-1", square));
    const ref: PathRef = { field: "islands", index: 1 };
    expect(refusalOf(site, moveVertex("pool-1", ref, 2, [40, 0])).reason).toMatch(/^Island 2 would cross itself/);
  });

  it("may let a fence cross itself, which is no outline", () => {
    expect(path(applied(yard, moveVertex("fence-1", PATH, 3, [0, 600])), "fence-1", PATH).vertices).toHaveLength(4);
  });
});

describe("bending a side", () => {
  it("sets, changes and straightens the bulge", () => {
    const bent = applied(yard, setBulge("deck-1", OUTLINE, 0, -0.1));
    expect(path(bent, "deck-1", OUTLINE).vertices[0]).toEqual([-60, -60, -0.1]);
    const straight = applied(bent, setBulge("deck-1", OUTLINE, 0, 0));
    expect(path(straight, "deck-1", OUTLINE).vertices[0]).toEqual([-60, -60]);
    expect(setBulge("pool-1", OUTLINE, 1, 0.25).apply(yard)).toEqual({ ok: true, site: yard });
  });

  it("is refused where it cannot be", () => {
    expect(refusalOf(yard, setBulge("deck-1", OUTLINE, 0, -1.2)).reason).toMatch(/cross itself/);
    expect(refusalOf(yard, setBulge("deck-1", OUTLINE, 0, 1e5)).reason).toMatch(
      /cross itself|arc after corner 1 would lie farther/,
    );
    expect(refusalOf(yard, setBulge("wires-1", PATH, 0, 0.5)).reason).toMatch(/runs straight/);
    expect(refusalOf(yard, setBulge("fence-1", PATH, 3, 0.5)).reason).toMatch(/last corner of an open line/);
  });

  it("names the arc that reaches too far", () => {
    const site = applied(
      yard,
      setPath("run-1", PATH, {
        vertices: [
          [0, 0],
          [900_000, 0],
        ],
        closed: false,
      }),
    );
    expect(refusalOf(site, setBulge("run-1", PATH, 0, 5)).reason).toMatch(/^The arc after corner 1 would lie farther/);
  });
});

describe("adding a corner", () => {
  it("keeps the shape of a straight side and of an arc", () => {
    const before = pathFrom(path(yard, "pool-1", OUTLINE));
    const edge = edgeFromVertices([384, 0, 0.25], [384, 192]);
    if (edge.kind !== "arc") throw new Error("The sample's side should be an arc.");
    const outermost: [number, number] = [edge.center[0] + edge.radius, edge.center[1]];
    const site = applied(
      applied(yard, insertVertex("pool-1", OUTLINE, 1, outermost)),
      insertVertex("pool-1", OUTLINE, 0, [100, 0]),
    );
    const after = path(site, "pool-1", OUTLINE);
    expect(after.vertices).toHaveLength(6);
    expect(after.vertices[1]).toEqual([100, 0]);
    expect(pathLength(pathFrom(after))).toBeCloseTo(pathLength(before), 9);
    expect(signedArea(pathFrom(after))).toBeCloseTo(signedArea(before), 6);
  });

  it("closes the round over the last side, and takes a height between", () => {
    const site = applied(yard, insertVertex("deck-1", OUTLINE, 3, [-60, 100]));
    expect(path(site, "deck-1", OUTLINE).vertices[4]).toEqual([-60, 100]);
    const line = applied(yard, insertVertex("wires-1", PATH, 0, [200, 300]));
    expect(path(line, "wires-1", PATH).vertices[1]).toEqual([200, 300, 315]);
  });

  it("is refused past the end of an open line and on a corner", () => {
    expect(refusalOf(yard, insertVertex("run-1", PATH, 1, [600, 220])).reason).toMatch(/last corner/);
    expect(refusalOf(yard, insertVertex("deck-1", OUTLINE, 0, [-60, -60])).reason).toMatch(/corner 2 on corner 1/);
  });
});

describe("taking a corner out", () => {
  it("joins two arcs of one circle again, and other sides straight", () => {
    const edge = edgeFromVertices([384, 0, 0.25], [384, 192]);
    if (edge.kind !== "arc") throw new Error("The sample's side should be an arc.");
    const split = applied(yard, insertVertex("pool-1", OUTLINE, 1, [edge.center[0] + edge.radius, edge.center[1]]));
    const joined = path(applied(split, deleteVertex("pool-1", OUTLINE, 2)), "pool-1", OUTLINE);
    expect(joined.vertices[1]?.[2]).toBeCloseTo(0.25, 9);
    const straight = path(applied(yard, deleteVertex("pool-1", OUTLINE, 2)), "pool-1", OUTLINE);
    expect(straight.vertices).toEqual([
      [0, 0],
      [384, 0],
      [0, 192],
    ]);
  });

  it("at either end of an open line leaves the rest", () => {
    const first = path(applied(yard, deleteVertex("fence-1", PATH, 0)), "fence-1", PATH);
    expect(first.vertices[0]).toEqual([500, 500]);
    const last = path(applied(yard, deleteVertex("wires-1", PATH, 2)), "wires-1", PATH);
    expect(last.vertices).toEqual([
      [-200, 300, 330],
      [600, 300, 300],
    ]);
  });

  it("is refused when too few are left", () => {
    expect(refusalOf(yard, deleteVertex("run-1", PATH, 0)).reason).toMatch(/at least two/);
    const triangle = refusalOf(yard, deleteVertex("tree-1", OUTLINE, 0));
    expect(triangle.reason).toBe("The outline needs at least three corners, or an arc, to enclose an area.");
  });
});

describe("heights, islands and openings", () => {
  it("sets the height of a point of an overhead line, or leaves it unknown", () => {
    expect(path(applied(yard, setHeight("wires-1", 0, 300)), "wires-1", PATH).vertices[0]).toEqual([-200, 300, 300]);
    expect(path(applied(yard, setHeight("wires-1", 0, undefined)), "wires-1", PATH).vertices[0]).toEqual([-200, 300]);
    expect(refusalOf(yard, setHeight("fence-1", 0, 3)).reason).toMatch(/overhead line/);
  });

  it("adds and takes away what is cut out, and the field goes with the last", () => {
    const square: PathData = {
      vertices: [
        [20, 20],
        [60, 20],
        [60, 60],
        [20, 60],
      ],
      closed: true,
    };
    const two = applied(yard, addInnerOutline("pool-1", square));
    expect(pathRefs(element(two, "pool-1"))).toEqual([
      OUTLINE,
      { field: "islands", index: 0 },
      { field: "islands", index: 1 },
    ]);
    const none = applied(
      applied(two, removeInnerOutline("pool-1", "islands", 0)),
      removeInnerOutline("pool-1", "islands", 0),
    );
    expect("islands" in element(none, "pool-1")).toBe(false);
    expect(refusalOf(none, removeInnerOutline("pool-1", "islands", 0)).reason).toMatch(/no such outline/);
    expect(refusalOf(yard, addInnerOutline("fence-1", square)).reason).toMatch(/Nothing can be cut out/);
  });
});
