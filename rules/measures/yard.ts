/**
 * The measured yard: a site with its geometry, the edition in force, and every measurement that rules ask for,
 * each worked out once and kept, also for the next state of the site (kept-work.ts). Rules read this and nothing else.
 */
import { regionArea, unionRegions } from "../../geometry/clipping.ts";
import { lengthWithin, pathToArea } from "../../geometry/distance.ts";
import { areaFrom, flattenArea, pathFrom } from "../../geometry/outline.ts";
import { LIMIT_TOLERANCE } from "../../geometry/tolerances.ts";
import type { Area, Barrier, Path, Point, Region, Route, Witness } from "../../geometry/types.ts";
import { wallFootprint } from "../../geometry/wall-footprint.ts";
import type { EditionId } from "../editions/edition.ts";
import { type EditionInForce, editionInForce } from "../editions/in-force.ts";
import { ABSENT_MEANS, DEFAULT_GRADE, DEFAULT_SETTINGS, DEFAULT_WATER_LEVEL } from "../site/defaults.ts";
import type { ElementOf, Kind, KnownElement, UnknownElement } from "../site/elements.ts";
import type { PerimeterChoice, Site } from "../site/site.ts";
import { type AnswerFound, findAnswer } from "./answers.ts";
import { splitBySurface } from "./band-pieces.ts";
import { type BarrierLists, listsOf } from "./barrier-lists.ts";
import {
  type BarrierMeasure,
  type BarrierSet,
  type BuildingModel,
  barriersFor,
  type WallModel,
  waterInside,
} from "./barriers.ts";
import { groundWithin } from "./ground-within.ts";
import { type Level, levelAt, type SurfaceModel } from "./levels.ts";
import { OnceWork } from "./once-work.ts";
import { bitOf } from "./reading-notes.ts";
import type { SameInputs } from "./same-inputs.ts";
import { type Shape, shapeOf, straightToWater } from "./shapes.ts";
import { pathMeasure, wayRound } from "./ways-round.ts";
import type { Work } from "./work.ts";
import type { Band, BandPiece, BarrierChoice, Body, PathMeasure } from "./yard-types.ts";

export { isKnown } from "./reading-notes.ts";

export type { Band, BandPiece, BarrierChoice, Body, PathMeasure } from "./yard-types.ts";

export class Yard {
  readonly site: Site;
  readonly edition: EditionInForce;
  readonly accuracy: number;
  readonly grade: number;
  readonly settings: {
    readonly ringOffset: number;
    readonly ringMargin: number;
    readonly ties: number;
    readonly spareFraction: number;
    readonly junctionAllowance: number;
    readonly spools: readonly number[];
    readonly ringStyle: "even" | "short";
    readonly perimeterMethod: PerimeterChoice;
    readonly gridRolls: readonly number[];
  };

  readonly #work: Work;
  readonly #bodies: readonly Body[];
  readonly #surfaces: readonly SurfaceModel[];
  readonly #buildings: readonly BuildingModel[];
  readonly #walls: readonly WallModel[];

