/**
 * What bears the bonding: which recorded or drawn things pass it on to whatever is joined to them, and which of them are
 * the bonding network by themselves (perimeter copper, paving steel that serves, a conductive shell's steel or grid).
 *
 * Terms. A bearer passes the bonding on. A source is the network itself. A shell grid is recorded grid copper that lies
 * mostly inside a pool's outline; all other grid copper belongs to the perimeter.
 */
import { lengthWithin } from "../../geometry/distance.ts";
import { pathLength } from "../../geometry/outline.ts";
import { shellFacts } from "../catalogue/common/shell-facts.ts";
import { bondedBodies } from "../catalogue/common/storable.ts";
import type { Body, Yard } from "../measures/yard.ts";
import { perimeterMethods } from "../perimeter/methods.ts";
import type { ConductorElement, KnownElement, SurfaceElement } from "../site/elements.ts";
import { leastOf, mostOf, type Standing } from "./standing.ts";
import { wireOf } from "./wire.ts";

/** Whether the bonding passes through an element to others that are joined to it. */
export function bearing(yard: Yard, element: KnownElement): Standing {
  switch (element.kind) {
    case "conductor":
      return wireOf(yard, element).standing;
    case "pool":
      return shellBearing(yard, element.id);
    case "surface":
      return pavingSteel(yard, element);
    case "metal":
    case "water-bond":
      return "sure";
    case "fence":
      if (element.metal !== true) return element.metal === false ? "no" : "doubtful";
      if (element.isolatedSections === undefined) return "doubtful";
      return element.isolatedSections <= 1 ? "sure" : "no";
    case "equipment":
      return yard.fact(element, "metalParts") === false || yard.fact(element, "doubleInsulated") === true
        ? "no"
        : "sure";
    case "underwater-light":
      return element.formingShell === "metal" ? "sure" : element.metalBracket === false ? "no" : "doubtful";
    case "opening":
      return flagStanding(element.metalFrame);
    case "building":
      return flagStanding(element.metalCladding);
    case "underground-run":
      return element.method === "rmc" || element.method === "imc"
        ? "sure"
        : element.method === "mc"
          ? "doubtful"
          : "no";
    case "wall":
    case "structure":
    case "device":
      return "doubtful";
    case "inset":
    case "overhead-line":
    case "tie":
    case "keep-out":
      return "no";
  }
}

function flagStanding(metal: boolean | undefined): Standing {
  return metal === undefined ? "doubtful" : metal ? "sure" : "no";
}

/** Whether bare steel lies in a paving; encapsulated bars and fiber are none. */
export function pavingSteel(yard: Yard, surface: SurfaceElement): Standing {
  switch (surface.steel) {
    case "rebar":
      return "sure";
    case "mesh": {
      const counts = yard.edition.value("perimeter.meshCounts");
      if (counts !== null) return counts ? "sure" : "no";
      return perimeterPieces(yard).some(({ piece, planned }) => piece.surface === surface.id && planned === "steel")
        ? "sure"
        : "doubtful";
    }
    case undefined:
      return "doubtful";
    case "encapsulated":
    case "fiber":
    case "none":
      return "no";
  }
}

/** The band pieces of every body that 680.26 applies to. */
export function perimeterPieces(yard: Yard) {
  return yard.kept("recorded band pieces", () =>
    bondedBodies(yard).flatMap((body) => [...perimeterMethods(yard, body)]),
  );
}

/** The bodies that need perimeter bonding somewhere, in file order. */
export function perimeterBodies(yard: Yard): readonly Body[] {
  return yard.kept("perimeter bodies", () =>
    bondedBodies(yard).filter((body) => perimeterMethods(yard, body).some(({ planned }) => planned !== "none-needed")),
  );
}

/** Recorded grid copper that lies mostly inside a pool's outline belongs to its shell: the pool's id; else null. */
export function shellOfGrid(yard: Yard, conductor: ConductorElement): string | null {
  if (conductor.role !== "grid") return null;
  return yard.kept(`shell of grid ${conductor.id}`, () => {
    const shape = yard.shape(conductor);
    if (shape.kind !== "path") return null;
    const half = pathLength(shape.path) / 2;
    return yard.bodies.find((body) => lengthWithin(shape.path, body.water, 0).length > half)?.id ?? null;
  }, [conductor]);
}

/** Recorded copper of the perimeter: rings, and grids outside of the shells. */
export function perimeterCopper(yard: Yard): readonly ConductorElement[] {
  return yard.kept("perimeter copper", () =>
    yard.all("conductor").filter((c) => c.role === "ring" || (c.role === "grid" && shellOfGrid(yard, c) === null)),
  );
}

/** Recorded grids in the shell of a pool. */
export function shellGrids(yard: Yard, pool: string): readonly ConductorElement[] {
  return yard.all("conductor").filter((conductor) => shellOfGrid(yard, conductor) === pool);
}

/** Surfaces whose steel the perimeter bonding may use, with how surely there is some. */
export function steelSurfaces(yard: Yard): ReadonlyMap<string, Standing> {
  return yard.kept("steel surfaces", () => {
    const found = new Map<string, Standing>();
    for (const surface of yard.all("surface")) {
      const uses = perimeterPieces(yard).some(
        ({ piece, planned, allowed }) =>
          piece.surface === surface.id && (planned === "steel" || allowed.includes("steel")),
      );
      const standing = uses ? pavingSteel(yard, surface) : "no";
      if (standing !== "no") found.set(surface.id, standing);
    }
    return found;
  });
}

/** Whether joining a pool's id joins bonded metal of its shell: bare steel, a recorded grid, a metal wall. */
function shellBearing(yard: Yard, pool: string): Standing {
  const body = yard.body(pool);
  if (!body) return "no";
  const facts = shellFacts(yard, body);
  switch (facts.class) {
    case "nonconductive":
      return "no";
    case "open":
      return "doubtful";
    case "frame":
      return body.element.shell === "metal" || facts.wallFrame === "metal" ? "sure" : "doubtful";
    case "conductive": {
      const grids = mostOf(shellGrids(yard, pool).map((grid) => wireOf(yard, grid).standing));
      if (facts.steel === "bare") return "sure";
      return facts.steel === "unknown" ? mostOf([grids, "doubtful"]) : grids;
    }
  }
}

/** Whether an element is the bonding network by itself. */
export function sourceStanding(yard: Yard, element: KnownElement): Standing {
  switch (element.kind) {
    case "conductor": {
      const pool = shellOfGrid(yard, element);
      const wire = wireOf(yard, element).standing;
      if (pool !== null) return leastOf([wire, shellSource(yard, pool)]);
      return element.role === "ring" || element.role === "grid" ? wire : "no";
    }
    case "pool":
      return leastOf([shellBearing(yard, element.id), shellSource(yard, element.id)]);
    case "surface":
      return steelSurfaces(yard).get(element.id) ?? "no";
    default:
      return "no";
  }
}

/** Whether a shell counts as conductive. */
function shellSource(yard: Yard, pool: string): Standing {
  const body = yard.body(pool);
  if (!body || !bondedBodies(yard).includes(body)) return "no";
  const facts = shellFacts(yard, body);
  if (facts.class === "conductive") return "sure";
  return facts.ties === "yes" ? "sure" : facts.ties === "no" ? "no" : "doubtful";
}
