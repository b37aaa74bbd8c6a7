/**
 * What may put bonded metal in a body's water, each as sure as the site says.
 *
 * Terms. `sure`: counts as soon as it is bonded. `small`: sure in everything but its surface, which may count together
 * with others. `open`: one fact is missing or argued. `no`: does not count.
 * Source: NEC 680.26(C), restated.
 */
import type { Point } from "../../../geometry/types.ts";
import { reaches } from "../../measures/compare.ts";
import type { Body, Yard } from "../../measures/yard.ts";
import type { Question } from "../../report.ts";
import type { KnownElement, LightElement, MetalElement, WaterBondElement } from "../../site/elements.ts";
import { elementName } from "../../words/element-names.ts";
import { isLadder, isLadderOrRail, metalKind } from "../common/metal-kind.ts";
import { poolDoubt, SET_BACK, standsElsewhere } from "../common/named-pool.ts";
import { heightRange } from "../common/needs.ts";
import { ofTheWater } from "../common/rests-on.ts";
import { shellFacts } from "../common/shell-facts.ts";
import { bodyOf } from "../common/storable.ts";
import { type Settled, settle, subjectName, yesNo } from "../common/verdicts.ts";
import { exposedSurface } from "./exposed-surface.ts";

export interface Contact {
  readonly element: KnownElement;
  readonly state: "sure" | "small" | "open" | "no";
  /** Surface that stays in the water, square inches; null: not measured (a shell, a light). */
  readonly area: number | null;
  readonly at: Point;
  /** A sentence on what it is or lacks. */
  readonly says: string;
  readonly question?: Question;
  readonly settled?: Settled;
}

/** Every candidate of one body: its shell, lights, fittings, and the contacts drawn for it. */
export function contactsOf(yard: Yard, body: Body): readonly Contact[] {
  return yard.kept(`contacts ${body.id}`, () => [
    ...shellContact(yard, body),
    ...yard.all("underwater-light").flatMap((light): Contact[] => {
      if (light.formingShell !== "metal" || bodyOf(yard, light)?.id !== body.id) return [];
      if (standsElsewhere(yard, light, body)) return [];
      const says = `The metal forming shell of ${elementName(light)} stands in the water.`;
      const open = poolContact(yard, light);
      if (open !== null) return [open];
      return [{ element: light, state: "sure", area: null, at: light.at, says }];
    }),
    ...yard.each(`contacts of ${body.id}`, "metal", (metal) => metalContact(yard, body, metal)),
    ...yard.all("water-bond").flatMap((fitting): Contact[] => {
      const here = bodyOf(yard, fitting)?.id === body.id && !standsElsewhere(yard, fitting, body);
      return here ? [waterBondContact(yard, body, fitting)] : [];
    }),
  ]);
}

/** A contact of which it is open whose water it is in; null where nothing is. */
function poolContact(yard: Yard, element: LightElement | WaterBondElement | MetalElement): Contact | null {
  const doubt = poolDoubt(yard, element);
  if (doubt === null || doubt.settled.choice === "yes") return null;
  const { body, question, settled, says } = doubt;
  const at = yard.straight(element, body).to;
  return { element, state: "open", area: null, at, says: says + settled.note, question, settled };
}

/** The same question asked of the body's water, where several contacts may raise it. */
export function askedOfWater(question: Question, contact: Contact, body: Body): Question {
  return contact.element.id === body.id ? question : ofTheWater(question, contact.element.id);
}

/** What the site answers about one contact: on the contact itself, or on the water with the contact named. */
function asked(yard: Yard, body: Body, element: KnownElement, question: Question): Settled {
  const own = settle(yard, question, element.id, body.id);
  if (own.choice !== null || element.id === body.id) return own;
  const ofWater = settle(yard, ofTheWater(question, element.id), null, body.id);
  return ofWater.note === "" ? own : ofWater;
}

