// @vitest-environment happy-dom
// A field that names several elements, mounted. Common practice, no source.
import { afterEach, beforeEach, expect, it } from "vitest";
import { FieldControl } from "../../../app/panels/field-control.tsx";
import { type Field, fieldOf } from "../../../rules/site/field-list.ts";
import { siteOf } from "../../rules/catalogue/yards.ts";
import { type Bench, bench } from "./panel-bench.tsx";

let page: Bench;
let value: unknown;
beforeEach(() => {
  page = bench(siteOf([]));
});
afterEach(() => page.close());

const elements = [
  { id: "pool-1", name: "pool 1" },
  { id: "pump-1", name: "Filter pump" },
];
function show(field: Field | null): void {
  if (!field) throw new Error("no such field");
  const change = (next: unknown) => {
    value = next;
    return null;
  };
  page.show(<FieldControl field={field} value={value} units="ft-in" elements={elements} onChange={change} />);
}
const choices = () => [...page.query("select").children].map((option) => option.textContent);
function choose(id: string): void {
  const select = page.query("select") as HTMLSelectElement;
  page.does(() => {
    select.value = id;
    select.dispatchEvent(new Event("change", { bubbles: true }));
  });
}

it("adds elements by their names, and what it may name besides", () => {
  value = [];
  show(fieldOf("tie", "joins"));
  expect(choices()).toEqual(["none yet: add one", "Perimeter bonding", "Pool 1", "Filter pump"]);
  choose("perimeter");
  show(fieldOf("tie", "joins"));
  choose("pump-1");
  show(fieldOf("tie", "joins"));
  expect(value).toEqual(["perimeter", "pump-1"]);
  expect(page.all(".named li span").map((one) => one.textContent)).toEqual(["Perimeter bonding", "Filter pump"]);
  expect(choices()).toEqual(["Add another", "Pool 1"]);
});

it("takes the last one away: an empty list where the field has to be given, else no field", () => {
  value = ["pool-1"];
  show(fieldOf("tie", "joins"));
  page.press(page.button("Take away Pool 1"));
  expect(value).toEqual([]);
  value = ["gone-9"];
  show(fieldOf("device", "serves"));
  page.press(page.button("Take away gone-9, not on the sheet"));
  expect(value).toBeUndefined();
});
