/** One run of the takeoff led to the eye: its pieces once more, over the veil that pushes all else back. */
import type { ConductorElement } from "../../rules/site/elements.ts";
import { copperText } from "../../rules/words/lengths.ts";
import { type Drafting, isKnown } from "./drafting.ts";
import type { Item, LayerName } from "./scene.ts";

/** The runs of the takeoff that have pieces on the plan. */
export type TakeoffRun = "ring" | "grid" | "ties" | "branches" | "drops" | "tails";

const LAYER_OF: Partial<Readonly<Record<TakeoffRun, LayerName>>> = {
  ring: "ring",
  grid: "grid",
  ties: "ties",
  branches: "branches",
};

const RECORDED_AS: Partial<Readonly<Record<TakeoffRun, ConductorElement["role"]>>> = {
  ring: "ring",
  grid: "grid",
  branches: "branch",
  tails: "tail",
};

/** The rule whose findings name the motors at which a tail is left. */
const TAIL_RULE = "double-insulated-tail";

/** Draws the pieces of a run into the focus layer: proposed and recorded ones; drops and tails as marks where they rise. */
export function drawHighlight(run: TakeoffRun, drafting: Drafting): void {
  const layer = LAYER_OF[run];
  const items: Item[] = layer === undefined ? [] : drafting.itemsOf(layer).filter((item) => !isOtherConnection(item));
  const role = RECORDED_AS[run];
  for (const item of drafting.itemsOf("recorded")) {
    const element = drafting.byId.get(item.element ?? "");
    if (element && isKnown(element) && element.kind === "conductor" && element.role === role) items.push(item);
  }
  if (run === "drops") items.push(...dropItems(drafting));
  if (run === "tails") items.push(...tailItems(drafting));
  for (const item of items) drafting.add("focus", item);
}

/** A connection that is no tie to the shell stands on the layer of the ties as well. */
function isOtherConnection(item: Item): boolean {
  return item.kind === "symbol" && item.symbol === "connection";
}

function dropItems(drafting: Drafting): Item[] {
  return drafting.report.branches.flatMap(({ path, drop, to }): Item[] => {
    const at = path[path.length - 1];
    if (!at || drop === 0) return [];
    return [
      { kind: "symbol", symbol: "connection", at, turn: 0, role: "copper-symbol", element: to },
      {
        kind: "text",
        at: [at[0] + drafting.inches(6), at[1] + drafting.inches(4)],
        text: copperText(drop, drafting.units),
        size: "body",
        role: "copper",
        anchor: "start",
        turn: 0,
        strong: true,
        plate: true,
        element: to,
      },
    ];
  });
}

function tailItems(drafting: Drafting): Item[] {
  const motors = new Set(
    drafting.report.findings
      .filter(({ rule, outcome }) => rule === TAIL_RULE && outcome !== "exempt")
      .map(({ element }) => element),
  );
  return drafting.site.elements.flatMap((element): Item[] =>
    motors.has(element.id) && isKnown(element) && element.kind === "equipment"
      ? [{ kind: "symbol", symbol: "connection", at: element.at, turn: 0, role: "copper-symbol", element: element.id }]
      : [],
  );
}
