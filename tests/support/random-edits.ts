/** Random edits over every verb of the editor: what each does is chosen by numbers between 0 and 1. */

import { addElement } from "../../app/edits/add-element.ts";
import { ALIGNMENTS, alignElements, distributeElements } from "../../app/edits/align-elements.ts";
import { answerQuestion } from "../../app/edits/answer-question.ts";
import { groupElements, setHidden, setLocked, ungroupElements } from "../../app/edits/arrangement.ts";
import type { PathPlace } from "../../app/edits/cut-path.ts";
import { deleteElements } from "../../app/edits/delete-elements.ts";
import { deleteVertex } from "../../app/edits/delete-vertex.ts";
import { addDimension, removeDimension } from "../../app/edits/dimension-edits.ts";
import { duplicateElements } from "../../app/edits/duplicate-elements.ts";
import { type AnyElement, type Edit, refused } from "../../app/edits/edit.ts";
import { addInnerOutline, removeInnerOutline } from "../../app/edits/inner-outlines.ts";
import { insertVertex } from "../../app/edits/insert-vertex.ts";
import { joinPaths } from "../../app/edits/join-paths.ts";
import { moveElements } from "../../app/edits/move-elements.ts";
import { moveVertex } from "../../app/edits/move-vertex.ts";
import { offsetElement } from "../../app/edits/offset-element.ts";
import { pasteElements, takeElements } from "../../app/edits/paste-elements.ts";
import { type PathRef, pathOf, pathRefs } from "../../app/edits/path-ref.ts";
import { recordTie } from "../../app/edits/record-tie.ts";
import { repeatElements } from "../../app/edits/repeat-elements.ts";
import { roundCorner } from "../../app/edits/round-corner.ts";
import { setAmendment } from "../../app/edits/set-amendment.ts";
import { setBulge } from "../../app/edits/set-bulge.ts";
import { setEdition } from "../../app/edits/set-edition.ts";
import { setField } from "../../app/edits/set-field.ts";
import { setOrder } from "../../app/edits/set-order.ts";
import { setSetting, setSiteField } from "../../app/edits/set-site-field.ts";
import { setUnderlay } from "../../app/edits/set-underlay.ts";
import { isOutline, splitLine, splitOutline } from "../../app/edits/split-element.ts";
import { DRAWN_AS, type DrawingTool, draft } from "../../app/edits/templates.ts";
import { mirrorElements, turnElements } from "../../app/edits/turn-elements.ts";
import { aboutMiddle, placed } from "../../app/pool-shapes/placing.ts";
import { fullDimensions } from "../../app/pool-shapes/shape.ts";
import { POOL_SHAPES } from "../../app/pool-shapes/shape-names.ts";
import { SHAPES } from "../../app/pool-shapes/shapes.ts";
import { EDITION_IDS } from "../../rules/editions/edition.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import { fieldsOf } from "../../rules/site/field-list.ts";
import type { Site } from "../../rules/site/site.ts";

/** Numbers that choose what an act does; each act reads as many of them as it needs. */
export type Dice = readonly number[];
const pick = <T>(list: readonly T[], die = 0): T | undefined => list[Math.floor(die * list.length)];
const coordinate = (die = 0) => Math.round((die * 1400 - 400) * 16) / 16;

function anyPath(site: Site, dice: Dice): { id: string; ref: PathRef; count: number } {
  const element = pick(site.elements, dice[0]);
  const refs = element ? pathRefs(element) : [];
  const ref = pick(refs, dice[1]) ?? { field: "outline" };
  const count = element ? (pathOf(element, ref)?.vertices.length ?? 0) : 0;
  return { id: element?.id ?? "none", ref, count };
}

function anyIds(site: Site, dice: Dice): string[] {
  const count = 1 + Math.floor((dice[8] ?? 0) * 4);
  return [...new Set([0, 1, 2, 3].slice(0, count).map((i) => pick(site.elements, dice[i])?.id ?? "none"))];
}

/** Values of every sort, most of which some field takes and every field refuses some. */
function anyValue(element: AnyElement, name: string, dice: Dice): unknown {
  const field = isKnownKind(element.kind) ? fieldsOf(element.kind).find((known) => known.name === name) : undefined;
  const option = pick(field?.options ?? [], dice[3])?.value;
  const values = [
    undefined,
    true,
    false,
    coordinate(dice[4]),
    -coordinate(dice[4]),
    "text",
    [0, coordinate(dice[5])],
    option,
    option,
    Number.NaN,
  ];
  return pick(values, dice[6]);
}

