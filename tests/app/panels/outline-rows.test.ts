import { describe, expect, it } from "vitest";
import { filteredRows, outlineRows, rowsInView } from "../../../app/panels/outline-rows.ts";
import type { Finding } from "../../../rules/report.ts";
import { checkSite } from "../../../rules/site/reader.ts";

function elements(list: readonly object[]) {
  const read = checkSite({ format: "copperband-site", version: 1, elements: list });
  if (!read.ok) throw new Error(read.refusal.message);
  return read.site.elements;
}

const POOL = {
  id: "pool-1",
  kind: "pool",
  body: "pool",
  shell: "sprayed-concrete",
  outline: {
    closed: true,
    vertices: [
      [0, 0],
      [384, 0],
      [384, 192],
      [0, 192],
    ],
  },
};
const FENCE = {
  id: "fence-1",
  kind: "fence",
  name: "South run",
  path: {
    closed: false,
    vertices: [
      [0, -60],
      [0, -180],
      [240, -180],
    ],
  },
};
const LADDER = { id: "metal-1", kind: "metal", part: "ladder", shape: { point: [384, 96] } };

const about = (element: string, outcome: Finding["outcome"]) => ({ element, body: null, outcome }) as Finding;

describe("rows of the outline", () => {
  it("say name, kind, size and position (arithmetic)", () => {
    const rows = outlineRows(elements([FENCE, POOL, LADDER]), null, "ft-in", "file");
    expect(
      rows.map(({ id, name, kind, size, position, outcome }) => [id, name, kind, size, position, outcome]),
    ).toEqual([
      // 120 + 240 in. along; the middle of its box at 120, -120.
      ["fence-1", "South run", "Fence", `30' 0" long`, `at 10' 0", -10' 0"`, null],
      ["pool-1", "Pool 1", "Pool or spa", `32' 0" by 16' 0"`, `at 16' 0", 8' 0"`, null],
      ["metal-1", "Ladder 1", "Metal part", "", `at 32' 0", 8' 0"`, null],
    ]);
  });

  it("tell two of one number apart by their ids, as the findings do", () => {
    const another = { ...LADDER, id: "deep-end-1" };
    const names = outlineRows(elements([LADDER, another, { ...FENCE, id: "metal-2" }]), null, "ft-in", "file");
    expect(names.map(({ name }) => name)).toEqual(["Ladder metal-1", "Ladder deep-end-1", "South run"]);
  });

  it("bear the worst outcome of each element", () => {
    const findings = [
      about("fence-1", "meets"),
      about("fence-1", "bond"),
      about("fence-1", "exempt"),
      about("metal-1", "review"),
    ];
    const rows = outlineRows(elements([FENCE, POOL, LADDER]), { findings }, "ft-in", "file");
    expect(rows.map(({ outcome }) => outcome)).toEqual(["bond", null, "review"]);
  });

  it("stand as drawn or by kind, pools before fences before metal", () => {
    const order = (by: "file" | "kind") =>
      outlineRows(elements([LADDER, FENCE, POOL]), null, "ft-in", by).map(({ id }) => id);
    expect(order("file")).toEqual(["metal-1", "fence-1", "pool-1"]);
    expect(order("kind")).toEqual(["pool-1", "fence-1", "metal-1"]);
  });

  it("keep an element of an unknown kind", () => {
    const rows = outlineRows(elements([{ id: "x", kind: "gazebo", at: [12, 24] }]), null, "ft-in", "file");
    expect(rows[0]?.kind).toContain("gazebo");
    expect(rows[0]?.position).toBe(`at 1' 0", 2' 0"`);
  });

  it("are filtered by every word in name, kind, id or the outcome as it is called on the screen", () => {
    const rows = outlineRows(
      elements([FENCE, POOL, LADDER]),
      { findings: [about("metal-1", "review")] },
      "ft-in",
      "file",
    );
    const found = (text: string) => filteredRows(rows, text).map(({ id }) => id);
    expect(found("  ")).toHaveLength(3);
    expect(found("SOUTH")).toEqual(["fence-1"]);
    expect(found("metal part")).toEqual(["metal-1"]);
    expect(found("question")).toEqual(["metal-1"]);
    expect(found("south ladder")).toEqual([]);
  });
});

describe("the rows in view", () => {
  it("are those of the box and a few beside it, within the list (arithmetic)", () => {
    expect(rowsInView(300, 48, 0, 480, 6)).toEqual([0, 16]);
    expect(rowsInView(300, 48, 4800, 480, 6)).toEqual([94, 116]);
    expect(rowsInView(300, 48, 300 * 48 - 480, 480, 6)).toEqual([284, 300]);
    expect(rowsInView(3, 48, 0, 480, 6)).toEqual([0, 3]);
    // Scrolled far down when a filter shortens the list.
    expect(rowsInView(2, 48, 9600, 480, 6)).toEqual([2, 2]);
  });
});
