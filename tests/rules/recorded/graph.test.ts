// What recorded ties and joints connect. Source of every case, unless another stands beside it: NEC 680.26(B) and 250.8,
// restated: only connections of hardware that counts join anything.
import { describe, expect, it } from "vitest";
import {
  branch,
  clampTie,
  concretePool,
  deck,
  fourTies,
  ladder,
  line,
  linerPool,
  pathRoundPool,
  pump,
  reachIn,
  recordedIn,
  ringCopper,
  soundYard,
} from "./yards.ts";

const toPump = branch("b", line(405, 100, 600, 100));
const atRing = (changes: object = {}) => clampTie("at-ring", [405, 100], ["perimeter", "b"], changes);
const atPump = (changes: object = {}) => clampTie("at-pump", [600, 100], ["b", "pump"], changes);
const yard = (...more: object[]) => [concretePool(), ringCopper(), pump, toPump, ...more];

describe("a part is reached", () => {
  it("over ties and a branch, from the ring", () => {
    expect(reachIn(yard(atRing(), atPump()), "pump")).toEqual({
      reached: true,
      doubtful: false,
      ties: ["at-pump"],
      doubts: [],
    });
  });

  it("not by a branch that only lies there, or is tied at one end only", () => {
    expect(reachIn(yard(), "pump").reached).toBe(false);
    expect(reachIn(yard(atRing()), "pump").reached).toBe(false);
    expect(reachIn(yard(atPump()), "pump").reached).toBe(false);
  });

  it("not by a tie that lies on a conductor without naming it", () => {
    expect(
      reachIn(yard(atPump(), clampTie("other", [405, 100], ["perimeter", "ladder"]), ladder), "pump").reached,
    ).toBe(false);
  });

  it('by name of the ring as well as by "perimeter"', () => {
    expect(reachIn(yard(atPump(), clampTie("at-ring", [405, 100], ["ring", "b"])), "pump").reached).toBe(true);
  });

  it("not by screws, solder, twisting, or steel tie wire on copper", () => {
    for (const hardware of ["screw", "solder", "twisted", "tie-wire"]) {
      const reach = reachIn(yard(atRing(), atPump({ hardware })), "pump");
      expect([hardware, reach.reached, reach.doubtful]).toEqual([hardware, false, false]);
    }
  });

  it("only doubtfully by hardware that nobody gave, naming the tie", () => {
    for (const hardware of [undefined, "other", "clip"]) {
      expect(reachIn(yard(atRing({ hardware }), atPump()), "pump")).toEqual({
        reached: false,
        doubtful: true,
        ties: ["at-pump"],
        doubts: ["at-ring"],
      });
    }
  });

  it("not over stranded, thin or aluminum wire, and doubtfully over wire that is not described", () => {
    const over = (changes: object) =>
      reachIn([concretePool(), ringCopper(), pump, { ...toPump, ...changes }, atRing(), atPump()], "pump");
    for (const changes of [{ solid: false }, { awg: 10 }, { material: "aluminum" }]) {
      expect([over(changes).reached, over(changes).doubtful]).toEqual([false, false]);
    }
    expect(over({ solid: undefined })).toMatchObject({ reached: false, doubtful: true, doubts: ["b"] });
  });

  it("not from a stranded ring, though it lies round the pool", () => {
    const elements = [concretePool(), ringCopper({ solid: false }), pump, toPump, atRing(), atPump()];
    expect(reachIn(elements, "pump").reached).toBe(false);
  });

  it("not by another part that nothing reaches, nor by a ground rod", () => {
    const rod = { id: "rod", kind: "metal", shape: { point: [640, 100] }, part: "ground rod" };
    expect(reachIn([...soundYard(), pump, rod, clampTie("t", [620, 100], ["pump", "rod"])], "pump").reached).toBe(
      false,
    );
  });

  it("by another part that is reached", () => {
    const elements = [
      ...soundYard(),
      pump,
      ladder,
      clampTie("one", [100, -21], ["perimeter", "ladder"]),
      clampTie("two", [600, 100], ["ladder", "pump"]),
    ];
    expect(reachIn(elements, "pump").reached).toBe(true);
  });

  it("not through what holds no bonded metal: a double-insulated pump, a deck without bare steel", () => {
    const through = (middle: object, id: string) =>
      reachIn(
        [
          ...soundYard(),
          ladder,
          middle,
          clampTie("one", [405, 100], ["perimeter", id]),
          clampTie("two", [100, -10], [id, "ladder"]),
        ],
        "ladder",
      );
    expect(through({ ...pump, doubleInsulated: true }, "pump").reached).toBe(false);
    expect(through(deck({ steel: "fiber" }), "deck").reached).toBe(false);
    expect(through(deck({ steel: "rebar" }), "deck").reached).toBe(true);
    expect(through(deck({ steel: undefined }), "deck")).toMatchObject({
      reached: false,
      doubtful: true,
      doubts: ["deck"],
    });
  });

  it("from a concrete shell's bare steel, not from a liner or from encapsulated bars", () => {
    const tied = (pool: object) =>
      reachIn([pool, ladder, clampTie("t", [100, 0], ["pool", "ladder"])], "ladder").reached;
    expect(tied(concretePool())).toBe(true);
    expect(tied(linerPool())).toBe(false);
    expect(tied(concretePool({ steel: "encapsulated" }))).toBe(false);
  });

  it("from a shell's recorded grid where its steel is encapsulated", () => {
    const grid = ringCopper({
      id: "grid",
      role: "grid",
      path: line(12, 96, 372, 96),
      cover: undefined,
      coverFrom: undefined,
    });
    expect(
      reachIn(
        [concretePool({ steel: "encapsulated" }), grid, ladder, clampTie("t", [100, 0], ["pool", "ladder"])],
        "ladder",
      ).reached,
    ).toBe(true);
  });

  it("doubtfully by a tie to a perimeter of which nothing is recorded", () => {
    expect(reachIn([linerPool(), ladder, clampTie("t", [100, -21], ["perimeter", "ladder"])], "ladder")).toMatchObject({
      reached: false,
      doubtful: true,
      doubts: ["t"],
    });
  });
});

