/** What fixed metal a site holds, each as the shared judgement wants it. */
import { pathToArea } from "../../../geometry/distance.ts";
import { shortestPathFromPath } from "../../../geometry/paths-around-barriers.ts";
import type { Path, Route, Witness } from "../../../geometry/types.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type {
  KnownElement,
  MetalElement,
  OpeningElement,
  UndergroundElement,
  WallElement,
} from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { type Doubt, type FixedMetal, joinRemedy } from "../common/fixed-metal.ts";
import { lowestOf } from "../common/heights.ts";
import { heightRange } from "../common/needs.ts";
import { subjectName, yesNo } from "../common/verdicts.ts";

/** Makes the judgement's input for one subject and one body. */
export type SubjectAt = (body: Body) => FixedMetal;

/** The shortest way round barriers; none is needed to what lies over or at the water. */
export function pathRound(yard: Yard, element: KnownElement, body: Body): Route | null {
  const straight = yard.straight(element, body);
  if (straight.length === 0) return { length: 0, points: [straight.from, straight.to] };
  return yard.countedPath(element, body, "metal");
}

/** A piece of metal. A large yard has thousands, most of them far off: the rest is worked out where it is asked for. */
export class MetalPiece implements FixedMetal {
  readonly name: string;
  readonly straight: Witness;
  readonly path: Route | null;
  readonly lowest: number | null;
  readonly extent: number | undefined;

  constructor(
    private readonly yard: Yard,
    readonly element: MetalElement,
    body: Body,
  ) {
    this.name = subjectName(element);
    this.straight = yard.straight(element, body);
    this.path = pathRound(yard, element, body);
    this.lowest = lowestOf(element.z) ?? null;
    this.extent = yard.shape(element).kind === "path" ? extentOf(yard, element, body) : undefined;
  }

  doubt(): Doubt | undefined {
    return buriedDoubt(this.yard, this.element, this.straight, heightRange(this.element.z)?.top ?? null);
  }

  remedy(): string {
    return joinRemedy(this.yard, this.yard.fact(this.element, "anchors") ?? 1);
  }
}

const BURIED_QUESTION = yesNo(
  "buried-metal",
  "Does the authority having jurisdiction ask for bonding of this buried metal?",
);

/** Metal that lies wholly in the ground: argued. */
function buriedDoubt(yard: Yard, element: MetalElement, straight: Witness, top: number | null): Doubt | undefined {
  if (top === null || straight.length === 0 || top >= yard.levelAt(straight.to).z) return undefined;
  const name = subjectName(element);
  return {
    question: BURIED_QUESTION,
    frees: "no",
    why: `${name} lies wholly below the ground within reach of the water. Whether buried metal counts is argued.`,
    remedy: "Ask the authority having jurisdiction; bond it if it counts.",
    freed: `${name} is buried, and the authority having jurisdiction does not ask for its bonding.`,
  };
}

/** Wiring methods that bring metal along, or may. */
const METAL_RUNS: ReadonlySet<string> = new Set(["rmc", "imc", "mc", "other"]);

/** Whether a run in the ground is, or may be, a metal raceway or a metal-sheathed cable. */
export function isMetalRun({ method }: UndergroundElement): boolean {
  return METAL_RUNS.has(method);
}

/** A metal raceway or metal-sheathed cable in the ground: argued, as is all buried metal. */
export function runSubject(yard: Yard, element: UndergroundElement): SubjectAt {
  const name = subjectName(element);
  const metal = element.method === "other" ? "may be metal" : "is metal";
  return (body) => ({
    element,
    name,
    straight: yard.straight(element, body),
    path: pathRound(yard, element, body),
    lowest: "ground",
    extent: extentOf(yard, element, body),
    doubt: () => ({
      question: BURIED_QUESTION,
      frees: "no",
      why: `${name} ${metal} and lies in the ground within reach of the water. Whether buried metal counts is argued.`,
      remedy: "Ask the authority having jurisdiction; bond it if it counts.",
      freed: `${name} is buried, and the authority having jurisdiction does not ask for its bonding.`,
    }),
    remedy: () => joinRemedy(yard, 1),
  });
}

export function extentOf(yard: Yard, element: KnownElement, body: Body): number {
  return yard.lengthWithin(element, body, yard.edition.value("fixedMetal.distance")).length;
}

