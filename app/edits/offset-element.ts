/** A new element at a distance along another: a deck round a pool, a coping, a ledge inside, a fence beside a fence. */
import { bulgeOf } from "../../geometry/edge.ts";
import { pathFrom } from "../../geometry/outline.ts";
import { type CornerStyle, parallelLine, parallelOutlines } from "../../geometry/parallel.ts";
import type { Path, PathData } from "../../geometry/types.ts";
import type { Kind } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { gone, withAdded } from "./checked.ts";
import { vertexOf } from "./cut-path.ts";
import { type AnyElement, type Edit, type Refused, refused } from "./edit.ts";
import { elementWords } from "./element-words.ts";
import { newId } from "./new-id.ts";
import { hasHeights, pathOf, pathRefs } from "./path-ref.ts";
import { withoutWhole } from "./whole-facts.ts";

export interface Offset {
  /** Inches, above 0. */
  readonly distance: number;
  /** Outside or inside an outline; left or right of an open line, in its direction. */
  readonly side: "outside" | "inside" | "left" | "right";
  readonly corners: CornerStyle;
}

/** What lies at a distance: paths, or why there is none. */
export function offsetPaths(element: AnyElement, offset: Offset): readonly Path[] | Refused {
  const { distance, side, corners } = offset;
  const [ref] = pathRefs(element);
  const path = ref && pathOf(element, ref);
  if (!path) return refused(`${elementWords(element)} is no outline or line.`, element.id);
  if (hasHeights(element)) return refused("An overhead line has no parallel here: draw the other one.", element.id);
  if (!(distance > 0)) return refused("The distance has to be above zero.", element.id);
  if (path.closed) {
    const found = parallelOutlines(pathFrom(path), side === "inside" ? -distance : distance, corners);
    return found.length > 0 ? found : refused(`Nothing is left ${lengthText(distance)} inside.`, element.id);
  }
  const found = parallelLine(pathFrom(path), side === "right" ? -distance : distance, corners);
  if (found) return [found];
  return refused(
    `The bends of ${elementWords(element)} leave no room for a line ${lengthText(distance)} on that side.`,
    element.id,
  );
}

/** Draws what lies at a distance as new elements: their ids are the last ones of the site. */
export function offsetElement(id: string, offset: Offset): Edit {
  return {
    label: "Offset",
    apply(site) {
      const element = site.elements.find((candidate) => candidate.id === id);
      if (!element) return gone(id);
      const found = offsetPaths(element, offset);
      if ("ok" in found) return found;
      let next: Site = site;
      const label = `Offset ${elementWords(element)}`;
      for (const path of found) {
        const added = withAdded(next, [parallelTo(next, element, path, offset.side)], label);
        if (!added.ok) return added;
        next = offset.side === "inside" ? added.site : under(added.site, id);
      }
      return { ok: true, site: next, label };
    },
  };
}

/** Round a pool lies a deck, inside it a ledge; round a building or structure lies paving; anything else gives one of its kind. */
function parallelTo(site: Site, element: AnyElement, path: Path, side: Offset["side"]): AnyElement {
  const data = dataOf(path);
  const kind = element.kind;
  if (kind === "pool" && side === "inside") {
    return { id: newId(site, "inset"), kind: "inset", outline: data, pool: element.id } as AnyElement;
  }
  if (kind === "pool" || kind === "building" || kind === "structure" || kind === "inset") {
    return { id: newId(site, "surface"), kind: "surface", outline: data, material: "concrete" } as AnyElement;
  }
  const { name: _, islands: __, holes: ___, ...facts } = withoutWhole(element) as Readonly<Record<string, unknown>>;
  const [ref] = pathRefs(element);
  const field = ref?.field ?? "outline";
  const geometry = { ...(facts[field] as PathData), ...data };
  return { ...facts, id: newId(site, kind as Kind), [field]: geometry } as unknown as AnyElement;
}

function dataOf({ edges, closed }: Path): PathData {
  const vertices = edges.map((edge) => vertexOf(edge.from, bulgeOf(edge)));
  const last = edges.at(-1);
  return { vertices: closed || !last ? vertices : [...vertices, last.to], closed };
}

/** A surface that goes round another lies under it, so that both show. */
function under(site: Site, id: string): Site {
  const added = site.elements.at(-1);
  const at = site.elements.findIndex((element) => element.id === id);
  if (added?.kind !== "surface" || site.elements[at]?.kind !== "surface") return site;
  return { ...site, elements: [...site.elements.slice(0, at), added, ...site.elements.slice(at, -1)] };
}
