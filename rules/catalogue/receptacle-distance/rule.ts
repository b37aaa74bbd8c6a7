import type { Point, Route } from "../../../geometry/types.ts";
import { reaches } from "../../measures/compare.ts";
import type { Body, PathMeasure, Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import type { DeviceElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { worstOf } from "../across-bodies.ts";
import { cordPath, cordPathFrom, type Place, placeOf } from "../common/cord-path.ts";
import { ON_BARRIERS } from "../common/rests-on.ts";
import { storableOf } from "../common/storable.ts";
import { draftOf, settle, settledAs, speakerOf, subjectName, witnessLine, yesNo } from "../common/verdicts.ts";
import { everyEdition, type Rule, type Verdict } from "../rule.ts";

/** The section that says how the distance is measured moved between editions. Source: NEC 680.22(A)(5), 2020 on (A)(6). */
const MEASURED_BY = { "nec-2017": "680.22(A)(5)", "nec-2020": "680.22(A)(6)", "nec-2023": "680.22(A)(6)" } as const;

const ALSO_SECTIONS = {
  "nec-2017": [MEASURED_BY["nec-2017"]],
  "nec-2020": [MEASURED_BY["nec-2020"]],
  "nec-2023": [MEASURED_BY["nec-2023"]],
} as const;

export const rule: Rule = {
  id: "receptacle-distance",
  title: "Receptacles and the water",
  part: "receptacles",
  sections: everyEdition("680.22(A)(3)"),
  alsoSections: {
    "nec-2017": ["680.22(A)(2)", MEASURED_BY["nec-2017"], "680.34"],
    "nec-2020": ["680.22(A)(2)", MEASURED_BY["nec-2020"], "680.34"],
    "nec-2023": ["680.22(A)(2)", MEASURED_BY["nec-2023"], "680.34"],
  },
  subjects: "Each receptacle.",
  measure:
    "The way a cord would lie from the inside wall: round walls and buildings, not through doors or windows, through open passages, over low walls and fences.",
  parameters: ["receptacle.distance"],
  protects: "What is plugged in near the water falls into it, cord and all.",
  judge(yard) {
    return yard.each(rule.id, "device", (element): Verdict[] => {
      if (element.device !== "receptacle") return [];
      const worst = worstOf(yard.bodies, (body) => judgeAt(yard, body, element));
      return worst ? [worst] : [];
    });
  },
};

/** Whether it serves the equipment that moves the water. */
function servesCirculation(yard: Yard, element: DeviceElement): boolean {
  if (element.serves === undefined) return false;
  const serves = typeof element.serves === "string" ? [element.serves] : element.serves;
  return serves.some((entry) => {
    const served = yard.get(entry);
    if (served) return served.kind === "equipment" && yard.fact(served, "servesWater") !== false;
    return /circulat|sanit|\bpumps?\b|\bfilters?\b|\bheaters?\b|\bchlorinators?\b/i.test(entry);
  });
}

type Reach = ReturnType<typeof reaches>;

function judgeAt(yard: Yard, body: Body, element: DeviceElement): Verdict {
  const place = placeOf(yard, body, element);
  const from = (point: Point) => judgeFrom(yard, body, element, place, cordPathFrom(yard, body, element, point));
  if (place.face === null || place.back === null)
    return judgeFrom(yard, body, element, place, cordPath(yard, body, element, place));
  return judgeInWall(yard, body, element, place.inside ?? "", from(place.face), () => from(place.back ?? element.at));
}

/** A receptacle drawn inside a wall, judged on its face toward the water and on its back: which of them is it on? */
function judgeInWall(
  yard: Yard,
  body: Body,
  element: DeviceElement,
  wall: string,
  facing: Verdict,
  behind: () => Verdict,
): Verdict {
  const within = yard.get(wall);
  const wallName = within ? elementName(within) : wall;
  const question: Question = {
    id: "receptacle-wall-face",
    text: `Which face of ${wallName} is this receptacle on?`,
    options: ["toward the water", "away from it"],
    restsOn: ON_BARRIERS,
  };
  const { choice, trace, note } = settle(yard, question, element.id, body.id);
  if (choice === "toward the water") return { ...facing, ...trace, why: facing.why + note };
  const other = behind();
  if (choice === "away from it") return { ...other, ...trace, why: other.why + note };
  if (facing.outcome === other.outcome || facing.outcome === "review")
    return { ...facing, ...trace, why: facing.why + note };
  const unlike =
    other.outcome === "review"
      ? "Whether a cord would lie far enough hangs on the face that it is on."
      : "On one face of it a cord would lie too near to the water, on the other far enough.";
  return {
    ...facing,
    ...trace,
    outcome: "review",
    why: `${subjectName(element)} is drawn inside ${wallName}. ${unlike}${note}`,
    remedy: "Draw it on the face that it is on.",
    question,
  };
}

function judgeFrom(yard: Yard, body: Body, element: DeviceElement, place: Place, paths: PathMeasure): Verdict {
  const limit = yard.edition.value("receptacle.distance");
  const say = speakerOf(yard);
  const name = subjectName(element);
  const straight = yard.straight(element, body);
  const length = paths.counted?.length ?? null;
  const storable = storableOf(yard, body).is === "yes";
  const base = draftOf({
    element: element.id,
    body: body.id,
    measured: { horizontal: straight.length, path: length },
    required: { path: limit },
    margin: length === null ? null : length - limit,
    limits: rule.parameters,
    witness: paths.counted ? paths.counted.points : witnessLine(straight),
  });
  if (storable) {
    base.section = "680.34";
    base.basis = "memory";
  } else {
    base.alsoSections = ALSO_SECTIONS[yard.edition.id];
    if (servesCirculation(yard, element)) base.section = "680.22(A)(2)";
  }
  const far = (route: Route | null): Reach => (route === null ? "yes" : reaches(route.length, limit, yard.accuracy));
  const way =
    length === null
      ? "no way for a cord leads to the water"
      : `a cord would lie ${say.length(length, limit)} to the inside wall`;
  const near = () => `${name}: ${way}, nearer than ${say.length(limit)}.`;
  const move = () => `Move it so that a cord would lie at least ${say.length(limit)}.`;
  const onFace = place.kind === "face" && place.back === null && element.indoor === undefined;
  if (onFace) {
    const outside = far(paths.counted);
    if (outside !== "yes") return judgeOnFace(yard, body, element, base, place, near(), move());
  }
  const [low, middle, high] = [far(paths.surely), far(paths.counted), far(paths.atMost)];
  if (low === "yes" && middle === "yes") {
    const why =
      length === null
        ? `${name}: ${way} without passing a wall, a door or a window.`
        : `${name}: ${way}, at least ${say.length(limit)}.`;
    return settledAs(base, "meets", why);
  }
  if (middle === "no" && high === "no") return { ...base, outcome: "conflict", why: near(), remedy: move() };
  const facts = paths.openFacts.map((fact) => `${fact.field} of ${fact.element}`);
  const question: Question = yesNo(
    "cord-keeps-distance",
    `On site, would a cord lie at least ${say.length(limit)} from the inside wall to it?`,
    ON_BARRIERS,
  );
  const settled = settle(yard, question, element.id, body.id);
  if (settled.choice === "yes")
    return { ...base, ...settled.trace, outcome: "meets", why: `${name} keeps its distance.${settled.note}` };
  if (settled.choice === "no")
    return { ...base, ...settled.trace, outcome: "conflict", why: near() + settled.note, remedy: move() };
  const doubt =
    facts.length > 0
      ? `${name}: ${way}, but that hangs on what is not given: ${facts.join(", ")}.`
      : `${name}: ${way}, as near to the limit of ${say.length(limit)} as the drawing may be off.`;
  const remedy = facts.length > 0 ? `Give the ${facts.join(", the ")}.` : "Measure it on site.";
  return { ...base, ...settled.trace, outcome: "review", why: doubt + settled.note, remedy, question };
}

/** A receptacle drawn just inside a building, with the outer face too near: is it outside? */
function judgeOnFace(
  yard: Yard,
  body: Body,
  element: DeviceElement,
  base: Verdict,
  place: Place,
  near: string,
  move: string,
): Verdict {
  const question: Question = {
    id: "receptacle-outside-face",
    text: "Which side of the wall is this receptacle on?",
    options: ["outdoors", "indoors"],
    restsOn: ON_BARRIERS,
  };
  const settled = settle(yard, question, element.id, body.id);
  const name = subjectName(element);
  if (settled.choice === "outdoors")
    return { ...base, ...settled.trace, outcome: "conflict", why: near + settled.note, remedy: move };
  const shut = { ...base, measured: { ...base.measured, path: null }, margin: null };
  if (settled.choice === "indoors") {
    return {
      ...shut,
      ...settled.trace,
      outcome: "meets",
      why: `${name} is inside ${place.inside}: no way for a cord leads to the water.${settled.note}`,
    };
  }
  const why = `${name} is drawn just inside ${place.inside}. Indoors no cord leads to the water; on the outer face it would hang too near.${settled.note}`;
  return {
    ...base,
    ...settled.trace,
    outcome: "review",
    why,
    remedy: "Say whether it is indoors or on the outer face.",
    question,
  };
}
