/** Whether each kind of need is met by what is recorded, in words. */
import { distanceBetween } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import { ON_COPPER, ON_PERIMETER } from "../catalogue/common/rests-on.ts";
import { type Settled, settle, speakerOf, yesNo } from "../catalogue/common/verdicts.ts";
import type { Need, Verdict } from "../catalogue/rule.ts";
import type { Yard } from "../measures/yard.ts";
import type { Question } from "../report.ts";
import type { KnownElement } from "../site/elements.ts";
import { elementName } from "../words/element-names.ts";
import { bearing, shellGrids } from "./bearers.ts";
import type { Reach, Recorded } from "./graph.ts";
import { perimeterLoops } from "./loop-course.ts";
import { type Gap, type PerimeterCheck, perimeterComplete } from "./perimeter-complete.ts";
import { leastOf, mostOf, type Standing } from "./standing.ts";
import { wireOf } from "./wire.ts";

export interface Met {
  readonly state: "yes" | "no" | "doubtful";
  /** One or two sentences to add to the finding's why. */
  readonly says: string;
  /** In place of the finding's own remedy. */
  readonly remedy?: string;
  readonly question?: Question;
  readonly trace?: Settled["trace"];
  /** Of perimeter bonding: what is open, inches of the loop. */
  readonly gap?: number;
}

const CONNECTION_QUESTION = yesNo(
  "recorded-connection",
  "Looked at on site, do the recorded connections join this to the bonding network as the code wants?",
  ON_COPPER,
);

const PERIMETER_QUESTION = yesNo(
  "recorded-perimeter",
  "Looked at on site, is the recorded perimeter bonding here complete, in its place and joined all along?",
  ON_PERIMETER,
);

/** A doubtful state, settled by the site's answer where there is one. */
function doubtful(
  yard: Yard,
  question: Question,
  verdict: Pick<Verdict, "element" | "body">,
  met: Omit<Met, "state">,
): Met {
  const { choice, trace, note } = settle(yard, question, verdict.element, verdict.body);
  const state = choice === "yes" ? "yes" : choice === "no" ? "no" : "doubtful";
  return { ...met, state, says: met.says + note, question, trace };
}

/** Met only if what is open about the need itself is answered with yes too; the first that is not decides. */
export function onlyIfSo(yard: Yard, verdict: Verdict, need: Need, met: Met): Met {
  let held = met;
  for (const { question, says, remedy } of need.onlyIf ?? []) {
    if (held.state !== "yes") break;
    const asked = doubtful(yard, question, verdict, { says: `${held.says} That is enough only if ${says}.`, remedy });
    held = { ...held, ...asked, trace: { ...held.trace, ...asked.trace } };
  }
  return held;
}

