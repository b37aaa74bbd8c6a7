/** Adding, deleting, copying, moving elements, and setting their fields. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { addElement } from "../../../app/edits/add-element.ts";
import { deleteElements } from "../../../app/edits/delete-elements.ts";
import { DUPLICATE_STEP, duplicateElements } from "../../../app/edits/duplicate-elements.ts";
import { calledAs, elementsWords, elementWords } from "../../../app/edits/element-words.ts";
import { moveElements } from "../../../app/edits/move-elements.ts";
import { newId } from "../../../app/edits/new-id.ts";
import { setField } from "../../../app/edits/set-field.ts";
import { setOrder } from "../../../app/edits/set-order.ts";
import { DRAWN_AS, type DrawingTool, draft, kindOf } from "../../../app/edits/templates.ts";
import { emptySite } from "../../../app/files/empty-site.ts";
import { KINDS } from "../../../rules/site/elements.ts";
import type { Site } from "../../../rules/site/site.ts";
import { applied, element, field, labelOf, refusalOf, sampleYard } from "./yard.ts";

const yard = sampleYard();
const KNOWN = yard.elements.filter((candidate) => candidate.kind !== "statue").map(({ id }) => id);

describe("moving elements", () => {
  it("moves the geometry of every kind, islands and holes too, and nothing else", () => {
    const there = applied(yard, moveElements(KNOWN, 10, -5));
    const back = applied(there, moveElements(KNOWN, -10, 5));
    expect(back).toEqual(yard);
    expect(field(there, "pump-1", "at")).toEqual([530, 215]);
    expect(field(there, "pole-1", "shape")).toEqual({ point: [210, 245] });
    expect(field(there, "rail-1", "shape")).toMatchObject({ closed: true, line: true });
    expect(field(there, "wires-1", "path")).toMatchObject({
      vertices: [
        [-190, 295, 330],
        [610, 295, 300],
        [610, 295, 12],
      ],
    });
    expect(field(there, "pool-1", "islands")).toMatchObject([
      {
        vertices: [
          [110, 75, 1],
          [150, 75, 1],
        ],
      },
    ]);
    expect(field(there, "deck-1", "holes")).toMatchObject([
      {
        vertices: [
          [-40, -55],
          [-30, -55],
          [-30, -45],
        ],
      },
    ]);
    for (const id of KNOWN) expect(element(there, id)).not.toBe(element(yard, id));
  });

  it("by nothing changes nothing; what is not moved stays the same object", () => {
    expect(moveElements(["pump-1"], 0, 0).apply(yard)).toEqual({ ok: true, site: yard });
    const site = applied(yard, moveElements(["pump-1"], 1, 0));
    expect(element(site, "pool-1")).toBe(element(yard, "pool-1"));
    expect(site.elements.map(({ id }) => id)).toEqual(yard.elements.map(({ id }) => id));
  });

  it("says what it moves", () => {
    expect(labelOf(yard, moveElements(["fence-1"], 1, 0))).toBe("Move fence 1");
    expect(labelOf(yard, moveElements(["pole-1", "rail-1"], 1, 0))).toBe("Move 2 metal parts");
    expect(labelOf(yard, moveElements(["pole-1", "fence-1"], 1, 0))).toBe("Move 2 elements");
  });

  it("is refused as a whole: too far, gone, unknown kind, no distance", () => {
    expect(refusalOf(yard, moveElements(["pump-1"], 1e6, 0)).element).toBe("pump-1");
    expect(refusalOf(yard, moveElements(["pump-1", "house-1"], 999_500, 0)).reason).toMatch(/farther from the origin/);
    expect(refusalOf(yard, moveElements(["pump-1", "nobody"], 1, 0)).reason).toMatch(/"nobody"/);
    expect(refusalOf(yard, moveElements(["statue-1"], 1, 0)).reason).toMatch(/kind that this version cannot move\.$/);
    const several = refusalOf(yard, moveElements(["statue-1", "pump-1"], 1, 0)).reason;
    expect(several).toMatch(/cannot move\. Take it out of the selection, and the rest can be\.$/);
    expect(refusalOf(yard, moveElements(["pump-1"], Number.NaN, 0)).reason).toMatch(/distance/);
    expect(refusalOf(yard, moveElements([], 1, 0)).reason).toMatch(/Nothing is selected/);
  });
});

describe("deleting elements", () => {
  it("takes every mention along", () => {
    const site = applied(yard, deleteElements(["pool-1", "pump-1", "wall-1"]));
    // The three, and the ledge of the pool.
    expect(site.elements).toHaveLength(yard.elements.length - 4);
    expect("pool" in element(site, "light-1")).toBe(false);
    expect(field(site, "tie-1", "joins")).toEqual(["perimeter"]);
    expect("serves" in element(site, "outlet-1")).toBe(false);
    expect(field(site, "contact-1", "pool")).toBe("not drawn yet");
    expect(site.answers).toEqual([]);
    expect(element(site, "fence-1")).toBe(element(yard, "fence-1"));
  });

  it("also takes a kind that nobody knows, and refuses what is gone", () => {
    expect(applied(yard, deleteElements(["statue-1"])).elements).toHaveLength(yard.elements.length - 1);
    expect(refusalOf(yard, deleteElements(["nobody"])).reason).toMatch(/"nobody"/);
    expect(refusalOf(yard, deleteElements([])).reason).toMatch(/Nothing/);
  });
});

describe("copies", () => {
  it("lie a step aside, under new ids, and name each other", () => {
    const site = applied(yard, duplicateElements(["pool-1", "light-1", "tie-1", "pump-1", "outlet-1"]));
    // The steps go with their pool.
    const copies = site.elements.slice(-6);
    expect(copies.map(({ id }) => id)).toEqual(
      ["pool-2", "equipment-1", "underwater-light-1", "device-1", "tie-2", "inset-1"].sort(
        (a, b) => copies.findIndex(({ id }) => id === a) - copies.findIndex(({ id }) => id === b),
      ),
    );
    const [pool, light, tie] = ["pool-2", "underwater-light-1", "tie-2"];
    expect(field(site, light as string, "pool")).toBe(pool);
    expect(field(site, "inset-1", "pool")).toBe(pool);
    expect(field(site, tie as string, "joins")).toEqual(["pool-2", "perimeter"]);
    expect(field(site, "device-1", "serves")).toEqual(["equipment-1"]);
    expect(field(site, "equipment-1", "at")).toEqual([520 + DUPLICATE_STEP, 220 - DUPLICATE_STEP]);
    expect(field(site, "equipment-1", "maker's note")).toEqual({ kept: [1, 2.5, null] });
    expect(refusalOf(yard, duplicateElements(["statue-1"])).reason).toMatch(/cannot copy/);
  });
});

describe("ids", () => {
  it("go on from the highest number, and skip what anything still names", () => {
    expect(newId(yard, "pool")).toBe("pool-2");
    expect(newId(yard, "equipment")).toBe("equipment-1");
    const site: Site = { ...emptySite(), answers: [{ question: "q", element: "fence-7", answer: "yes" }] };
    expect(newId(site, "fence")).toBe("fence-8");
    const named = { ...emptySite(), elements: [{ id: "t", kind: "tie", at: [0, 0], joins: ["conductor-3"] }] } as Site;
    expect(newId(named, "conductor")).toBe("conductor-4");
  });
});

describe("setting a field", () => {
  it("sets, replaces, clears, and keeps the place of the others", () => {
    const site = applied(yard, setField("pump-1", "doubleInsulated", false));
    expect(Object.keys(element(site, "pump-1"))).toEqual(Object.keys(element(yard, "pump-1")));
    expect(
      "doubleInsulated" in element(applied(site, setField("pump-1", "doubleInsulated", undefined)), "pump-1"),
    ).toBe(false);
    expect(setField("pump-1", "doubleInsulated", true).apply(yard)).toEqual({ ok: true, site: yard });
    expect(labelOf(yard, setField("pump-1", "gfci", true))).toBe("Set GFCI protected of pump 1");
    expect(labelOf(yard, setField("pool-1", "depth", undefined))).toBe("Clear depth of pool 1");
    expect(field(applied(yard, setField("statue-1", "name", "Old statue")), "statue-1", "name")).toBe("Old statue");
  });

  it("refuses what the reader would refuse, in plain words", () => {
    expect(refusalOf(yard, setField("pool-1", "depth", -1)).reason).toBe(
      "Depth of pool 1 has to be a number from 0 to 1,000,000; it cannot be -1.",
    );
    expect(refusalOf(yard, setField("pool-1", "depth", Number.NaN)).field).toBe("depth");
    expect(refusalOf(yard, setField("pool-1", "shell", "cardboard")).reason).toMatch(
      /^Shell of pool 1 has to be one of: Concrete/,
    );
    expect(refusalOf(yard, setField("pool-1", "shell", undefined)).reason).toBe("Shell of pool 1 has to be given.");
    expect(refusalOf(yard, setField("pool-1", "id", "x")).reason).toMatch(/stays as it is/);
    expect(refusalOf(yard, setField("pool-1", "wings", 2)).reason).toMatch(/no field "wings"/);
    expect(refusalOf(yard, setField("pool-1", "toString", 2)).reason).toMatch(/no field "toString"/);
    expect(refusalOf(yard, setField("statue-1", "name", 7)).reason).toMatch(/text/);
    expect(refusalOf(yard, setField("nobody", "top", 7)).reason).toMatch(/"nobody"/);
  });
});

describe("the order of surfaces", () => {
  it("lays over and under", () => {
    expect(applied(yard, setOrder("deck-1", "over")).elements.at(-1)?.id).toBe("deck-1");
    expect(applied(yard, setOrder("deck-1", "under")).elements[0]?.id).toBe("deck-1");
    expect(setOrder("pool-1", "under").apply(yard)).toEqual({ ok: true, site: yard });
  });
});

describe("new elements", () => {
  const drawn = (tool: DrawingTool) => {
    if (DRAWN_AS[tool] === "point") return { point: [300, 100] as const };
    return {
      path: {
        vertices: [
          [0, 0],
          [100, 0],
          [100, 80],
        ] as const,
        closed: true,
      },
    };
  };
  const tools = Object.keys(DRAWN_AS) as DrawingTool[];

  it("of every tool are taken, and read again", () => {
    for (const tool of tools) {
      const made = draft(yard, tool, drawn(tool));
      const site = applied(yard, addElement(made));
      expect(site.elements.at(-1)).toBe(made);
      expect(made.kind).toBe(kindOf(tool));
      expect(made.id).toBe(newId(yard, made.kind));
    }
    expect(new Set(tools.map(kindOf))).toEqual(new Set(KINDS));
  });

  it("claim nothing that is not known, and find their pool", () => {
    expect(Object.keys(draft(yard, "fence", drawn("fence")))).toEqual(["id", "kind", "path"]);
    expect(draft(yard, "pool-outline", drawn("pool-outline"))).toMatchObject({ body: "pool", shell: "unknown" });
    expect(draft(yard, "underwater-light", { point: [0, 96] })).toMatchObject({ pool: "pool-1" });
    expect("pool" in draft(emptySite(), "water-bond", { point: [0, 0] })).toBe(false);
    expect(draft(yard, "surface", drawn("surface"), { material: "pavers" })).toMatchObject({ material: "pavers" });
    expect(draft(yard, "metal-line", drawn("metal-line"))).toMatchObject({ shape: { closed: true, line: true } });
    expect(draft(yard, "overhead-line", drawn("overhead-line"))).toMatchObject({ path: { closed: false } });
    expect(() => draft(yard, "fence", { point: [0, 0] })).toThrow(RangeError);
  });

  it("are refused when their id is taken or their outline crosses itself", () => {
    expect(refusalOf(yard, addElement(element(yard, "pool-1"))).reason).toMatch(/already is an element "pool-1"/);
    const bow = {
      path: {
        vertices: [
          [0, 0],
          [10, 10],
          [10, 0],
          [0, 10],
        ] as const,
        closed: true,
      },
    };
    expect(refusalOf(yard, addElement(draft(yard, "building", bow))).reason).toMatch(
      /cross itself between corner 1 and corner 3/,
    );
  });
});

describe("what elements are called", () => {
  it("is their name, else what they are and a number", () => {
    const fence = { ...element(yard, "fence-1"), name: "South run" };
    expect(elementWords(fence)).toBe("fence, South run");
    expect(elementWords({ ...fence, name: "South fence" })).toBe("South fence");
    expect(elementWords(element(yard, "fence-1"))).toBe("fence 1");
    expect(calledAs(element(yard, "pole-1"))).toBe("Light pole 1");
    expect(calledAs(fence)).toBe("South run");
    expect(elementsWords([])).toBe("nothing");
  });
});