describe("connections are counted", () => {
  const cup = (id: string, x: number, changes: object = {}) => clampTie(id, [x, -21], ["perimeter", "ladder"], changes);

  it("by the ties on the part that join it to the network", () => {
    expect(reachIn([...soundYard(), ladder, cup("c1", 90)], "ladder", 2)).toMatchObject({
      reached: false,
      doubtful: false,
      ties: ["c1"],
    });
    expect(reachIn([...soundYard(), ladder, cup("c1", 90), cup("c2", 110)], "ladder", 2)).toMatchObject({
      reached: true,
      ties: ["c1", "c2"],
    });
  });

  it("not by ties to things that hang on the part alone", () => {
    const elements = [...soundYard(), ladder, pump, cup("c1", 90), clampTie("c2", [110, -21], ["ladder", "pump"])];
    expect(reachIn(elements, "ladder", 2)).toMatchObject({ reached: false, ties: ["c1"] });
  });

  it("doubtfully where one is of unknown hardware", () => {
    const elements = [...soundYard(), ladder, cup("c1", 90), cup("c2", 110, { hardware: undefined })];
    expect(reachIn(elements, "ladder", 2)).toMatchObject({ reached: false, doubtful: true, doubts: ["c2"] });
  });
});

describe("joints of conductors", () => {
  const first = (joint: string | undefined) => branch("b1", line(405, 100, 500, 100), { joint });
  const second = (joint: string | undefined, x = 500) => branch("b2", line(x, 100, 600, 100), { joint });
  const reach = (one: object, two: object) =>
    reachIn(
      [
        ...soundYard(),
        pump,
        one,
        two,
        clampTie("a", [405, 100], ["perimeter", "b1"]),
        clampTie("z", [600, 100], ["b2", "pump"]),
      ],
      "pump",
    );

  it("join ends that meet, where a splice or weld is recorded", () => {
    expect(reach(first("listed-splice"), second("none")).reached).toBe(true);
    expect(reach(first("exothermic"), second("exothermic")).reached).toBe(true);
    expect(reach(first("listed-splice"), second("none", 500.9)).reached).toBe(true);
  });

  it("do not join ends that only touch, that lie apart, or that are twisted or soldered", () => {
    expect(reach(first("none"), second("none"))).toMatchObject({ reached: false, doubtful: false });
    expect(reach(first("listed-splice"), second("none", 501.1)).reached).toBe(false);
    expect(reach(first("listed-splice"), second("twisted"))).toMatchObject({ reached: false, doubtful: false });
    expect(reach(first("solder"), second("listed-splice"))).toMatchObject({ reached: false, doubtful: false });
  });

  it("are doubtful where one conductor's joint is not given", () => {
    expect(reach(first("listed-splice"), second(undefined))).toMatchObject({ reached: false, doubtful: true });
  });

  it("may be made onto another's run by the conductor that ends there", () => {
    const onto = (joint: string) =>
      reachIn(
        [
          ...soundYard(),
          pump,
          branch("b", line(405, 100, 600, 100), { joint }),
          clampTie("z", [600, 100], ["b", "pump"]),
        ],
        "pump",
      ).reached;
    expect(onto("exothermic")).toBe(true);
    expect(onto("none")).toBe(false);
  });
});

describe("the word perimeter", () => {
  const far = {
    ...ringCopper({ id: "far-ring" }),
    path: {
      closed: true,
      vertices: [
        [2000, 0],
        [2100, 0],
        [2100, 100],
        [2000, 100],
      ],
    },
  };

  it("means the recorded copper near the tie", () => {
    const { recorded } = recordedIn([
      concretePool(),
      ringCopper(),
      far,
      clampTie("t", [2050, 10], ["perimeter", "pool"]),
    ]);
    expect(recorded.ties[0]?.joins.map(({ id }) => id)).toEqual(["far-ring", "pool"]);
  });

  it("means the one ring of the site wherever the tie lies, but not one of two far off", () => {
    const joins = (...copper: object[]) =>
      recordedIn([concretePool(), ...copper, clampTie("t", [1000, 500], ["perimeter", "pool"])]).recorded.ties[0];
    expect(joins(ringCopper())?.joins.map(({ id }) => id)).toEqual(["ring", "pool"]);
    expect(joins(ringCopper(), far)).toMatchObject({ perimeterUnrecorded: true });
  });

  it("means the deck's bare steel where that serves", () => {
    const { recorded } = recordedIn([
      deck({ steel: "rebar" }),
      concretePool(),
      clampTie("t", [96, 0], ["perimeter", "pool"]),
    ]);
    expect(recorded.ties[0]?.joins.map(({ id }) => id)).toEqual(["deck", "pool"]);
  });
});

describe("recorded copper", () => {
  it("is any conductor or tie", () => {
    expect(recordedIn([concretePool(), pump]).recorded.hasCopper).toBe(false);
    expect(recordedIn([concretePool(), toPump]).recorded.hasCopper).toBe(true);
    expect(recordedIn([concretePool(), ...fourTies()]).recorded.hasCopper).toBe(true);
    expect(recordedIn([concretePool(), ringCopper({ path: pathRoundPool(30) })]).recorded.hasCopper).toBe(true);
  });
});
