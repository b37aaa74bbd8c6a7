/**
 * The ways to bond each perimeter, compared: for every choice of method what it lays where, its copper and its joints.
 * A choice is laid wherever the edition in force allows it; steel that is in the paving stays the method there.
 */
import type { Yard } from "../measures/yard.ts";
import { type Method, methodBy, type PieceMethod, surfaceOf } from "../perimeter/methods.ts";
import type { MethodChoice, MethodsReport } from "../report.ts";
import { PERIMETER_CHOICES, type PerimeterChoice } from "../site/site.ts";
import { isClosed } from "../takeoff/takeoff.ts";
import { capitalized, elementName } from "../words/element-names.ts";
import { copperBy, type Group, type LaidCopper, perimeterGroups, piecesOf } from "./copper-by-choice.ts";
import { laidRing } from "./laid-ring.ts";

/** One entry for each perimeter, in file order of its first body. */
export function methodChoices(yard: Yard): readonly MethodsReport[] {
  return yard.kept("method choices", () =>
    perimeterGroups(yard).map((group) => ({
      pool: group[0]?.id ?? "",
      pools: group.map(({ id }) => id),
      choices: PERIMETER_CHOICES.map((choice) => choiceOf(yard, group, choice)),
    })),
  );
}

function choiceOf(yard: Yard, group: Group, choice: PerimeterChoice): MethodChoice {
  const needed = group.flatMap((body) =>
    piecesOf(yard, [body])
      .filter(({ allowed }) => methodBy(choice, allowed) !== "none-needed")
      .map((entry) => ({ body, entry, method: methodBy(choice, entry.allowed) })),
  );
  const allowed = choice === "least-copper" || needed.some(({ entry }) => entry.allowed.includes(choice));
  return {
    method: choice,
    ...(allowed ? amounts(yard, group, copperBy(yard, choice)) : { copper: null, connections: null }),
    pieces: needed.map(({ body, entry, method }) => ({
      pool: body.id,
      surface: entry.piece.surface,
      area: entry.piece.area,
      method,
      existing: surfaceOf(yard, entry.piece)?.existing === true,
    })),
    allowed,
    chosen: yard.settings.perimeterMethod === choice,
    note: allowed
      ? noteOf(
          yard,
          choice,
          needed.map(({ entry }) => entry),
        )
      : notAllowed(choice, needed),
  };
}

function amounts(
  yard: Yard,
  group: Group,
  { ring, grids }: LaidCopper,
): { readonly copper: number; readonly connections: number } {
  const ids = new Set(group.map(({ id }) => id));
  const isOurs = ({ pools }: { readonly pools: readonly string[] }) => pools.some((id) => ids.has(id));
  const laid = laidRing(ring, yard.settings.ringStyle).loops.filter(isOurs);
  const links = (ring.links ?? []).filter(isOurs);
  const grid = grids.find((one) => one.group[0]?.id === group[0]?.id)?.grid;
  let copper = grid?.length ?? 0;
  let connections = (grid?.crossings ?? 0) + (grid?.loose ?? 0);
  for (const { length } of [...laid, ...links]) copper += length;
  for (const { path } of laid) connections += isClosed(path) ? 1 : 2;
  connections += 2 * links.length;
  return { copper, connections };
}

const LAID_WORDS: Readonly<Record<Method, string>> = {
  steel: "the steel in it",
  ring: "a ring",
  grid: "a grid",
  "none-needed": "nothing",
};

function notAllowed(choice: PerimeterChoice, needed: readonly { readonly method: Method }[]): string {
  return needed.every(({ method }) => method === "steel")
    ? "Bare steel lies all round, and that steel is the bonding."
    : `The edition in force allows ${choice === "grid" ? "a copper grid" : "a lone ring"} on none of these surfaces.`;
}

function noteOf(yard: Yard, choice: PerimeterChoice, needed: readonly PieceMethod[]): string {
  const name = (entry: PieceMethod) => {
    const surface = surfaceOf(yard, entry.piece);
    return surface ? elementName(surface) : "the ground that nothing covers";
  };
  const others = new Map<Method, Set<string>>();
  const broken = new Set<string>();
  for (const entry of needed) {
    const method = methodBy(choice, entry.allowed);
    if (choice !== "least-copper" && method !== choice)
      others.set(method, (others.get(method) ?? new Set()).add(name(entry)));
    if (method !== "steel" && surfaceOf(yard, entry.piece)?.existing === true) broken.add(name(entry));
  }
  const sentences = [...others].map(
    ([method, names]) =>
      `${capitalized([...names].join(", "))}: ${LAID_WORDS[method]}, as this method is not allowed there.`,
  );
  if (broken.size > 0) {
    const [first, ...more] = broken;
    const [is, it] = more.length === 0 ? ["is", "it"] : ["are", "them"];
    sentences.push(
      `${capitalized([first, ...more].join(", "))} ${is} there already: copper cannot be laid under ${it} without breaking ${it}.`,
    );
  }
  return sentences.join(" ");
}
