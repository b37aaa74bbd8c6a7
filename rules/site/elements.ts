/**
 * Every kind of element a site may hold, as zod schemas. The field that is not optional beside `id`, `kind` and the
 * geometry is the kind's type field; every other field may be absent, which means *unknown* save for the defaults
 * that `defaults.ts` lists. Fields that a rule judges (a conductor's metal, a tie's hardware) take any text or number.
 * Objects are loose: unknown fields are kept.
 */
import { z } from "zod";
import { amount, flag, number, openPath, outline, outlines, path, position, shape, text, zRange } from "./fields.ts";

const common = { id: z.string().min(1), name: text.optional() };

export const pool = z.looseObject({
  ...common,
  kind: z.literal("pool"),
  outline,
  islands: outlines.optional(),
  body: z.enum(["pool", "spa", "basin"]),
  shell: z.enum(["cast-concrete", "sprayed-concrete", "coated-block", "vinyl-liner", "fiberglass", "metal", "unknown"]),
  steel: z.enum(["bare", "encapsulated", "none"]).optional(),
  wallFrame: z.enum(["metal", "nonmetal"]).optional(),
  finish: text.optional(),
  waterLevel: number.optional(),
  normalWaterLevel: number.optional(),
  depth: amount.optional(),
  rim: number.optional(),
  installation: z.enum(["in-ground", "on-ground", "indoor"]).optional(),
  storable: flag.optional(),
  listedSelfContained: flag.optional(),
  indoorOnly: flag.optional(),
});

export const inset = z.looseObject({
  ...common,
  kind: z.literal("inset"),
  outline,
  inset: z.enum(["step", "bench", "tanning-ledge"]).optional(),
  pool: text.optional(),
  depth: amount.optional(),
});

export const surface = z.looseObject({
  ...common,
  kind: z.literal("surface"),
  outline,
  holes: outlines.optional(),
  material: z.enum([
    "concrete",
    "pavers",
    "stone",
    "tile",
    "wood",
    "composite",
    "plastic",
    "gravel",
    "soil",
    "lawn",
    "artificial-turf",
  ]),
  steel: z.enum(["rebar", "mesh", "encapsulated", "fiber", "none"]).optional(),
  level: number.optional(),
  support: z.enum(["grade", "raised"]).optional(),
  supports: z.enum(["nonconductive", "conductive"]).optional(),
  existing: flag.optional(),
});

export const building = z.looseObject({
  ...common,
  kind: z.literal("building"),
  outline,
  top: number.optional(),
  metalCladding: flag.optional(),
});

export const wall = z.looseObject({
  ...common,
  kind: z.literal("wall"),
  path,
  thickness: amount.optional(),
  top: number.optional(),
  base: number.optional(),
  permanent: flag.optional(),
  reinforced: flag.optional(),
});

export const fence = z.looseObject({
  ...common,
  kind: z.literal("fence"),
  path,
  top: number.optional(),
  metal: flag.optional(),
  solid: flag.optional(),
  permanent: flag.optional(),
  isolatedSections: amount.optional(),
  gates: amount.optional(),
});

export const opening = z.looseObject({
  ...common,
  kind: z.literal("opening"),
  path: openPath,
  opening: z.enum(["hinged-door", "sliding-door", "window", "passage"]),
  metalFrame: flag.optional(),
});

export const structure = z.looseObject({
  ...common,
  kind: z.literal("structure"),
  outline,
  structure: z.enum(["diving-board", "platform", "tower", "stand", "slide", "raft"]),
  top: number.optional(),
});

export const metal = z.looseObject({
  ...common,
  kind: z.literal("metal"),
  shape,
  part: text.optional(),
  z: zRange.optional(),
  fixed: flag.optional(),
  inPoolStructure: flag.optional(),
  isolated: flag.optional(),
  largestDimension: amount.optional(),
  penetration: amount.optional(),
  wettedArea: amount.optional(),
  removable: flag.optional(),
  anchors: amount.optional(),
});

export const equipment = z.looseObject({
  ...common,
  kind: z.literal("equipment"),
  at: position,
  unit: z.enum([
    "pump",
    "heater",
    "filter",
    "chlorinator",
    "controller",
    "cover-motor",
    "blower",
    "heat-pump",
    "other",
  ]),
  metalParts: flag.optional(),
  electric: flag.optional(),
  doubleInsulated: flag.optional(),
  ratedAmps: amount.optional(),
  bondingInstructions: flag.optional(),
  servesWater: flag.optional(),
  gfci: flag.optional(),
  volts: amount.optional(),
  z: z.union([number, zRange]).optional(),
});