/** Some of what they make is refused, as a person's edits are. */
export const VERBS: readonly ((site: Site, dice: Dice) => Edit)[] = [
  (site, dice) => moveElements(anyIds(site, dice), coordinate(dice[4]), coordinate(dice[5])),
  (site, dice) => duplicateElements(anyIds(site, dice)),
  (site, dice) => deleteElements(anyIds(site, dice)),
  (site, dice) => {
    const tool = pick(Object.keys(DRAWN_AS) as DrawingTool[], dice[0]) ?? "fence";
    const corners = [2, 4, 6].map((i) => [coordinate(dice[i]), coordinate(dice[i + 1])] as const);
    const drawn =
      DRAWN_AS[tool] === "point"
        ? { point: corners[0]! }
        : { path: { vertices: corners, closed: (dice[9] ?? 0) < 0.5 } };
    return addElement(draft(site, tool, drawn));
  },
  (site, dice) => {
    const { id, ref, count } = anyPath(site, dice);
    return moveVertex(id, ref, Math.floor((dice[2] ?? 0) * count), [coordinate(dice[3]), coordinate(dice[4])]);
  },
  (site, dice) => {
    const { id, ref, count } = anyPath(site, dice);
    return insertVertex(id, ref, Math.floor((dice[2] ?? 0) * count), [coordinate(dice[3]), coordinate(dice[4])]);
  },
  (site, dice) => {
    const { id, ref, count } = anyPath(site, dice);
    return deleteVertex(id, ref, Math.floor((dice[2] ?? 0) * count));
  },
  (site, dice) => {
    const { id, ref, count } = anyPath(site, dice);
    return setBulge(id, ref, Math.floor((dice[2] ?? 0) * count), ((dice[3] ?? 0) - 0.5) * 3);
  },
  (site, dice) => {
    const element = pick(site.elements, dice[0]);
    if (!element) return setField("none", "name", "");
    const names = isKnownKind(element.kind) ? fieldsOf(element.kind).map(({ name }) => name) : ["name"];
    const name = pick(names, dice[1]) ?? "name";
    return setField(element.id, name, anyValue(element, name, dice));
  },
  (site, dice) => setOrder(pick(site.elements, dice[0])?.id ?? "none", (dice[1] ?? 0) < 0.5 ? "over" : "under"),
  (_site, dice) =>
    setSetting(
      pick(["ringOffset", "ties", "spools", "ringStyle", "none"], dice[0]) ?? "",
      pick([21, -1, [100], "short", undefined], dice[1]),
    ),
  (_site, dice) =>
    setSiteField(
      pick(["name", "grade", "accuracy", "north", "display.units"], dice[0]) ?? "",
      pick(["m", 2, undefined, Number.NaN], dice[1]),
    ),
  (_site, dice) => setEdition(pick(EDITION_IDS, dice[0]) ?? "nec-2020"),
  (_site, dice) =>
    setAmendment(pick(["fixedMetal.distance", "none"], dice[0]) ?? "", pick([60, "far"], dice[1]) ?? 1, "ordinance 1"),
  (site, dice) => {
    const asked = { element: pick(site.elements, dice[0])?.id ?? null, body: pick(site.elements, dice[1])?.id ?? null };
    return answerQuestion(
      { ...asked, question: { id: "q", text: "?", options: ["yes", "no"] } },
      pick(["yes", "no", "perhaps"], dice[2]) ?? "",
      "AB",
      "2026-05-01",
    );
  },
  (site, dice) =>
    recordTie({
      at: [coordinate(dice[0]), coordinate(dice[1])],
      between: ["perimeter", pick(site.elements, dice[2])?.id ?? "none"],
      present: false,
    }),
  (site, dice) => {
    const [x, y] = [coordinate(dice[1]), coordinate(dice[2])];
    return addInnerOutline(pick(site.elements, dice[0])?.id ?? "none", {
      vertices: [
        [x, y],
        [x + 9, y],
        [x + 9, y + 9],
      ],
      closed: true,
    });
  },
  (site, dice) =>
    removeInnerOutline(pick(site.elements, dice[0])?.id ?? "none", (dice[1] ?? 0) < 0.5 ? "islands" : "holes", 0),
  (site, dice) => alignElements(anyIds(site, dice), pick(ALIGNMENTS, dice[6]) ?? "left"),
  (site, dice) => distributeElements(anyIds(site, dice), (dice[6] ?? 0) < 0.5 ? "across" : "up"),
  (site, dice) =>
    turnElements(anyIds(site, dice), (dice[4] ?? 0) * 360 - 180, [coordinate(dice[5]), coordinate(dice[6])]),
  (site, dice) => mirrorElements(anyIds(site, dice), [coordinate(dice[5]), coordinate(dice[6])], (dice[4] ?? 0) * 180),
  (site, dice) => setLocked(anyIds(site, dice), (dice[6] ?? 0) < 0.3),
  (site, dice) => setHidden(anyIds(site, dice), (dice[6] ?? 0) < 0.5),
  (site, dice) =>
    (site.arrangement?.groups ?? []).length > 0 && (dice[6] ?? 0) < 0.5
      ? ungroupElements(anyIds(site, dice))
      : groupElements(anyIds(site, dice)),
  (site, dice) =>
    pasteElements(takeElements(site, anyIds(site, dice)), { by: [coordinate(dice[4]), coordinate(dice[5])] }),
  (site, dice) => {
    const { id, ref, count } = anyPath(site, dice);
    return roundCorner(id, ref, Math.floor((dice[2] ?? 0) * count), (dice[3] ?? 0) * 40);
  },
  (site, dice) => {
    const old = pick(site.dimensions ?? [], dice[0]);
    if (old && (dice[5] ?? 0) < 0.5) return removeDimension(old.id);
    return addDimension({
      from: { at: [coordinate(dice[0]), coordinate(dice[1])] },
      to: { at: [coordinate(dice[2]), coordinate(dice[3])] },
      offset: coordinate(dice[4]) / 20,
    });
  },
  (site, dice) => {
    const element = pick(site.elements, dice[0]);
    const [ref] = element ? pathRefs(element) : [];
    const count = element && ref ? (pathOf(element, ref)?.vertices.length ?? 1) : 1;
    const place = (die = 0): PathPlace => ({
      index: Math.floor(die * count),
      share: Math.round((dice[3] ?? 0) * 16) / 16,
    });
    const id = element?.id ?? "none";
    return element && isOutline(element)
      ? splitOutline(id, place(dice[1]), place(dice[2]))
      : splitLine(id, place(dice[1]));
  },
  (site, dice) => {
    // What was cut lies next to each other in the file, and meets.
    const at = Math.floor((dice[0] ?? 0) * site.elements.length);
    const other = (dice[1] ?? 0) < 0.6 ? site.elements[at + 1] : pick(site.elements, dice[2]);
    return joinPaths(site.elements[at]?.id ?? "none", other?.id ?? "none");
  },
  (site, dice) =>
    offsetElement(pick(site.elements, dice[0])?.id ?? "none", {
      distance: coordinate(dice[1]) / 10,
      side: pick(["outside", "inside", "left", "right"] as const, dice[2]) ?? "outside",
      corners: pick(["square", "round"] as const, dice[3]) ?? "square",
    }),
  (site, dice) =>
    repeatElements(anyIds(site, dice).slice(0, 2), {
      line: {
        vertices: [
          [coordinate(dice[4]), coordinate(dice[5]), (dice[9] ?? 0) - 0.5],
          [coordinate(dice[6]), coordinate(dice[7])],
        ],
        closed: false,
      },
      every: (dice[8] ?? 0) < 0.5 ? { count: 1 + Math.floor((dice[9] ?? 0) * 5) } : { spacing: coordinate(dice[9]) },
      aside: coordinate(dice[3]) / 20,
      turning: (dice[9] ?? 0) < 0.5,
    }),
  (site, dice) => {
    const shape = SHAPES[pick(POOL_SHAPES, dice[0])?.id ?? "rectangle"];
    const typed = Object.fromEntries(
      Object.entries(fullDimensions(shape, {})).map(([name, size], i) => [
        name,
        size * (0.7 + 0.6 * (dice[1 + i] ?? 0)),
      ]),
    );
    const shaped = shape.outline(typed, "ft-in");
    if (!shaped.ok) return { label: "Draw a pool", apply: () => refused(shaped.reason) };
    const placing = {
      at: [coordinate(dice[8]), coordinate(dice[9])],
      turn: 360 * (dice[7] ?? 0),
      hold: [0, 0],
    } as const;
    const outline = placed(aboutMiddle(shaped.outline), { ...placing, isMirrored: (dice[6] ?? 0) < 0.5 });
    return addElement(draft(site, "pool-outline", { path: outline }));
  },
  (site, dice) => {
    if (site.underlay && (dice[0] ?? 0) < 0.4) return setUnderlay(null);
    return setUnderlay({
      name: "survey",
      picture: (dice[1] ?? 0) < 0.8 ? DOT : "no picture",
      width: 1 + Math.floor((dice[2] ?? 0) * 4000),
      height: 1 + Math.floor((dice[3] ?? 0) * 4000),
      at: [coordinate(dice[4]), coordinate(dice[5])],
      inchesPerPixel: (dice[6] ?? 0) * 2 - 0.1,
      turn: coordinate(dice[7]),
    });
  },
];

/** A picture of one pixel. */
const DOT =
  "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==";