function shellContact(yard: Yard, body: Body): Contact[] {
  const facts = shellFacts(yard, body);
  const metal = facts.class === "frame" && body.element.shell === "metal";
  if (facts.class !== "conductive" && facts.class !== "open" && !metal) return [];
  const { finish } = body.element;
  const at = body.water.outer.edges[0]?.from ?? [0, 0];
  const base = { element: body.element, area: null, at };
  const plain = elementName(body.element);
  if (facts.class === "open") {
    const says = `What the shell of ${plain} is made of is not given, so whether it conducts and touches the water is open.`;
    return [{ ...base, state: "open", says, ...(facts.question ? { question: facts.question } : {}) }];
  }
  if (facts.steel === "unknown") {
    return [
      {
        ...base,
        state: "open",
        says: `The shell of ${plain} conducts, but its steel is not given, so whether it is bonded is open.`,
        ...(facts.question ? { question: facts.question } : {}),
      },
    ];
  }
  const doubtful = metal || finish === undefined || yard.edition.value("water.doubtfulFinishes").includes(finish);
  if (!doubtful) return [{ ...base, state: "sure", says: `The bonded shell of ${plain} touches the water.` }];
  const question = yesNo(
    "shell-touches-water",
    "Does the shell touch the water, or conduct to it through its finish as plaster does?",
  );
  const settled = asked(yard, body, body.element, question);
  if (settled.choice === "yes")
    return [
      {
        ...base,
        state: "sure",
        says: `The bonded shell of ${plain} touches the water through its finish.${settled.note}`,
        settled,
      },
    ];
  if (settled.choice === "no")
    return [
      { ...base, state: "no", says: `The finish of ${plain} keeps its shell from the water.${settled.note}`, settled },
    ];
  const says = metal
    ? `The shell of ${plain} is metal, but a liner or a coating may keep it from the water.`
    : finish === undefined
      ? `The shell of ${plain} conducts and is bonded, but its finish is not given, and some finishes keep it from the water.`
      : `The shell of ${plain} conducts and is bonded, but under ${finish} it may not touch the water.`;
  return [{ ...base, state: "open", says: says + settled.note, question, settled }];
}

function metalContact(yard: Yard, body: Body, metal: MetalElement): Contact[] {
  const kind = metalKind(yard, metal);
  // Fixed metal counts where the drawing gives what of it stays in the water; what is not fixed counts never.
  const apart = kind === "fixed" && (metal.wettedArea === undefined || yard.fact(metal, "fixed") === false);
  if (apart || bodyOf(yard, metal)?.id !== body.id || standsElsewhere(yard, metal, body)) return [];
  const straight = yard.straight(metal, body);
  const range = heightRange(metal.z);
  const below = range !== null && range.bottom < body.waterLevel;
  // A ladder is drawn at its cups on the deck as often as in the water.
  const byTheWall = isLadder(metal.part) && straight.length <= SET_BACK;
  const inWater = kind === "fitting" && (straight.length === 0 || byTheWall) && (range === null || below);
  if (metal.wettedArea === undefined && !inWater) return [];
  const name = subjectName(metal);
  const area = metal.wettedArea ?? null;
  const base = { element: metal, area, at: straight.to };
  if (area === 0) return [{ ...base, state: "no", says: `${name} leaves no surface in the water.` }];
  const elsewhere = poolContact(yard, metal);
  if (elsewhere !== null) return [elsewhere];
  let answered: Settled | undefined;
  const comesOut = metal.part === undefined || isLadderOrRail(metal.part);
  if (metal.removable === true || (metal.removable === undefined && comesOut)) {
    const question = yesNo("ladder-stays", "Does it stay in the water all the time the pool is in use?");
    const settled = asked(yard, body, metal, question);
    if (settled.choice === "no") {
      return [{ ...base, state: "no", says: `${name} is taken out of the water.${settled.note}`, settled }];
    }
    if (settled.choice === null) {
      const doubt = metal.removable === true ? "it can be taken out" : "whether it can be taken out is not given";
      const says = `${name} stands in the water, but ${doubt}.${settled.note}`;
      return [{ ...base, state: "open", says, question, settled }];
    }
    answered = settled;
  }
  if (A_PIPE.test(metal.part ?? "")) {
    const settled = asked(yard, body, metal, STAYS_WET_QUESTION);
    if (settled.choice === "no") {
      return [{ ...base, state: "no", says: `${name} does not stay full of water.${settled.note}`, settled }];
    }
    if (settled.choice === null) {
      const says = `${name} holds water, but a pipe may drain when the pump is off.${settled.note}`;
      return [{ ...base, state: "open", says, question: STAYS_WET_QUESTION, settled }];
    }
    answered = settled;
  }
  return [
    sizedContact(
      yard,
      body,
      { ...base, ...said(answered) },
      name,
      isLadderOrRail(metal.part) && (below || (isLadder(metal.part) && straight.length === 0)),
    ),
  ];
}

const A_PIPE = /pip(e|ing)|plumbing/i;

const STAYS_WET_QUESTION = yesNo("contact-stays-wet", "Does it stay in the water at all times, with the pump off too?");

