/**
 * The exception of outdoor spas from perimeter bonding: every condition with what the site says of it.
 * Source: NEC 680.42(B), restated.
 */
import { differenceRegions, offsetRegion } from "../../../geometry/clipping.ts";
import { FLATTEN_TOLERANCE } from "../../../geometry/tolerances.ts";
import { reaches } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import { ON_SURFACES } from "./rests-on.ts";
import { type Settled, settle, speakerOf, yesNo } from "./verdicts.ts";

export interface SpaCondition {
  readonly state: "yes" | "no" | "open";
  /** The condition as it stands, a sentence without its full stop. */
  readonly says: string;
  readonly question: Question;
  readonly settled: Settled;
}

export interface SpaException {
  /** `not-asked`: no spa, or one that the exception cannot mean. */
  readonly state: "holds" | "fails" | "open" | "not-asked" | "indoor";
  readonly conditions: readonly SpaCondition[];
  /** Least height of the rim above the surfaces near the spa; null when a level or the rim is not given. */
  readonly rimAbove: number | null;
  /** The condition that decides: the first that fails, or the first that is open. */
  readonly deciding: SpaCondition | null;
}

const INDOOR_QUESTION = yesNo(
  "spa-indoor",
  "Is this indoor spa listed and installed so that no perimeter bonding is asked of it?",
);

export function spaException(yard: Yard, body: Body): SpaException {
  return yard.kept(`spa exception ${body.id}`, () => exceptionOf(yard, body));
}

function exceptionOf(yard: Yard, body: Body): SpaException {
  const { element } = body;
  const none = { conditions: [], rimAbove: null, deciding: null };
  if (element.body !== "spa" || yard.edition.value("shell.conductive").includes(element.shell)) {
    return { state: "not-asked", ...none };
  }
  const condition = (state: SpaCondition["state"], says: string, question: Question): SpaCondition => {
    const settled = state === "open" ? settle(yard, question, body.id, body.id) : UNASKED;
    if (settled.choice === "yes") return { state: "yes", says, question, settled };
    if (settled.choice === "no") return { state: "no", says, question, settled };
    return { state, says, question, settled };
  };
  if (element.installation === "indoor") {
    const indoor = condition("open", "an indoor spa falls under another section", INDOOR_QUESTION);
    const state = indoor.state === "open" ? "indoor" : indoor.state === "yes" ? "holds" : "fails";
    return { state, conditions: [indoor], rimAbove: null, deciding: indoor };
  }
  const known = (value: boolean | undefined, wanted: boolean) =>
    value === undefined ? "open" : value === wanted ? "yes" : "no";
  const onGround = element.installation === undefined ? "open" : element.installation === "on-ground" ? "yes" : "no";
  const rim = rimHeight(yard, body);
  const conditions = [
    condition(
      known(element.listedSelfContained, true),
      "it has to be listed as a self-contained unit for use above ground",
      yesNo("spa-listed", "Is the spa listed as a self-contained unit for aboveground use?"),
    ),
    condition(
      known(element.indoorOnly, false),
      "it may not be listed for indoor use only",
      yesNo("spa-outdoor-use", "May the spa be used outdoors, so not listed for indoor use only?"),
    ),
    condition(
      onGround,
      "it has to stand on or above the ground, installed as its maker instructs",
      yesNo("spa-on-ground", "Does the spa stand on or above the ground, installed as its maker instructs?"),
    ),
    condition(rim.state, rim.says, rim.question),
  ];
  const deciding = conditions.find((c) => c.state === "no") ?? conditions.find((c) => c.state === "open") ?? null;
  const state = deciding === null ? "holds" : deciding.state === "no" ? "fails" : "open";
  return { state, conditions, rimAbove: rim.above, deciding };
}

const UNASKED: Settled = { choice: null, trace: {}, note: "" };

interface RimHeight {
  readonly state: SpaCondition["state"];
  readonly above: number | null;
  readonly says: string;
  readonly question: Question;
}

/** The rim above the highest surface near the spa. A surface without a level leaves it open. */
function rimHeight(yard: Yard, body: Body): RimHeight {
  const needed = yard.edition.value("spa.rimAbove");
  const within = yard.edition.value("spa.rimWithin");
  const say = speakerOf(yard);
  const rule = `its rim has to stand at least ${say.length(needed)} above every surface within ${say.length(within)} of it`;
  const question = yesNo(
    "spa-rim",
    `Does the rim stand at least ${say.length(needed)} above every surface within ${say.length(within)} of the spa?`,
    ON_SURFACES,
  );
  const { rim } = body.element;
  const near = differenceRegions(offsetRegion(body.region, within + FLATTEN_TOLERANCE), body.region);
  const levels = yard.piecesOf(near).map(({ surface }) => {
    const element = yard.surfaces.find((model) => model.element.id === surface)?.element;
    return element === undefined ? yard.grade : element.level;
  });
  const given = levels.filter((level) => level !== undefined);
  if (rim === undefined || given.length === 0)
    return { state: "open", above: null, says: `${rule}, and the drawing does not give it`, question };
  const above = rim - Math.max(...given);
  const says = `${rule}; it stands ${say.length(above, needed)} above`;
  const enough = reaches(above, needed, yard.accuracy);
  if (enough === "no") return { state: "no", above, says, question };
  if (given.length < levels.length)
    return { state: "open", above: null, says: `${rule}, and the drawing gives no level for all of them`, question };
  return { state: enough === "yes" ? "yes" : "open", above, says, question };
}
