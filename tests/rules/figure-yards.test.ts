// Figures that hang on a number of the code; the source of each stands beside its yard.
import { describe, expect, it } from "vitest";
import { recompute } from "../../rules/recompute.ts";
import { FIGURE_YARDS, figureSite } from "./figure-yards.ts";

describe.each(FIGURE_YARDS)("$name", (yard) => {
  it.each(yard.editions)("%s", (edition) => {
    expect(yard.source.trim()).not.toBe("");
    expect(yard.holds(recompute(figureSite(yard, edition)))).toBe(true);
  });
});