export const underwaterLight = z.looseObject({
  ...common,
  kind: z.literal("underwater-light"),
  at: position,
  pool: text.optional(),
  formingShell: z.enum(["metal", "nonmetal", "none"]),
  metalBracket: flag.optional(),
  listedLowVoltage: flag.optional(),
  lensTopDepth: number.optional(),
  listedMinDepth: number.optional(),
  conduit: z.enum(["metal", "nonmetal"]).optional(),
  insideBond: flag.optional(),
});

export const device = z.looseObject({
  ...common,
  kind: z.literal("device"),
  at: position,
  device: z.enum(["receptacle", "switch", "luminaire", "fan", "outlet", "junction-box", "disconnect"]),
  z: z.union([number, zRange]).optional(),
  gfci: flag.optional(),
  existing: flag.optional(),
  indoor: flag.optional(),
  lowVoltage: flag.optional(),
  listedNearWater: flag.optional(),
  needsGrounding: flag.optional(),
  rigidlyAttached: flag.optional(),
  totallyEnclosed: flag.optional(),
  cordConnected: flag.optional(),
  gasFired: flag.optional(),
  gasPiping: z.enum(["metal", "nonmetal"]).optional(),
  generalPurpose: flag.optional(),
  volts: amount.optional(),
  amps: amount.optional(),
  serves: z.union([text, z.array(text)]).optional(),
});

export const overheadLine = z.looseObject({
  ...common,
  kind: z.literal("overhead-line"),
  path: openPath,
  class: z.enum(["insulated-750", "to-15kv", "to-50kv", "communications", "broadband"]),
  sag: amount.optional(),
});

export const undergroundRun = z.looseObject({
  ...common,
  kind: z.literal("underground-run"),
  path: openPath,
  method: z.enum(["rmc", "imc", "pvc", "rtrc", "mc", "direct-burial", "other"]),
  cover: amount.optional(),
  servesPool: flag.optional(),
});

export const waterBond = z.looseObject({
  ...common,
  kind: z.literal("water-bond"),
  at: position,
  pool: text.optional(),
  exposedArea: amount.optional(),
  width: amount.optional(),
  height: amount.optional(),
  diameter: amount.optional(),
  length: amount.optional(),
  material: text.optional(),
  alwaysSubmerged: flag.optional(),
  location: text.optional(),
});

export const conductor = z.looseObject({
  ...common,
  kind: z.literal("conductor"),
  path,
  role: z.enum(["ring", "grid", "branch", "tail"]),
  awg: z.union([number, text]).optional(),
  solid: flag.optional(),
  material: text.optional(),
  covering: text.optional(),
  cover: number.optional(),
  coverFrom: text.optional(),
  joint: text.optional(),
});

export const tie = z.looseObject({
  ...common,
  kind: z.literal("tie"),
  at: position,
  joins: z.array(text),
  hardware: text.optional(),
  listedForBurial: flag.optional(),
  conductorsInClamp: amount.optional(),
});

export const keepOut = z.looseObject({ ...common, kind: z.literal("keep-out"), outline });

/** The schemas by kind: the one list that the reader, the JSON Schema and the editor's forms are made from. */
export const elementSchemas = {
  pool,
  inset,
  surface,
  building,
  wall,
  fence,
  opening,
  structure,
  metal,
  equipment,
  "underwater-light": underwaterLight,
  device,
  "overhead-line": overheadLine,
  "underground-run": undergroundRun,
  "water-bond": waterBond,
  conductor,
  tie,
  "keep-out": keepOut,
} as const;

export type Kind = keyof typeof elementSchemas;
export type ElementOf<K extends Kind> = z.infer<(typeof elementSchemas)[K]>;
export type PoolElement = ElementOf<"pool">;
export type SurfaceElement = ElementOf<"surface">;
export type BuildingElement = ElementOf<"building">;
export type WallElement = ElementOf<"wall">;
export type FenceElement = ElementOf<"fence">;
export type OpeningElement = ElementOf<"opening">;
export type StructureElement = ElementOf<"structure">;
export type MetalElement = ElementOf<"metal">;
export type EquipmentElement = ElementOf<"equipment">;
export type LightElement = ElementOf<"underwater-light">;
export type DeviceElement = ElementOf<"device">;
export type OverheadElement = ElementOf<"overhead-line">;
export type UndergroundElement = ElementOf<"underground-run">;
export type WaterBondElement = ElementOf<"water-bond">;
export type ConductorElement = ElementOf<"conductor">;
export type TieElement = ElementOf<"tie">;
export type KeepOutElement = ElementOf<"keep-out">;

/** An element of a known kind. */
export type KnownElement = { [K in Kind]: ElementOf<K> }[Kind];

/** An element of a kind this version does not know: kept as it is, and a question in the report. */
export interface UnknownElement {
  readonly id: string;
  readonly kind: string;
  readonly [field: string]: unknown;
}

export const KINDS = Object.keys(elementSchemas) as Kind[];