/** A metal frame of a door or window; `metalFrame` not given is one question. */
export function openingSubject(yard: Yard, element: OpeningElement): SubjectAt {
  const name = subjectName(element);
  const plain = elementName(element);
  const doubt = (): Doubt => ({
    question: yesNo("frame-metal", "Is the frame of this door or window metal?"),
    frees: "no",
    why: `${name} is within reach of the water, and the drawing does not say whether its frame is metal.`,
    remedy: "Say whether the frame is metal; bond it if it is.",
    freed: `The frame of ${plain} is not metal.`,
  });
  return (body) => ({
    element,
    name: `The metal frame of ${plain}`,
    straight: yard.straight(element, body),
    path: pathRound(yard, element, body),
    lowest: "ground",
    extent: extentOf(yard, element, body),
    ...(element.metalFrame === undefined ? { doubt } : {}),
    remedy: () => joinRemedy(yard, 1),
  });
}

/** Metal cladding of a building, which reaches the ground. */
export function claddingSubject(yard: Yard, element: Extract<KnownElement, { kind: "building" }>): SubjectAt {
  const name = subjectName(element);
  const plain = elementName(element);
  const doubt = (): Doubt => ({
    question: yesNo("cladding-metal", "Is the cladding of this building metal?"),
    frees: "no",
    why: `${name} is within reach of the water, and the drawing does not say whether its cladding is metal.`,
    remedy: "Say whether the cladding is metal; bond it if it is.",
    freed: `The cladding of ${plain} is not metal.`,
  });
  return (body) => {
    // The cladding is the building's outline, also of one that the pool lies in.
    const model = yard.buildings.find((entry) => entry.element.id === element.id);
    const faces = model ? [model.area.outer] : [];
    const straight = nearestFace(faces, body) ?? yard.straight(element, body);
    return {
      element,
      name: `The metal cladding of ${plain}`,
      straight,
      path: pathToFaces(yard, body, element.id, faces, straight),
      lowest: "ground",
      extent: extentOf(yard, element, body),
      ...(element.metalCladding === undefined ? { doubt } : {}),
      remedy: () => joinRemedy(yard, 1),
    };
  };
}

/** Reinforcing steel in a wall, measured to the wall's face: argued. */
export function wallSubject(yard: Yard, element: WallElement): SubjectAt {
  const name = subjectName(element);
  const plain = elementName(element);
  const known = element.reinforced === true;
  const doubt = (): Doubt => ({
    question: {
      id: "wall-reinforcing",
      text: "Does this wall hold reinforcing steel that the authority having jurisdiction wants bonded?",
      options: ["yes", "no"],
    },
    frees: "no",
    why: known
      ? `${name} holds reinforcing steel within reach of the water. Whether steel in a wall that is no part of the pool counts is argued.`
      : `${name} is within reach of the water. The drawing does not say whether it holds reinforcing steel, and whether that counts is argued.`,
    remedy:
      "Ask the authority having jurisdiction before the wall is filled; leave a tail from the steel if it counts.",
    freed: `${name} holds no steel that has to be bonded.`,
  });
  return (body) => {
    const model = yard.walls.find((entry) => entry.element.id === element.id);
    // A wall that closes on itself has a face inside as well.
    const faces = model ? [model.footprint.outer, ...model.footprint.holes] : [];
    const straight = nearestFace(faces, body) ?? yard.straight(element, body);
    return {
      element,
      name: `The reinforcing steel of ${plain}`,
      straight,
      path: pathToFaces(yard, body, element.id, faces, straight),
      lowest: "ground",
      doubt,
      remedy: () => joinRemedy(yard, 1),
    };
  };
}

/** The face nearest to the water; null where there is none. */
function nearestFace(faces: readonly Path[], body: Body): Witness | null {
  const found = faces.map((face) => pathToArea(face, body.water)).sort((a, b) => a.length - b.length);
  return found[0] ?? null;
}

/** The shortest way to the faces of a wall or building round the other barriers. */
function pathToFaces(yard: Yard, body: Body, id: string, faces: readonly Path[], straight: Witness): Route | null {
  if (straight.length === 0) return { length: 0, points: [straight.from, straight.to] };
  const others = yard.barriers("metal", body).counted.filter((barrier) => barrier.id !== id);
  const barriers = others.flatMap((barrier) => barrier.barriers);
  const routes = faces.flatMap((face) => shortestPathFromPath(face, body.water, barriers) ?? []);
  return routes.sort((a, b) => a.length - b.length)[0] ?? null;
}
