/**
 * Yards of one fact each, as a stranger would write them, at every limit of the code and a hundredth beside it.
 * Source of every outcome: NEC article 680, the section beside it, restated, 2017 to 2023 unless the row names editions;
 * numbers from memory: 680.13 (sight), 680.21(C), 680.22(B)(5) and (7), 680.27(B), 680.9(C). Distances: arithmetic.
 */
import type { Outcome } from "../../../rules/report.ts";
import { box, concrete, device, light, line, liner, own, part, unit } from "./one-fact-things.ts";

export interface OneFact {
  readonly section: string;
  readonly rule: string;
  readonly fact: string;
  readonly elements: readonly object[];
  /** `none`: nothing is asked. */
  readonly outcome: Outcome | "none";
  readonly editions: readonly string[];
}

const ALL = ["nec-2017", "nec-2020", "nec-2023"];
const FROM_2020 = ALL.slice(1);

const rows: OneFact[] = [];
/** What is judged has the id `it`; a body's own finding is looked for where nothing has. */
function row(section: string, rule: string, fact: string, elements: object[], outcome: Outcome | "none", in_ = ALL) {
  rows.push({ section, rule, fact, elements, outcome, editions: in_ });
}

// 680.26(B)(1): shells.
for (const shell of ["cast-concrete", "sprayed-concrete", "coated-block"]) {
  row("680.26(B)(1)", "shell", `${shell}, bare steel`, [concrete({ ...own, shell })], "meets");
  row("680.26(B)(1)", "shell", `${shell}, no steel`, [concrete({ ...own, shell, steel: "none" })], "bond");
}
for (const shell of ["vinyl-liner", "fiberglass"])
  row("680.26(B)(1)", "shell", shell, [liner({ ...own, shell, storable: false })], "exempt");
row("680.26(B)(1)", "shell", "encapsulated steel", [concrete({ ...own, steel: "encapsulated" })], "bond");
row("680.26(B)(1)", "shell", "steel not given", [concrete({ ...own, steel: undefined })], "review");
row("680.26(B)(1)", "shell", "metal frame behind a liner", [liner({ ...own, wallFrame: "metal" })], "review");
row("680.26(B)(3)", "structure-metal", "that frame itself", [liner({ ...own, wallFrame: "metal" })], "bond");
row("680.26(B)(2)", "tie-spacing", "a concrete shell", [concrete()], "bond");
row("680.26(B)(2)", "tie-spacing", "a liner", [liner()], "exempt");

// 680.26(B)(2): surfaces and the ring.
const deck = (changes: object) => ({
  id: "it",
  kind: "surface",
  outline: box(-99, -99, 483, 291),
  level: 0,
  ...changes,
});
row("680.26(B)(2)", "perimeter-surfaces", "bare ground", [concrete()], "bond");
for (const material of ["concrete", "pavers", "lawn"])
  row("680.26(B)(2)", "perimeter-surfaces", material, [concrete(), deck({ material, steel: "none" })], "bond");
const boards = deck({ material: "wood", support: "raised", supports: "nonconductive" });
row("680.26(B)(2)", "perimeter-surfaces", "raised wood", [concrete(), boards], "review", ALL.slice(0, 2));
row("680.26(B)(2)", "perimeter-surfaces", "raised wood", [concrete(), boards], "exempt", ["nec-2023"]);
row("680.26(B)(2)", "perimeter-surfaces", "stone", [concrete(), deck({ material: "stone" })], "review", ["nec-2023"]);

