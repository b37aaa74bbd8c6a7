/** Source: the language's own sort, which keeps equals in order. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sortBy, sortNumbers } from "../../geometry/short-lists.ts";
import { runs } from "../oracles/seed.ts";

const values = fc.array(fc.integer({ min: -5, max: 5 }), { maxLength: 40 });

describe("lists put in order", () => {
  it("come out as Array.sort has them, equals as they came, in place", () => {
    fc.assert(
      fc.property(values, (list) => {
        const things = list.map((value, place) => ({ value, place }));
        const sorted = [...things].sort((one, other) => one.value - other.value);
        expect(sortBy(things, ({ value }) => value)).toBe(things);
        expect(things).toEqual(sorted);
        const numbers = [...list];
        expect(sortNumbers(numbers)).toBe(numbers);
        expect(numbers).toEqual([...list].sort((one, other) => one - other));
      }),
      runs(500),
    );
  });
});
