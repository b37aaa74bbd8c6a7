// A loop of perimeter bonding on an island is one with the rest: NEC 680.26(B) and (B)(2), restated; positions: arithmetic.
import { describe, expect, it } from "vitest";
import { checkLoops } from "../../../rules/recorded/perimeter-complete.ts";
import {
  box,
  branch,
  clampTie,
  concretePool,
  deck,
  fourTies,
  line,
  linerPool,
  recordedIn,
  reportOf,
  ringCopper,
} from "./yards.ts";

const islands = { islands: [box(130, 55, 254, 137)] };
const islandRing = ringCopper({ id: "island-ring", path: box(151, 76, 233, 116) });
const around = [ringCopper(), islandRing, ...fourTies()];

function standings(elements: readonly object[]): string[] {
  const { yard, recorded } = recordedIn(elements);
  return checkLoops(yard, recorded).map(({ complete }) => complete);
}

describe("a ring on an island", () => {
  it("is missing while nothing joins it to the shell or to the ring round the pool", () => {
    const yard = [concretePool(islands), ...around];
    expect(standings(yard).sort()).toEqual(["no", "sure"]);
    expect(reportOf(yard).missing).toBe(1);
    expect(
      standings([...yard, clampTie("screwed", [151, 90], ["island-ring", "pool"], { hardware: "screw" })]).sort(),
    ).toEqual(["no", "sure"]);
  });

  it("is complete once it is tied to the shell", () => {
    const yard = [concretePool(islands), ...around, clampTie("island-tie", [151, 90], ["island-ring", "pool"])];
    expect(standings(yard)).toEqual(["sure", "sure"]);
    expect(reportOf(yard).missing).toBe(0);
  });

  it("is complete, where the shell does not conduct, once a wire joins it to the ring round the pool", () => {
    const yard = [linerPool(islands), ringCopper(), islandRing];
    expect(standings(yard).sort()).toEqual(["no", "sure"]);
    const wire = [
      branch("jumper", line(151, 90, -21, 90)),
      clampTie("one-end", [151, 90], ["island-ring", "jumper"]),
      clampTie("other-end", [-21, 90], ["ring", "jumper"]),
    ];
    expect(standings([...yard, ...wire])).toEqual(["sure", "sure"]);
  });

  it("may be paving steel, and that has to be joined as well", () => {
    const paving = deck({ id: "island", outline: box(130, 55, 254, 137), steel: "rebar" });
    const yard = [concretePool(islands), paving, ringCopper(), ...fourTies()];
    expect(standings(yard).sort()).toEqual(["no", "sure"]);
    expect(standings([...yard, clampTie("island-tie", [131, 90], ["island", "pool"])])).toEqual(["sure", "sure"]);
  });
});