/** The last answer that a contact rests on. */
function said(settled: Settled | undefined): { settled?: Settled } {
  return settled === undefined ? {} : { settled };
}

/** Holds the surface that stays in the water against what the code asks. */
function sizedContact(
  yard: Yard,
  body: Body,
  base: Pick<Contact, "element" | "area" | "at" | "settled">,
  name: string,
  large: boolean,
): Contact {
  const needed = yard.edition.value("water.area");
  const { area } = base;
  if (area === null && large) return { ...base, state: "sure", says: `${name} stands in the water.` };
  if (area === null) {
    const question = yesNo(
      "wetted-area",
      `Does it keep at least ${needed} sq in. of bare metal in the water at all times?`,
    );
    const settled = asked(yard, body, base.element, question);
    if (settled.choice === "yes")
      return { ...base, state: "sure", says: `${name} keeps enough bare metal in the water.${settled.note}`, settled };
    if (settled.choice === "no")
      return {
        ...base,
        state: "no",
        says: `${name} keeps too little bare metal in the water.${settled.note}`,
        settled,
      };
    return {
      ...base,
      state: "open",
      says: `${name} is in the water, but how much of its surface stays there is not given.${settled.note}`,
      question,
      settled,
    };
  }
  const shown = `${Number(area.toFixed(4))} sq in.`;
  if (reaches(area, needed, 0) === "yes")
    return { ...base, state: "sure", says: `${name} keeps ${shown} in the water, at least ${needed} sq in.` };
  return { ...base, state: "small", says: `${name} keeps ${shown} in the water, less than ${needed} sq in.` };
}

const IN_A_PIPE = /pipe|plumb|line|skimmer|return|filter|pump|pad/i;

/** A fitting drawn as the water's contact. */
export function waterBondContact(yard: Yard, body: Body, fitting: WaterBondElement): Contact {
  const name = subjectName(fitting);
  const plain = elementName(fitting);
  const base = { element: fitting, area: exposedSurface(fitting), at: fitting.at };
  const elsewhere = poolContact(yard, fitting);
  if (elsewhere !== null) return elsewhere;
  let answered: Settled | undefined;
  const open = (says: string, question: Question, frees: "yes" | "no", denied: string): Contact | null => {
    const settled = asked(yard, body, fitting, question);
    if (settled.choice === frees) {
      answered = settled;
      return null;
    }
    if (settled.choice !== null) return { ...base, state: "no", says: denied + settled.note, settled };
    return { ...base, state: "open", says: says + settled.note, question, settled };
  };
  if (fitting.alwaysSubmerged !== true) {
    const drains = fitting.alwaysSubmerged === false;
    const pipe = IN_A_PIPE.test(fitting.location ?? "");
    const dry = `${name} does not stay in the water at all times.`;
    if (drains && !pipe) return { ...base, state: "no", says: dry };
    const says = drains
      ? `${name} sits in ${fitting.location}, which is drawn as running dry; whether it counts while the pump runs is argued.`
      : `Whether ${plain} stays in the water at all times is not given.`;
    const found = open(says, STAYS_WET_QUESTION, "yes", dry);
    if (found) return found;
  }
  const material = fitting.material;
  if (material === undefined || !resists(yard, material)) {
    const says =
      material === undefined
        ? `What ${plain} is made of is not given.`
        : `${name} is made of ${material}, which is not on the list of metals known to last in pool water.`;
    const found = open(
      says,
      yesNo("contact-material", "Is it a conductive metal that resists corrosion in pool water?"),
      "yes",
      `${name} is not made of a metal that lasts in pool water.`,
    );
    if (found) return found;
  }
  return sizedContact(yard, body, { ...base, ...said(answered) }, name, false);
}

function resists(yard: Yard, material: string): boolean {
  const plain = material
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, "-");
  return yard.edition.value("water.materials").some((metal) => plain === metal || plain.endsWith(`-${metal}`));
}

/** Surfaces of contacts that are too small alone, summed, in words and number. */
export function smallSum(
  yard: Yard,
  contacts: readonly Contact[],
): { readonly sum: number; readonly enough: boolean; readonly text: string } {
  const small = contacts.filter((contact) => contact.state === "small");
  const sum = small.reduce((total, contact) => total + (contact.area ?? 0), 0);
  const enough = small.length > 1 && reaches(sum, yard.edition.value("water.area"), 0) === "yes";
  return { sum, enough, text: `${small.length} parts with ${Number(sum.toFixed(4))} sq in. together` };
}