function names(yard: Yard, ids: readonly string[]): string {
  const words = ids.map((id) => {
    const element = yard.get(id);
    return element ? elementName(element) : id;
  });
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

/** A part: joined to the network by as many ties as it needs. */
export function partMet(yard: Yard, verdict: Verdict, need: Need, recorded: Recorded): Met {
  const id = need.elements[0];
  if (id === undefined) return { state: "no", says: "It names no element that could be reached." };
  return reachMet(yard, verdict, recorded.reached(id, need.connections), need.connections);
}

function reachMet(yard: Yard, verdict: Verdict, reach: Reach, connections: number): Met {
  if (reach.reached) return { state: "yes", says: `Reached by ${names(yard, reach.ties)}.` };
  if (reach.doubtful) {
    const says = `Reached by ${names(yard, reach.ties)}, but only if what is not given about ${names(yard, reach.doubts)} turns out well.`;
    const remedy = `Record what is open about ${names(yard, reach.doubts)}.`;
    return doubtful(yard, CONNECTION_QUESTION, verdict, { says, remedy });
  }
  if (reach.ties.length > 0) {
    const says = `Only ${reach.ties.length} of ${connections} connections ${reach.ties.length === 1 ? "is" : "are"} recorded (${names(yard, reach.ties)}).`;
    return { state: "no", says };
  }
  return { state: "no", says: "No recorded connection reaches it." };
}

/** A tail at a double-insulated motor: a recorded tail in the network that ends near it, or a tie at the motor. */
export function tailMet(yard: Yard, verdict: Verdict, need: Need, recorded: Recorded): Met {
  const within = yard.edition.value("equipment.tailLength");
  const tails = yard.all("conductor").filter((conductor) => {
    if (conductor.role !== "tail") return false;
    const { vertices } = conductor.path;
    const ends = [vertices[0], vertices[vertices.length - 1]].flatMap((v): Point[] => (v ? [[v[0], v[1]]] : []));
    return ends.some((end) => need.at.some((at) => distanceBetween(end, at) <= within));
  });
  const standings = tails.map((tail): Standing => {
    const wire = wireOf(yard, tail).standing;
    const network = recorded.inNetwork(tail.id);
    if (wire === "no" || network === "no") return "no";
    return wire === "sure" && network === "sure" ? "sure" : "doubtful";
  });
  const best = mostOf(standings);
  const ids = tails.filter((_, i) => standings[i] === best).map(({ id }) => id);
  if (best === "sure") return { state: "yes", says: `${capital(names(yard, ids))} lies ready there.` };
  if (best === "doubtful") {
    const says = `${capital(names(yard, ids))} lies there, but not everything about it or its connections is given.`;
    return doubtful(yard, CONNECTION_QUESTION, verdict, {
      says,
      remedy: `Record what is open about ${names(yard, ids)}.`,
    });
  }
  if (tails.length > 0)
    return {
      state: "no",
      says: `${capital(
        names(
          yard,
          tails.map(({ id }) => id),
        ),
      )} lies there, but it is not joined to the bonding network by sound copper.`,
    };
  return partMet(yard, verdict, need, recorded);
}

/** Water: one of the contacts is in the network; of contacts that only count together, all of them. */
export function waterMet(yard: Yard, verdict: Verdict, need: Need, recorded: Recorded): Met {
  const reaches = need.elements.map((id) => ({ id, reach: contactReach(yard, id, recorded) }));
  if (need.connections > 1) {
    const apart = reaches.filter(({ reach }) => !reach.reached && !reach.doubtful).map(({ id }) => id);
    if (apart.length > 0) {
      const says = `They count together only once all are bonded, and no recorded connection reaches ${names(yard, apart)}.`;
      return { state: "no", says };
    }
    const ties = reaches.flatMap(({ reach }) => reach.ties);
    const doubts = reaches.flatMap(({ reach }) => reach.doubts);
    const whole = { reached: reaches.every(({ reach }) => reach.reached), doubtful: true, ties, doubts };
    return reachMet(yard, verdict, whole, 1);
  }
  const sure = reaches.find(({ reach }) => reach.reached);
  if (sure)
    return {
      state: "yes",
      says: `${capital(names(yard, [sure.id]))} touches the water and is reached by ${names(yard, sure.reach.ties)}.`,
    };
  const maybe = reaches.find(({ reach }) => reach.doubtful);
  if (maybe) return reachMet(yard, verdict, maybe.reach, 1);
  return { state: "no", says: "No recorded connection reaches anything that touches the water." };
}

/**
 * A tie that names a shell, or the grid recorded in it, reaches its water only where that is something bonded: bare steel,
 * or a grid of copper that serves.
 */
function contactReach(yard: Yard, id: string, recorded: Recorded): Reach {
  const element = yard.get(id);
  if (element?.kind !== "pool") return recorded.reached(id, 1);
  const reaches = [element, ...shellGrids(yard, id)].map((end) => shellReach(yard, end, recorded));
  return reaches.find(({ reached }) => reached) ?? reaches.find(({ doubtful }) => doubtful) ?? (reaches[0] as Reach);
}

function shellReach(yard: Yard, element: KnownElement, recorded: Recorded): Reach {
  const { id } = element;
  const reach = recorded.reached(id, 1);
  if (!reach.reached && !reach.doubtful) return reach;
  const holds = bearing(yard, element);
  if (holds === "sure") return reach;
  if (holds === "no") return { reached: false, doubtful: false, ties: [], doubts: [] };
  return { reached: false, doubtful: true, ties: reach.ties, doubts: [...new Set([id, ...reach.doubts])] };
}

/** A shell's grid: recorded in the shell, of sound copper, and tied to something else. */
export function shellGridMet(yard: Yard, verdict: Verdict, need: Need, recorded: Recorded): Met {
  const pool = need.elements[0];
  const grids = pool === undefined ? [] : shellGrids(yard, pool);
  if (pool === undefined || grids.length === 0) return { state: "no", says: "No grid is recorded in this shell." };
  const wire = mostOf(
    grids.map((grid) => {
      const { standing, bare } = wireOf(yard, grid);
      return leastOf([standing, bare]);
    }),
  );
  const tied = mostOf([pool, ...grids.map(({ id }) => id)].map((id) => recorded.tied(id)));
  const ids = grids.map(({ id }) => id);
  if (wire === "no")
    return { state: "no", says: `${capital(names(yard, ids))} lies in the shell, but its copper does not serve.` };
  if (tied === "no")
    return {
      state: "no",
      says: `${capital(names(yard, ids))} lies in the shell, but no recorded tie joins it to the rest.`,
      remedy: "Tie the shell's grid to the perimeter bonding.",
    };
  if (wire === "sure" && tied === "sure")
    return { state: "yes", says: `${capital(names(yard, ids))} lies in the shell and is tied.` };
  const says = `${capital(names(yard, ids))} lies in the shell, but not everything about it or its ties is given.`;
  return doubtful(yard, CONNECTION_QUESTION, verdict, {
    says,
    remedy: `Record what is open about ${names(yard, ids)} and its ties.`,
  });
}

/** Perimeter bonding under one surface of a body: complete as recorded wherever a loop passes it. */
export function perimeterMet(yard: Yard, verdict: Verdict, recorded: Recorded): Met {
  const { body, element } = verdict;
  if (body === null) return { state: "no", says: "It names no body of water." };
  const passed = perimeterLoops(yard).some(({ course }) =>
    course.some((stretch) => stretch.body === body && stretch.entry.piece.surface === element),
  );
  // A surface that no loop passes lies beside the perimeter bonding: it is served where that is complete.
  const check: PerimeterCheck = passed
    ? perimeterComplete(yard, body, recorded, element)
    : perimeterComplete(yard, body, recorded);
  if (check.complete === "sure") return { state: "yes", says: "The perimeter bonding recorded here is complete." };
  const gap = check.gaps.reduce((sum, { length }) => sum + length, 0);
  if (check.complete === "no")
    return {
      state: "no",
      says: `The perimeter bonding recorded here is not complete: ${gapsText(yard, check.gaps)}.`,
      gap,
    };
  const says = `The perimeter bonding recorded here is complete only if what is not given about it turns out well${check.gaps.length > 0 ? ` (${gapsText(yard, check.gaps)} in doubt)` : ""}.`;
  return {
    ...doubtful(yard, PERIMETER_QUESTION, verdict, {
      says,
      remedy: "Record what is open about the perimeter copper, steel and ties.",
    }),
    gap,
  };
}

/** How many gaps are told one by one. */
const TOLD = 3;

function gapsText(yard: Yard, gaps: readonly Gap[]): string {
  const { length } = speakerOf(yard);
  const texts = gaps.slice(0, TOLD).map((gap) => {
    const where = `at x ${length(gap.at[0])}, y ${length(gap.at[1])}`;
    return gap.length === 0 ? `not joined ${where}` : `${length(gap.length)} open ${where}`;
  });
  const more = gaps.length - texts.length;
  return `${texts.join("; ")}${more > 0 ? `; and ${more} more` : ""}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