const quarter = Math.tan(Math.PI / 8);
const ring = (changes: object = {}, d = 21) => ({
  id: "it",
  kind: "conductor",
  role: "ring",
  path: {
    vertices: [
      [0, -d],
      [384, -d, quarter],
      [384 + d, 0],
      [384 + d, 192, quarter],
      [384, 192 + d],
      [0, 192 + d, quarter],
      [-d, 192],
      [-d, 0, quarter],
    ],
    closed: true,
  },
  awg: 8,
  solid: true,
  material: "copper",
  covering: "bare",
  cover: 5,
  coverFrom: "subgrade",
  joint: "none",
  ...changes,
});
for (const [changes, outcome] of [
  [{}, "meets"],
  [{ awg: 6 }, "meets"],
  [{ awg: 10 }, "conflict"],
  [{ awg: undefined }, "review"],
  [{ solid: false }, "conflict"],
  [{ material: "aluminum" }, "conflict"],
  [{ material: "copper-clad-steel" }, "conflict"],
  [{ covering: "insulated" }, "conflict"],
] as const)
  row("680.26(B)", "conductor-wire", JSON.stringify(changes), [concrete(), ring(changes)], outcome);
for (const [distance, outcome] of [
  [18, "meets"],
  [17.99, "conflict"],
  [24, "meets"],
  [24.01, "conflict"],
] as const)
  row(
    "680.26(B)(2)",
    "conductor-place",
    `${distance} in. off`,
    [concrete(), ring({}, distance)],
    outcome,
    ALL.slice(0, 2),
  );
for (const cover of [3.99, 6.01])
  row(
    "680.26(B)(2)",
    "conductor-place",
    `${cover} in. deep`,
    [concrete(), ring({ cover })],
    "conflict",
    ALL.slice(0, 2),
  );
const graded = [
  concrete(),
  { ...deck({ material: "concrete", steel: "none" }), id: "deck" },
  ring({ coverFrom: "grade" }),
];
row("680.26(B)(2)", "conductor-place", "a lone ring under concrete", graded, "conflict", ["nec-2023"]);

// 680.26(B)(4) to (7).
row("680.26(B)(4)", "underwater-lights", "metal, low voltage", [concrete(), light({ listedLowVoltage: true })], "bond");
const plastic = light({ formingShell: "nonmetal", listedLowVoltage: true });
row("680.26(B)(4)", "underwater-lights", "nonmetal, low voltage", [concrete(), plastic], "exempt");
const anchor = (changes: object) =>
  part(2, { part: "anchor", inPoolStructure: true, isolated: true, largestDimension: 4, penetration: 1, ...changes });
row("680.26(B)(5)", "fittings", "4 in. and 1 in.", [concrete(), anchor({})], "exempt");
row("680.26(B)(5)", "fittings", "4.01 in.", [concrete(), anchor({ largestDimension: 4.01 })], "bond");
row("680.26(B)(5)", "fittings", "1.01 in. deep", [concrete(), anchor({ penetration: 1.01 })], "bond");
row("680.26(B)(5)", "fittings", "isolated or not?", [concrete(), anchor({ isolated: undefined })], "review");
row("680.26(B)(6)", "equipment", "a pump 60 ft off", [concrete(), unit("pump", 720)], "bond");
row(
  "680.26(B)(6)",
  "equipment",
  "double insulated",
  [concrete(), unit("pump", 720, { doubleInsulated: true })],
  "exempt",
);
const doubly = unit("pump", 720, { doubleInsulated: true });
row("680.26(B)(6)", "double-insulated-tail", "the tail at it", [concrete(), doubly], "bond");
row("680.26(B)(6)", "equipment", "a tank", [concrete(), unit("filter", 200, { electric: false })], "review");
row("680.26(B)(7)", "equipment", "a tank 5 ft off", [concrete(), unit("filter", 60, { electric: false })], "bond");
row("680.26(B)(7)", "fixed-metal", "exactly 5 ft", [concrete(), part(60)], "bond");
row("680.26(B)(7)", "fixed-metal", "5 ft and a hundredth", [concrete(), part(60.01)], "exempt");
row("680.26(B)(7)", "fixed-metal", "exactly 12 ft up", [concrete(), part(9, { z: [144, 150] })], "bond");
row("680.26(B)(7)", "fixed-metal", "a hundredth more", [concrete(), part(9, { z: [144.01, 150] })], "exempt");
row("680.26(B)(7)", "fixed-metal", "buried pipe", [concrete(), part(9, { z: [-20, -10], part: "piping" })], "review");

