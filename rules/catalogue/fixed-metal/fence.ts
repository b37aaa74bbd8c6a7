/** Fences: metal that stands on the ground, in pieces that may not be joined. */
import type { Body, Yard } from "../../measures/yard.ts";
import type { FenceElement } from "../../site/elements.ts";
import { type Doubt, type FixedMetal, joinRemedy } from "../common/fixed-metal.ts";
import { meetingPoints, partNeed } from "../common/needs.ts";
import { ON_COPPER } from "../common/rests-on.ts";
import { subjectName, yesNo } from "../common/verdicts.ts";
import type { Need, OnlyIf } from "../rule.ts";
import { sectionsWithin } from "./fence-sections.ts";
import { extentOf, pathRound, type SubjectAt } from "./subjects.ts";

export function fenceSubject(yard: Yard, element: FenceElement, bodies: readonly Body[]): SubjectAt {
  const name = subjectName(element);
  const doubt = (): Doubt => ({
    question: yesNo("fence-metal", "Is this fence metal, its posts included?"),
    frees: "no",
    why: `${name} is within reach of the water, and the drawing does not say whether it is metal.`,
    remedy: "Say whether the fence is metal; bond it if it is.",
    freed: `${name} is not metal.`,
  });
  return (body): FixedMetal => ({
    element,
    name,
    straight: yard.straight(element, body),
    path: pathRound(yard, element, body),
    lowest: "ground",
    extent: extentOf(yard, element, body),
    ...(element.metal === undefined ? { doubt } : {}),
    remedy: () => fenceRemedy(yard, element, connectionsOf(yard, element, bodies)),
  });
}

interface Connections {
  readonly sections: number;
  readonly gates: number;
  readonly at: Need["at"];
}

/** Pieces within reach of any body, and every gate: where a gate hangs is not drawn, so each counts. */
function connectionsOf(yard: Yard, element: FenceElement, bodies: readonly Body[]): Connections {
  const shape = yard.shape(element);
  if (shape.kind !== "path") return { sections: 1, gates: 0, at: [] };
  const limit = yard.edition.value("fixedMetal.distance");
  const pieces = bodies.flatMap((body) => yard.lengthWithin(element, body, limit).pieces);
  const { reached, at } = sectionsWithin(shape.path, pieces, Math.floor(element.isolatedSections ?? 1));
  return { sections: Math.max(1, reached), gates: Math.floor(element.gates ?? 0), at };
}

export function fenceNeed(yard: Yard, element: FenceElement, body: Body, bodies: readonly Body[]): Need {
  const { sections, gates, at } = connectionsOf(yard, element, bodies);
  const near = meetingPoints(yard, element, body, yard.edition.value("fixedMetal.distance"));
  const where = { ...near, at: [...near.at.slice(0, 1), ...at, ...near.at.slice(1)] };
  const need = partNeed(yard, element, where, sections + gates, null);
  const given = element.isolatedSections !== undefined && element.gates !== undefined;
  return given ? need : { ...need, onlyIf: [ONE_PIECE] };
}

const ONE_PIECE: OnlyIf = {
  question: yesNo(
    "fence-one-piece",
    "Do the recorded connections reach every panel and gate of the fence, with jumpers where they are apart?",
    ON_COPPER,
  ),
  says: "no panel and no gate of it is apart from the rest, and that is not given",
  remedy: "Give its isolated sections and its gates, and record a connection or a jumper for each.",
};

function fenceRemedy(yard: Yard, element: FenceElement, { sections, gates }: Connections): string {
  const sentences = [joinRemedy(yard, sections)];
  if (element.isolatedSections === undefined) {
    sentences.push(
      "It is counted as one piece: each piece that is not joined to the next needs a connection of its own.",
    );
  } else if (sections > 1) {
    sentences.push("Its pieces are taken as equally long, and those within reach are counted.");
  }
  if (gates > 0) {
    sentences.push(
      `${gates === 1 ? "Its gate needs" : `Its ${gates} gates each need`} a flexible jumper or a connection of its own.`,
    );
  } else if (element.gates === undefined) {
    sentences.push("A gate in it needs a flexible jumper or a connection of its own.");
  }
  return sentences.join(" ");
}
