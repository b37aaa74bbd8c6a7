/** Rows of copies, and copies carried from sheet to sheet. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { groupElements } from "../../../app/edits/arrangement.ts";
import { duplicateElements, mirrorCopies } from "../../../app/edits/duplicate-elements.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { isFrom, pasteElements, readTaken, takeElements, takenText } from "../../../app/edits/paste-elements.ts";
import { placesOf, repeatElements } from "../../../app/edits/repeat-elements.ts";
import { setField } from "../../../app/edits/set-field.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import type { Site } from "../../../rules/site/site.ts";
import { applied, element, field, labelOf, refusalOf, sampleYard } from "./yard.ts";

const yard = sampleYard();

function siteOf(...elements: readonly unknown[]): Site {
  return { ...emptySite(), elements } as unknown as Site;
}

const post = (id: string, x: number, y: number) => ({ id, kind: "metal", shape: { point: [x, y] }, part: "post" });
describe("the name of a copy", () => {
  const ladder = (id: string, x: number, name: string) => ({ ...post(id, x, 0), part: "ladder", name });
  const names = ({ elements }: Site) => elements.map(({ name }) => name);

  it("has the next number of its series, so that findings and lists tell them apart", () => {
    const one = siteOf(ladder("metal-1", 0, "Ladder"), post("metal-2", 50, 0));
    const two = applied(one, duplicateElements(["metal-1", "metal-2"]));
    expect(names(two)).toEqual(["Ladder", undefined, "Ladder 2", undefined]);
    const three = applied(two, mirrorCopies(["metal-3"], [500, 0], 90));
    expect(names(three).at(-1)).toBe("Ladder 3");
    const line = {
      closed: false,
      vertices: [
        [1000, 0],
        [1100, 0],
      ],
    } as const;
    const row = applied(three, repeatElements(["metal-1"], { line, every: { count: 3 } }));
    expect(names(row).slice(-3)).toEqual(["Ladder 4", "Ladder 5", "Ladder 6"]);
  });

  it("stays where it is free, as on another sheet; capital letters make no other name", () => {
    const from = siteOf(ladder("metal-1", 0, "Ladder 7"), ladder("metal-2", 50, "Rail"));
    const taken = takeElements(from, ["metal-1", "metal-2"]);
    const paste = pasteElements(taken, { by: [10, 0] });
    const once = applied(siteOf(), paste);
    expect(names(once)).toEqual(["Ladder 7", "Rail"]);
    expect(names(applied(once, paste)).slice(2)).toEqual(["Ladder 8", "Rail 2"]);
    const loud = applied(siteOf(ladder("metal-1", 0, "RAIL")), paste);
    expect(names(loud)).toEqual(["RAIL", "Ladder 7", "Rail 2"]);
  });

  it("counts no number of a type, and takes nobody's name", () => {
    const types = siteOf(ladder("metal-1", 0, "Lamp PX-40"), ladder("metal-2", 50, "Lamp 12345"), ladder("m3", 9, "7"));
    expect(names(applied(types, duplicateElements(["metal-1", "metal-2", "m3"]))).slice(3)).toEqual([
      "Lamp PX-40 2",
      "Lamp 12345 2",
      "7 2",
    ]);
    const holes = siteOf(ladder("metal-1", 0, "Rail"), ladder("metal-2", 50, "rail 3"));
    expect(names(applied(holes, duplicateElements(["metal-1"]))).at(-1)).toBe("Rail 4");
    // Beyond what is read as a number, too, each has its own.
    const many = applied(siteOf(ladder("metal-1", 0, "Rail 9999")), duplicateElements(["metal-1"]));
    expect(names(applied(many, duplicateElements(["metal-1"])))).toEqual(["Rail 9999", "Rail 10000", "Rail 10001"]);
  });
});

describe("a row of copies", () => {
  const line = {
    closed: false,
    vertices: [
      [0, 0],
      [100, 0],
    ] as const,
  } as const;
  const places = (site: Site) =>
    site.elements.map((one) => (one as unknown as { shape: { point: number[] } }).shape.point);

  it("a number of them, both ends among them; the original keeps its place", () => {
    const site = applied(siteOf(post("metal-1", 0, 0)), repeatElements(["metal-1"], { line, every: { count: 5 } }));
    expect(places(site)).toEqual([
      [0, 0],
      [25, 0],
      [50, 0],
      [75, 0],
      [100, 0],
    ]);
    expect(labelOf(siteOf(post("metal-1", 0, 0)), repeatElements(["metal-1"], { line, every: { count: 5 } }))).toMatch(
      /^Repeat /,
    );
  });

  it("one every so many inches, from the start; what is left over stays at the end", () => {
    const site = applied(siteOf(post("metal-1", 0, 40)), repeatElements(["metal-1"], { line, every: { spacing: 40 } }));
    expect(places(site)).toEqual([
      [0, 40],
      [0, 0],
      [40, 0],
      [80, 0],
    ]);
  });

  it("round a closed line the last is not on the first; on arcs the places lie on the arc", () => {
    // A circle of radius 10 as two half circles.
    const circle = {
      closed: true,
      vertices: [
        [10, 0, 1],
        [-10, 0, 1],
      ] as const,
    } as const;
    const four = placesOf({ line: circle, every: { count: 4 } });
    expect(four).toHaveLength(4);
    const quarter = typeof four === "string" ? undefined : four[1];
    expect(quarter?.at[0]).toBeCloseTo(0, 9);
    expect(quarter?.at[1]).toBeCloseTo(10, 9);
    expect(quarter?.direction).toBeCloseTo(180, 9);
    expect(placesOf({ line: circle, every: { spacing: (20 * Math.PI) / 8 } })).toHaveLength(8);
    // 5 in. to the left of the way round, which is inwards: on the circle of radius 5.
    const inside = placesOf({ line: circle, every: { count: 4 }, aside: 5 });
    for (const { at } of typeof inside === "string" ? [] : inside) expect(Math.hypot(...at)).toBeCloseTo(5, 9);
  });

  it("turns copies with the line where asked", () => {
    const bend = {
      closed: false,
      vertices: [
        [0, 0],
        [100, 0],
        [100, 100],
      ] as const,
    } as const;
    const bar = {
      id: "metal-1",
      kind: "metal",
      shape: {
        closed: false,
        vertices: [
          [-5, 0],
          [5, 0],
        ],
      },
    };
    const row = { line: bend, every: { count: 3 } };
    const turned = applied(siteOf(bar), repeatElements(["metal-1"], { ...row, turning: true }));
    expect(field(turned, "metal-3", "shape")).toEqual({
      closed: false,
      vertices: [
        [100, 95],
        [100, 105],
      ],
    });
    const straight = applied(siteOf(bar), repeatElements(["metal-1"], row));
    expect(field(straight, "metal-3", "shape")).toEqual({
      closed: false,
      vertices: [
        [95, 100],
        [105, 100],
      ],
    });
  });

  it("laid twice stands once: only a place where nothing like it stands is filled", () => {
    const row = repeatElements(["metal-1"], { line, every: { count: 5 } });
    const once = applied(siteOf(post("metal-1", 0, 40)), row);
    expect(once.elements).toHaveLength(6);
    expect(refusalOf(once, row).reason).toBe("It already stands at every place of the row.");
    // A finer row goes between; the copies keep their places, one of them under another name.
    const named = applied(once, setField("metal-2", "name", "Corner post"));
    expect(places(applied(named, repeatElements(["metal-1"], { line, every: { count: 9 } })))).toHaveLength(10);
    // Another thing at those places is no copy.
    const { elements } = once;
    const cups = siteOf(...elements.slice(1), { ...post("metal-1", 0, 40), part: "cup" });
    expect(applied(cups, row).elements).toHaveLength(11);
  });

  it("mirrored back over the same line is refused: the original stands there", () => {
    const bent = {
      id: "metal-1",
      kind: "metal",
      shape: {
        closed: false,
        vertices: [
          [10, 0, 0.4],
          [30, 10],
        ],
      },
    };
    const both = applied(siteOf(bent), mirrorCopies(["metal-1"], [0, 0], 90));
    expect(both.elements).toHaveLength(2);
    for (const id of ["metal-1", "metal-2"]) {
      expect(refusalOf(both, mirrorCopies([id], [0, 0], 90)).reason).toBe("It already stands on the other side, too.");
    }
    expect(applied(both, mirrorCopies(["metal-2"], [50, 0], 90)).elements).toHaveLength(3);
  });

  it("makes at most a thousand copies of all that is chosen together", () => {
    const two = siteOf(post("metal-1", 0, 0), post("metal-2", 9, 9));
    const row = repeatElements(["metal-1", "metal-2"], { line, every: { count: 501 } });
    expect(refusalOf(two, row).reason).toMatch(/1,002 copies.*at most 1,000/);
    const fits = repeatElements(["metal-1", "metal-2"], { line, every: { count: 500 } });
    expect(applied(two, fits).elements).toHaveLength(1002);
  });

  it("refuses rows of nothing and rows without end", () => {
    const one = siteOf(post("metal-1", 0, 0));
    for (const [every, reason] of [
      [{ count: 1 }, /at least 2/],
      [{ count: 2.5 }, /at least 2/],
      [{ spacing: 0 }, /more than nothing/],
      [{ spacing: 101 }, /shorter than the spacing/],
      [{ spacing: 0.001 }, /at most 1,000/],
      [{ count: 1001 }, /at most 1,000/],
    ] as const) {
      expect(refusalOf(one, repeatElements(["metal-1"], { line, every })).reason).toMatch(reason);
    }
  });
});

describe("taking along and pasting", () => {
  const pool = element(yard, "pool-1");
  const light = {
    id: "underwater-light-1",
    kind: "underwater-light",
    at: [1, 1],
    pool: "pool-1",
    formingShell: "none",
  };
  const site = siteOf(pool, light);

  it("on the same sheet the copy goes on naming the pool it belongs to", () => {
    const taken = takeElements(site, ["underwater-light-1"]);
    expect(isFrom(site, taken)).toBe(true);
    const pasted = applied(site, pasteElements(taken, { by: [24, -24] }));
    expect(element(pasted, "underwater-light-2")).toMatchObject({ at: [25, -23], pool: "pool-1" });
  });

  it("on another sheet it does not take another pool of that name for its own", () => {
    const taken = readTaken(takenText(takeElements(site, ["underwater-light-1"])));
    if (!taken) throw new Error("not read");
    const other = siteOf(applied(siteOf(pool), moveElements(["pool-1"], 900, 0)).elements[0]);
    expect(isFrom(other, taken)).toBe(false);
    const pasted = applied(other, pasteElements(taken, { middle: [500, 500] }));
    expect(field(pasted, "underwater-light-1", "pool")).toBeUndefined();
    expect(field(pasted, "underwater-light-1", "at")).toEqual([500, 500]);
  });

  it("pool and light together name each other under their new names, group and all", () => {
    const grouped = applied(site, groupElements(["pool-1", "underwater-light-1"]));
    const taken = readTaken(takenText(takeElements(grouped, ["pool-1", "underwater-light-1"])));
    if (!taken) throw new Error("not read");
    const pasted = applied(site, pasteElements(taken, { by: [0, 0] }));
    expect(field(pasted, "underwater-light-2", "pool")).toBe("pool-2");
    expect(pasted.arrangement?.groups).toEqual([{ elements: ["pool-2", "underwater-light-2"] }]);
    expect(isFrom(applied(site, setField("pool-1", "depth", 70)), taken)).toBe(true);
  });

  it("a clipboard with anything else, or with what no file may hold, gives nothing", () => {
    const text = takenText(takeElements(site, ["underwater-light-1"]));
    for (const wrong of [
      "",
      "hello",
      "[1]",
      "null",
      "{}",
      text.replace("[1,1]", '["a",1]'),
      text.replace('"version":1', '"version":2'),
      // JSON reads a number past all numbers as one without end, which no file holds.
      text.replace('"kind":', '"from another version":1e999,"kind":'),
      text.replace('"kind":', `"from another version":${"[".repeat(62)}1${"]".repeat(62)},"kind":`),
    ]) {
      expect(readTaken(wrong)).toBeNull();
    }
    expect(readTaken(text)).not.toBeNull();
  });

  it("a group with what no file may hold stays behind; its elements come", () => {
    const both = ["pool-1", "underwater-light-1"];
    const text = takenText(takeElements(applied(site, groupElements(both)), both));
    const broken = text.replace('"groups":[{', '"groups":[{"name":5,');
    expect(broken).not.toBe(text);
    const taken = readTaken(broken);
    if (!taken) throw new Error("not read");
    const pasted = applied(site, pasteElements(taken, { by: [0, 0] }));
    expect(pasted.elements).toHaveLength(4);
    expect(pasted.arrangement).toBeUndefined();
  });
});