// 680.26(C).
const plate = (exposedArea: number) => ({
  id: "it",
  kind: "water-bond",
  at: [0, 50],
  pool: "p",
  exposedArea,
  material: "bronze",
  alwaysSubmerged: true,
});
row("680.26(C)", "water-contact", "a liner and nothing else", [liner()], "bond");
row("680.26(C)", "water-contact", "plaster", [concrete()], "meets");
row("680.26(C)", "water-contact", "epoxy", [concrete({ finish: "epoxy" })], "review");
row("680.26(C)", "water-bond-fitting", "exactly 9 sq in.", [liner(), plate(9)], "bond");
row("680.26(C)", "water-bond-fitting", "a hundredth less", [liner(), plate(8.99)], "conflict");

// 680.42(B), 680.2.
const spa = (changes: object = {}) =>
  concrete({
    id: "it",
    outline: box(0, 0, 84, 84),
    body: "spa",
    shell: "fiberglass",
    installation: "on-ground",
    listedSelfContained: true,
    indoorOnly: false,
    waterLevel: 24,
    rim: 28,
    ...changes,
  });
row("680.42(B)", "spa-exception", "a rim of 28 in.", [spa()], "exempt");
row("680.42(B)", "spa-exception", "a hundredth less", [spa({ rim: 27.99 })], "bond");
row("680.43", "spa-exception", "indoors", [spa({ installation: "indoor" })], "review");
const above = { ...own, installation: "on-ground" };
row("680.2", "storable-pool", "storable", [liner({ ...above, storable: true })], "exempt");
row("680.2", "storable-pool", "storable or not?", [liner(above)], "review");

// 680.22(A): receptacles.
const receptacle = (distance: number, changes: object = {}) =>
  device("receptacle", distance, { gfci: true, volts: 125, amps: 20, generalPurpose: true, z: 40, ...changes });
for (const [distance, outcome] of [
  [72, "meets"],
  [71.99, "conflict"],
] as const)
  row("680.22(A)(3)", "receptacle-distance", `${distance} in.`, [concrete(), receptacle(distance)], outcome);
for (const [distance, outcome] of [
  [72, "meets"],
  [71.99, "conflict"],
  [240, "meets"],
  [240.01, "conflict"],
] as const)
  row("680.22(A)(1)", "required-receptacle", `${distance} in.`, [concrete(), receptacle(distance)], outcome);
row("680.22(A)(1)", "required-receptacle", "78.01 in. up", [concrete(), receptacle(100, { z: 78.01 })], "conflict");
row("680.22(A)(4)", "receptacle-gfci", "20 ft", [concrete(), receptacle(240, { gfci: false })], "conflict");
row("680.22(A)(4)", "receptacle-gfci", "beyond", [concrete(), receptacle(240.01, { gfci: false })], "exempt");

// 680.22(B): luminaires and fans. Distance, changes, outcome.
for (const [section, distance, changes, outcome] of [
  ["680.22(B)(1)", 60, { z: 144 }, "meets"],
  ["680.22(B)(1)", 60, { z: 143.99, gfci: true }, "conflict"],
  ["680.22(B)(3)", 40, { z: 60, gfci: true, existing: true }, "meets"],
  ["680.22(B)(3)", 40, { z: 59.99, gfci: true, existing: true }, "conflict"],
  ["680.22(B)(4)", 60.01, { z: 20, gfci: true }, "meets"],
  ["680.22(B)(4)", 120, { z: 60, gfci: false }, "meets"],
  ["680.22(B)(4)", 120, { z: 59.99, gfci: false }, "conflict"],
  ["680.22(B)(4)", 120.01, { z: 20, gfci: false }, "exempt"],
  ["680.22(B)(6)", 20, { z: 12, lowVoltage: true, listedNearWater: true, needsGrounding: false, volts: 12 }, "meets"],
  ["680.22(B)(1)", 20, { z: 12, lowVoltage: true, listedNearWater: false }, "conflict"],
] as const) {
  const lamp = device("luminaire", distance, { rigidlyAttached: true, ...changes });
  row(section, "luminaire-height", `${distance} in., ${JSON.stringify(changes)}`, [concrete(), lamp], outcome);
}
for (const [z, outcome] of [
  [90, "meets"],
  [89.99, "conflict"],
] as const) {
  const lamp = device("luminaire", 0, { z, gfci: true, indoor: true, totallyEnclosed: true });
  row(
    "680.22(B)(2)",
    "luminaire-height",
    `indoors, ${z} in. up`,
    [concrete({ installation: "indoor" }), lamp],
    outcome,
  );
}

