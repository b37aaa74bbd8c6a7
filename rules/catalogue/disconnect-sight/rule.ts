import { distanceBetween } from "../../../geometry/points.ts";
import type { Yard } from "../../measures/yard.ts";
import type { Measured } from "../../report.ts";
import type { DeviceElement, EquipmentElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { clearanceVerdict } from "../common/clearance-verdict.ts";
import { isElectric } from "../common/electric.ts";
import { ON_BARRIERS, ON_DEVICES, restsOnBoth } from "../common/rests-on.ts";
import { servedBy } from "../common/serves.ts";
import { all, atMost, open, type Truth } from "../common/truth.ts";
import { BARE, speakerOf, subjectName } from "../common/verdicts.ts";
import { hiddenBy, inView, isCrossed } from "../common/within-sight.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

export const rule: Rule = {
  id: "disconnect-sight",
  title: "A disconnect within sight",
  part: "disconnect",
  sections: everyEdition("680.13"),
  subjects: "Electric equipment of the water, save controllers.",
  measure:
    "Whether a disconnect that serves it is in view of it on the plan, past buildings and walls as high as a person, and near enough.",
  parameters: ["disconnect.sight", "disconnect.personHeight"],
  protects: "Whoever works on a pump sees the switch that keeps it off, and nobody turns it on behind a wall.",
  judge: (yard) => yard.each(rule.id, "equipment", (element) => judgeUnit(yard, element)),
};

interface Seen {
  readonly disconnect: DeviceElement;
  readonly distance: number;
  readonly truth: Truth;
}

/** With nothing in between, how high a person is decides nothing. */
const NEAR_ONLY = ["disconnect.sight"] as const;

const BEST_FIRST = ["yes", "open", "no"];

function judgeUnit(yard: Yard, element: EquipmentElement): Verdict[] {
  const body = yard.nearestBody(element);
  if (body === null || element.unit === "controller") return [];
  const name = subjectName(element);
  const say = speakerOf(yard);
  const limit = yard.edition.value("disconnect.sight");
  const base = { ...BARE, element: element.id, body: body.id };
  if (yard.fact(element, "servesWater") === false)
    return [{ ...base, outcome: "exempt", why: `${name} does not serve the pool.` }];
  const electric = isElectric(element);
  if (electric.state === "no") return [{ ...base, outcome: "exempt", why: `${name} is not electric.` }];
  const { byServed, unnamed } = disconnectsOf(yard);
  const named = byServed.get(element.id) ?? [];
  const seen = (named.length > 0 ? named : unnamed)
    .map((disconnect): Seen => {
      const distance = distanceBetween(disconnect.at, element.at);
      const near = atMost(yard, distance, limit, "the distance to it");
      const truth = named.length === 0 ? open(UNNAMED) : all(near, inView(yard, element.at, disconnect.at));
      return { disconnect, distance, truth };
    })
    .sort(
      (a, b) => BEST_FIRST.indexOf(a.truth.state) - BEST_FIRST.indexOf(b.truth.state) || a.distance - b.distance,
    )[0];
  const truth = withElectric(seen?.truth ?? open(UNNAMED), electric);
  const hider = seen ? hiddenBy(yard, element.at, seen.disconnect.at) : null;
  const measured: Measured = seen ? { sight: seen.distance } : {};
  const about = {
    ...base,
    measured,
    required: { sight: limit },
    margin: seen ? limit - seen.distance : null,
    witness: seen ? [element.at, seen.disconnect.at] : [],
    limits: named.length > 0 && seen && isCrossed(yard, element.at, seen.disconnect.at) ? rule.parameters : NEAR_ONLY,
  };
  const its = seen === undefined ? "" : ` The nearest is ${elementName(seen.disconnect)}.`;
  const is =
    named.length > 0 && seen
      ? `${name} is ${say.length(seen.distance, limit)} from ${elementName(seen.disconnect)}, which serves it`
      : `${name} needs a disconnect within sight, and no disconnect says that it serves it`;
  const verdict = clearanceVerdict(yard, about, truth, {
    question: "disconnect-within-sight",
    restsOn: restsOnBoth(ON_BARRIERS, ON_DEVICES),
    is,
    wanted: `a disconnect that serves it is in view of it, at most ${say.length(limit)} away`,
    breaks: `${hider === null ? "" : `${hider} hides it, and `}one is asked for in view of it, at most ${say.length(limit)} away`,
    remedy: `Set a disconnect for it in view of it, at most ${say.length(limit)} away.`,
  });
  return [named.length > 0 ? verdict : { ...verdict, why: `${verdict.why}${its}` }];
}

/** The disconnects by what they say that they serve, and those that say nothing. */
function disconnectsOf(yard: Yard): {
  readonly byServed: ReadonlyMap<string, readonly DeviceElement[]>;
  readonly unnamed: readonly DeviceElement[];
} {
  return yard.kept("disconnects", () => {
    const byServed = new Map<string, DeviceElement[]>();
    const unnamed: DeviceElement[] = [];
    for (const disconnect of yard.all("device")) {
      if (disconnect.device !== "disconnect") continue;
      const serves = servedBy(disconnect);
      if (serves === undefined) unnamed.push(disconnect);
      for (const id of serves ?? []) byServed.set(id, [...(byServed.get(id) ?? []), disconnect]);
    }
    return { byServed, unnamed };
  });
}

const UNNAMED = {
  says: "Which one does, and whether there is one, is not drawn (`serves` of a disconnect).",
  asks: "Is there a disconnect for it in plain view, near enough (`serves`)?",
  remedy: "Draw the disconnect, or name the equipment in its `serves`",
};

/** A thing of which nobody says whether it is electric passes only where it would in either case. */
function withElectric(truth: Truth, electric: Truth): Truth {
  return electric.state === "open" && truth.state === "no" ? electric : truth;
}
