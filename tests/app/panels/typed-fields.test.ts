/** What is typed into the fields of an element. Gauges from memory: 1/0 is the next larger after 1, 00 is 2/0. */
import { describe, expect, it } from "vitest";
import { readTyped } from "../../../app/panels/field-control.tsx";
import { awgOf } from "../../../rules/recorded/awg.ts";
import { fieldOf } from "../../../rules/site/field-list.ts";

describe("the gauge of a conductor", () => {
  const field = fieldOf("conductor", "awg");
  if (!field) throw new Error("no such field");
  const gauge = (text: string) => {
    const read = readTyped(field, text, "ft-in");
    return read.ok ? awgOf(read.value as number | string) : null;
  };

  it.each([
    ["8", 8],
    ["#6", 6],
    ["4 AWG", 4],
    ["1/0", 0],
    [" 4/0 AWG", -3],
    ["00", -1],
    ["#00", -1],
    ["250 kcmil", -4],
  ])("%s is read for what it is", (text, awg) => {
    expect(gauge(text)).toBe(awg);
  });

  it("is refused where it says none", () => {
    expect(gauge("thick")).toBeNull();
    expect(gauge("3/5/0")).toBeNull();
    expect(gauge("9".repeat(400))).toBeNull();
  });
});
