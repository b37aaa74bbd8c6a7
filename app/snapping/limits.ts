/** The distances from the water that decide something about what is being placed, as the edition in force has them. */
import { editionInForce } from "../../rules/editions/in-force.ts";
import type { ParameterId, ParameterTypes } from "../../rules/editions/parameter-types.ts";
import { DEFAULT_SETTINGS } from "../../rules/site/defaults.ts";
import type { Kind } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";

export interface WaterLimit {
  /** Inches from the inside wall. */
  readonly distance: number;
  /** What it is the limit of: "fixed metal". */
  readonly words: string;
}

type DistanceId = { [K in ParameterId]: ParameterTypes[K] extends number | null ? K : never }[ParameterId];

interface Entry {
  readonly parameter: DistanceId;
  readonly words: string;
  readonly kinds: readonly Kind[];
}

const STANDS: readonly Kind[] = ["metal", "fence", "wall", "building", "opening", "structure", "surface", "equipment"];

const ENTRIES: readonly Entry[] = [
  { parameter: "ring.min", words: "the ring, nearest", kinds: ["conductor"] },
  { parameter: "ring.max", words: "the ring, farthest", kinds: ["conductor"] },
  { parameter: "perimeter.width", words: "perimeter surface", kinds: ["surface", "wall", "building", "keep-out"] },
  { parameter: "fixedMetal.distance", words: "fixed metal", kinds: STANDS },
  { parameter: "equipment.coverMotorDistance", words: "cover motors", kinds: ["equipment"] },
  { parameter: "disconnect.distance", words: "disconnects", kinds: ["device"] },
  { parameter: "switch.distance", words: "switches", kinds: ["device"] },
  { parameter: "receptacle.distance", words: "receptacles", kinds: ["device"] },
  { parameter: "luminaire.near", words: "luminaires", kinds: ["device"] },
  { parameter: "outlet.distance", words: "outlets", kinds: ["device"] },
  { parameter: "junctionBox.distance", words: "junction boxes", kinds: ["device"] },
  { parameter: "luminaire.outerTo", words: "luminaires with GFCI", kinds: ["device"] },
  { parameter: "receptacle.requiredTo", words: "the required receptacle", kinds: ["device"] },
  { parameter: "otherEquipment.distance", words: "other equipment", kinds: ["device", "equipment"] },
];

/** What is looked for where nothing certain is being placed, as while measuring. */
const USUAL: readonly DistanceId[] = ["perimeter.width", "fixedMetal.distance"];

interface Kept {
  readonly edition: unknown;
  readonly amendments: unknown;
  readonly settings: unknown;
  readonly answers: unknown;
  readonly byKind: Map<Kind | null, readonly WaterLimit[]>;
}

let kept: Kept | null = null;

/** The limits for a kind, nearest first, each distance once; null: nothing certain is being placed. */
export function waterLimits(site: Site, kind: Kind | null): readonly WaterLimit[] {
  const { edition, amendments, settings, answers } = site;
  const isSame =
    kept !== null &&
    kept.edition === edition &&
    kept.amendments === amendments &&
    kept.settings === settings &&
    kept.answers === answers;
  if (!isSame || kept === null) kept = { edition, amendments, settings, answers, byKind: new Map() };
  const known = kept.byKind.get(kind);
  if (known) return known;
  const limits = limitsOf(site, kind);
  kept.byKind.set(kind, limits);
  return limits;
}

function limitsOf(site: Site, kind: Kind | null): WaterLimit[] {
  const inForce = editionInForce(site);
  const words = new Map<number, string[]>();
  const add = (distance: number | null, name: string) => {
    if (distance === null || distance <= 0) return;
    words.set(distance, [...(words.get(distance) ?? []), name]);
  };
  for (const { parameter, words: name, kinds } of ENTRIES) {
    const isWanted = kind === null ? USUAL.includes(parameter) : kinds.includes(kind);
    if (isWanted) add(inForce.value(parameter), name);
  }
  if (kind === "conductor") add(site.settings?.ringOffset ?? DEFAULT_SETTINGS.ringOffset, "the ring as planned");
  return [...words]
    .map(([distance, names]): WaterLimit => ({ distance, words: listed(names) }))
    .sort((a, b) => a.distance - b.distance);
}

/** Two names at most: these are words beside a pointer. */
function listed(names: readonly string[]): string {
  const [first = "", second] = names;
  return second === undefined ? first : names.length === 2 ? `${first}, ${second}` : `${first}, ${second} and more`;
}