  /** `as`: judge under this edition whatever the site names. `work`: how results are kept; without it for this yard alone. */
  constructor(site: Site, as?: EditionId, work: Work = new OnceWork()) {
    work.follow(site, as ?? "");
    this.site = site;
    this.#work = work;
    this.edition = editionInForce(site, as);
    this.accuracy = site.accuracy ?? 0;
    this.grade = site.grade ?? DEFAULT_GRADE;
    this.settings = { ...DEFAULT_SETTINGS, ...site.settings };
    this.#bodies = this.#models("pool", (element): Body => {
      const water = areaFrom(element.outline, element.islands);
      const waterLevel = element.waterLevel ?? DEFAULT_WATER_LEVEL;
      return { id: element.id, element, water, region: flattenArea(water), waterLevel };
    });
    this.#surfaces = this.#models("surface", (element): SurfaceModel => {
      return { element, area: areaFrom(element.outline, element.holes) };
    });
    this.#buildings = this.#models("building", (element): BuildingModel => {
      return { element, area: areaFrom(element.outline) };
    });
    this.#walls = this.#models("wall", (element): WallModel => {
      const path = pathFrom(element.path);
      const thickness = element.thickness ?? THIN_WALL;
      return { element, path, thickness, footprint: wallFootprint(path, thickness) };
    });
  }

  #models<K extends Kind, M>(kind: K, make: (element: ElementOf<K>) => M): readonly M[] {
    return this.#elements(kind).map((element) => {
      const memo = this.#work.memos.of(element as KnownElement);
      memo.model ??= make(element);
      return memo.model as M;
    });
  }

  #elements<K extends Kind>(kind: K): readonly ElementOf<K>[] {
    return (this.#work.byKind.get(kind) ?? []) as unknown as readonly ElementOf<K>[];
  }

  get bodies(): readonly Body[] {
    this.#work.read(bitOf("pool"));
    return this.#bodies;
  }

  get surfaces(): readonly SurfaceModel[] {
    this.#work.read(bitOf("surface"));
    return this.#surfaces;
  }

  get buildings(): readonly BuildingModel[] {
    this.#work.read(bitOf("building"));
    return this.#buildings;
  }

  get walls(): readonly WallModel[] {
    this.#work.read(bitOf("wall"));
    return this.#walls;
  }

  get unknownElements(): readonly UnknownElement[] {
    this.#work.readUnknown();
    return this.#work.unknown;
  }

  /** Every element of a kind, in file order. */
  all<K extends Kind>(kind: K): readonly ElementOf<K>[] {
    this.#work.read(bitOf(kind));
    return this.#elements(kind);
  }

  /**
   * What a rule makes of each element of a kind, in file order. Each element's share is kept by itself, so that moving
   * one does not judge the others again: `make` looks at the others only where it has to.
   */
  each<K extends Kind, T>(rule: string, kind: K, make: (element: ElementOf<K>) => readonly T[]): T[] {
    const elements = this.#elements(kind) as unknown as readonly KnownElement[];
    return this.#work.each(`${rule}/${kind}`, kind, elements, (element) => make(element as unknown as ElementOf<K>));
  }

  /** An element of a known kind by id. */
  get(id: string): KnownElement | undefined {
    const element = this.#work.byId.get(id);
    this.#work.readOne(id, element);
    return element;
  }

  body(id: string): Body | undefined {
    return this.bodies.find((body) => body.id === id);
  }

  shape(element: KnownElement): Shape {
    const memo = this.#work.memos.of(element);
    memo.shape ??= shapeOf(element);
    return memo.shape;
  }

  /** Straight distance in plan from the body's inside wall, 0 inside the outline, barriers ignored; starts at the water. */
  straight(element: KnownElement, body: Body): Witness {
    const { memos } = this.#work;
    const known = memos.straight(element, body);
    return known ?? memos.keepStraight(element, body, straightToWater(this.shape(element), body.water));
  }

  /** The body nearest to an element, null where the site has none. */
  nearestBody(element: KnownElement, among: readonly Body[] = this.bodies): Body | null {
    let best: Body | null = null;
    for (const body of among) {
      if (!best || this.straight(element, body).length < this.straight(element, best).length) best = body;
    }
    return best;
  }

  /** Inches of a line whose straight distance to the water is at most `limit`, with the pieces. */
  lengthWithin(
    element: KnownElement,
    body: Body,
    limit: number,
  ): { readonly length: number; readonly pieces: readonly Path[] } {
    const shape = this.shape(element);
    if (shape.kind === "point" || this.straight(element, body).length > limit + LIMIT_TOLERANCE) return NOTHING_WITHIN;
    const path = shape.kind === "path" ? shape.path : shape.area.outer;
    return this.#work.memos.measured(element, body, `within ${limit}`, () => lengthWithin(path, body.water, limit));
  }

  levelAt(p: Point): Level {
    return levelAt(p, this.surfaces, this.grade);
  }

  barriers(measure: BarrierMeasure, body: Body): BarrierSet {
    return this.kept(`barriers ${measure} ${body.id}`, () =>
      barriersFor(measure, body.water, {
        walls: this.walls,
        buildings: this.buildings,
        openings: this.all("opening"),
        wallHeight: this.edition.value("perimeter.wallHeight"),
        accuracy: this.accuracy,
        levelAt: (p) => this.levelAt(p),
      }),
    );
  }

  /**
   * The shortest plan path from the inside wall to the element round the barriers that count. Not kept: of most elements
   * it is asked for once, and a large yard has thousands.
   */
  countedPath(element: KnownElement, body: Body, measure: "metal" | "cord"): Route | null {
    return this.#route(element, body, this.#barrierLists(measure, body), "counted");
  }

  /** The same, and the paths where what is not given about barriers turns out one way or the other. */
  pathTo(element: KnownElement, body: Body, measure: "metal" | "cord"): PathMeasure {
    const lists = this.#barrierLists(measure, body);
    return this.#work.memos.measured(element, lists, "path", () =>
      pathMeasure(lists.set, (which) => this.#route(element, body, lists, which)),
    );
  }

  /** The barriers of a measure as one list, the same array each time: what is worked out of it is kept with it. */
  barrierList(measure: BarrierMeasure, body: Body, which: BarrierChoice = "counted"): readonly Barrier[] {
    return this.#barrierLists(measure, body)[which];
  }

  #barrierLists(measure: BarrierMeasure, body: Body): BarrierLists {
    return this.keptOf(body.element, LISTS[measure], () => {
      const set = this.#work.same.steady(`barriers ${measure} ${body.id}`, this.barriers(measure, body));
      // Paths are kept with the lists, so these are made anew for another water too.
      return this.#work.same.of(`barrier lists ${measure} ${body.id}`, [set, body.water], () => listsOf(set));
    });
  }

  #route(element: KnownElement, body: Body, lists: BarrierLists, which: BarrierChoice): Route | null {
    return wayRound(this.shape(element), body, lists, which, this.straight(element, body));
  }

  /** Footprints of all walls and buildings, and the water of all bodies: the places that belong to no zone. */
  notGround(): Region[] {
    return this.kept("not ground", () => {
      const regions: Region[] = this.bodies.map((body) => body.region);
      for (const wall of this.walls) regions.push(flattenArea(wall.footprint));
      for (const building of this.buildings) {
        // A building that contains a pool counts by its outline only: the floor in it is ground.
        if (!this.bodies.some((body) => waterInside(body.water, building.area)))
          regions.push(flattenArea(building.area));
      }
      return regions;
    });
  }

  /** The perimeter surface of a body, split by the surface on top. */
  band(body: Body): Band {
    return this.kept(`band ${body.id}`, () => {
      const barriers = this.barrierList("band", body);
      const width = this.edition.value("perimeter.width");
      const region = groundWithin(this.#work.same, "band", body, width, barriers, this.notGround());
      return { region, area: regionArea(region), pieces: this.piecesOf(region) };
    });
  }

  /** Where a hand reaches fixed metal: straight reach less what barriers keep off, for drawing. */
  reachRegion(body: Body): Region {
    return this.kept(`reach ${body.id}`, () => {
      const barriers = this.barrierList("metal", body);
      const distance = this.edition.value("fixedMetal.distance");
      return groundWithin(this.#work.same, "reach", body, distance, barriers, this.notGround());
    });
  }

  /** Splits a region of ground by the surface that lies on top (later in the file lies on top). */
  piecesOf(region: Region): BandPiece[] {
    return splitBySurface(region, this.surfaces);
  }

  /** The water of all bodies as one region. */
  allWater(): Region {
    return this.kept("all water", () => unionRegions(this.bodies.map((body) => body.region)));
  }

  /** The answer kept in the site to a question about an element (or a body where there is no element). */
  answer(question: string, element: string | null, body: string | null): AnswerFound | null {
    for (const { restsOn } of this.site.answers?.filter((given) => given.question === question) ?? []) {
      for (const kind of restsOn?.kinds ?? []) this.all(kind as Kind);
      for (const id of restsOn?.elements ?? []) this.get(id);
    }
    return findAnswer(this.site, this.edition.id, question, element, body);
  }

  /** A field of an element, or what its absence is defined to mean; `undefined` = unknown. */
  fact<E extends KnownElement, F extends keyof E & string>(element: E, field: F): E[F] | undefined {
    const value = element[field];
    if (value !== undefined) return value;
    return (ABSENT_MEANS as Record<string, unknown>)[field] as E[F] | undefined;
  }

  /** Straight distance between two elements' shapes (paths and points), inches. */
  distanceToArea(element: KnownElement, area: Area): Witness {
    const shape = this.shape(element);
    return shape.kind === "path" ? pathToArea(shape.path, area) : straightToWater(shape, area);
  }

  /**
   * Works something out once, and again only when what it read has changed. The key names all that it is made of;
   * `about`: the elements, other than bodies of water, that the key names.
   */
  kept<T>(key: string, make: () => T, about?: readonly KnownElement[]): T {
    return this.#work.kept(key, make, about);
  }

  /** The same about one element of the site. */
  keptOf<T>(element: KnownElement, name: string, make: () => T): T {
    return this.#work.keptOf(element, name, make);
  }

  /** Results of pure geometry, kept while the same things go in. */
  get same(): SameInputs {
    return this.#work.same;
  }

  /** What has been made of verdicts, kept as long as they are, under the same head of the site; null: nothing is kept. */
  get keptOfVerdicts(): Map<object, unknown> | null {
    return this.#work.ofVerdicts;
  }

  /** For results that go on reading the yard after they are made: they are made anew for every state of the site. */
  readsEverything(): void {
    this.#work.readEverything();
  }
}

/** Names under which lists of barriers are kept with their body. */
const LISTS = { band: "barriers of band", metal: "barriers of metal", cord: "barriers of cord" } as const;

const NOTHING_WITHIN = { length: 0, pieces: [] } as const;

/** Thickness of a wall that gives none, inches: thin, so that its footprint takes no ground away. */
const THIN_WALL = 0.5;