// 680.22(C) to (E), 680.13, 680.27(B).
for (const [section, rule, limit, thing, editions] of [
  ["680.22(C)", "switch-distance", 60, (d: number) => device("switch", d), ALL],
  ["680.22(D)", "outlet-distance", 120, (d: number) => device("outlet", d, { serves: "speaker" }), ALL],
  ["680.22(E)", "other-equipment-distance", 60, (d: number) => unit("heater", d, { volts: 240 }), FROM_2020],
  ["680.13", "disconnect-distance", 60, (d: number) => device("disconnect", d), ALL],
  ["680.27(B)", "cover-motor", 60, (d: number) => unit("cover-motor", d), ALL],
] as const) {
  row(section, rule, `exactly ${limit} in.`, [concrete(), thing(limit)], "meets", [...editions]);
  row(section, rule, "a hundredth nearer", [concrete(), thing(limit - 0.01)], "conflict", [...editions]);
}
row("680.22(E)", "other-equipment-distance", "4 ft", [concrete(), unit("heater", 48)], "none", ["nec-2017"]);

// 680.9: overhead lines, straight over the water.
for (const [section, kind, limit] of [
  ["680.9(A)", "insulated-750", 270],
  ["680.9(A)", "to-15kv", 300],
  ["680.9(A)", "to-50kv", 324],
  ["680.9(C)", "broadband", 270],
  ["680.9(B)", "communications", 120],
] as const) {
  const wire = (z: number, y: number) => ({
    id: "it",
    kind: "overhead-line",
    path: line([-500, y, z], [900, y, z]),
    class: kind,
    sag: 0,
  });
  const enough = kind === "communications" ? "meets" : "review";
  row(section, "overhead-clearance", `${kind}, enough`, [concrete(), wire(limit, 96)], enough);
  row(section, "overhead-clearance", `${kind}, too low`, [concrete(), wire(limit - 0.01, 96)], "conflict");
  row(section, "overhead-clearance", `${kind}, beyond 10 ft`, [concrete(), wire(50, 312.01)], "exempt");
}

// 680.11, 680.24(A)(2), 680.23(A)(5).
for (const [method, cover, outcome] of [
  ["rmc", 6, "meets"],
  ["imc", 5.99, "conflict"],
  ["pvc", 18, "meets"],
  ["rtrc", 17.99, "conflict"],
  ["direct-burial", 40, "review"],
] as const) {
  const run = {
    id: "it",
    kind: "underground-run",
    path: line([-99, -99], [500, -99]),
    method,
    cover,
    servesPool: true,
  };
  row("680.11", "underground-run", `${method}, ${cover} in.`, [concrete(), run], outcome);
}
for (const [distance, z, outcome] of [
  [48, 8, "meets"],
  [47.99, 8, "conflict"],
  [48, 7.99, "conflict"],
] as const) {
  const cell = device("junction-box", distance, { z, serves: ["lamp"] });
  row(
    "680.24(A)(2)",
    "junction-box",
    `${distance} in. off, ${z} in. up`,
    [concrete(), light({ id: "lamp" }), cell],
    outcome,
  );
}
for (const [lensTopDepth, listedMinDepth, outcome] of [
  [18, undefined, "meets"],
  [17.99, undefined, "conflict"],
  [4, 4, "meets"],
  [3.99, 3, "conflict"],
] as const) {
  const lamp = light({ lensTopDepth, listedMinDepth });
  row("680.23(A)(5)", "lens-depth", `${lensTopDepth} in., listed ${listedMinDepth}`, [concrete(), lamp], outcome);
}

export const ONE_FACT_YARDS: readonly OneFact[] = rows;
