/**
 * Lays a site and its report out as drawing sheets.
 *
 * Stages: paper (the smallest on which plan and lists fit) -> scale (the largest usual one that shows the whole plan) ->
 * the plan with its legend strip -> the column: cautions, findings, copper, ties, title block -> further sheets for
 * whatever found no room, so that nothing is left out -> where asked for, the reasons in full and another edition beside.
 */
import type { Bounds, Point } from "../../geometry/types.ts";
import { EDITIONS, isEditionId } from "../../rules/editions/in-force.ts";
import type { Report } from "../../rules/report.ts";
import type { PoolElement } from "../../rules/site/elements.ts";
import type { Site } from "../../rules/site/site.ts";
import { namesOf } from "../../rules/words/element-names.ts";
import { missingText, standingCountsText } from "../../rules/words/outcomes.ts";
import { hiddenIds } from "../edits/arrangement.ts";
import { amendmentBlocks, amendmentCount } from "./amendment-list.ts";
import { type Block, type Column, flow, headingBlock, paragraphBlock, spaceBlock, typeLine } from "./blocks.ts";
import { COMPARISON_COLUMN, type ComparedEditions, comparisonBlocks } from "./comparison-list.ts";
import { copperBlocks, tieBlocks } from "./copper-table.ts";
import { dimensionRoom } from "./dimensions.ts";
import { findingBlocks, type ListOptions } from "./finding-list.ts";
import { drawLegend, LEGEND_STEP, legendEntries } from "./legend.ts";
import { LETTERING_MARGIN } from "./lettering.ts";
import { fittingScale, PAPERS, type Paper, type PaperName, type Scale } from "./paper.ts";
import { EIGHTH_INCH_SCALE, planScene, type SceneOptions, sceneBounds } from "./plan-scene.ts";
import { REASON_COLUMN, reasonBlocks } from "./reason-list.ts";
import type { Item, Scene } from "./scene.ts";
import { type Group, PAPER_VIEW, paperBox, type Sheet } from "./sheet.ts";
import { sceneGroups } from "./svg.ts";
import { drawNorth, drawScaleBar, drawTitleBlock, TITLE_HEIGHT, type TitleFields } from "./title-block.ts";

export interface SheetOptions extends Pick<SceneOptions, "marks" | "part" | "focus"> {
  readonly paper?: PaperName;
  /** Adds sheets with what changes under another edition. Its edition before is the one that judged the report. */
  readonly comparison?: ComparedEditions;
  /** Adds sheets with the reasons of every finding in full. */
  readonly reasons?: boolean;
}

const MARGIN = 24;
const GAP = 12;
/** Between columns that hold running text. */
const WIDE_GAP = 18;
/** Width of a text column, points. */
const COLUMN = 206;
/** Room for north arrow and scale bar at the left of the strip. */
const STRIP_LEFT = 172;
const LEGEND_COLUMN = 94;

interface Frame {
  readonly paper: Paper;
  /** Text columns beside the plan. */
  readonly columns: number;
}

/** The papers tried in turn when none is named. */
const CHOICES: readonly Frame[] = [
  { paper: PAPERS.letter, columns: 1 },
  { paper: PAPERS.tabloid, columns: 1 },
  { paper: PAPERS.tabloid, columns: 2 },
];

const COLUMNS: Readonly<Record<PaperName, number>> = { letter: 1, tabloid: 2, "arch-c": 2, "arch-d": 3 };

/** The drawing: its first sheet holds the plan, further ones the lists that found no room beside it. */
export function planSheets(site: Site, report: Report, options: SheetOptions = {}): Sheet[] {
  const frames =
    options.paper === undefined ? CHOICES : [{ paper: PAPERS[options.paper], columns: COLUMNS[options.paper] }];
  let last: Sheet[] = [];
  for (const frame of frames) {
    const { sheets, isRoomy } = layOut(site, report, frame, options);
    last = sheets;
    if (isRoomy) break;
  }
  return last;
}

function layOut(
  site: Site,
  report: Report,
  frame: Frame,
  options: SheetOptions,
): { sheets: Sheet[]; isRoomy: boolean } {
  const { paper, columns } = frame;
  const units = site.display?.units ?? "ft-in";
  const list: ListOptions = {
    units,
    names: namesOf(site.elements),
    width: COLUMN,
    hasSeveralBodies: poolsOf(site).length > 1,
  };
  const columnLeft = paper.width - MARGIN - columns * COLUMN - (columns - 1) * GAP;
  const strip: Bounds = { minX: MARGIN, minY: MARGIN, maxX: columnLeft - GAP, maxY: MARGIN };
  const placed = placePlan(site, report, paper, strip, options);
  const { scene, scale } = placed;
  const blocks = columnBlocks(site, report, list, scene);
  const textColumns = Array.from({ length: columns }, (_, i): Column => {
    const isLast = i === columns - 1;
    return {
      left: columnLeft + i * (COLUMN + GAP),
      width: COLUMN,
      top: paper.height - MARGIN,
      bottom: MARGIN + (isLast ? TITLE_HEIGHT + 6 : 0),
    };
  });
  const first = flow(blocks, textColumns);
  const { comparison } = options;
  const further = [
    ...continuation(first.rest, paper, COLUMN).map((items) => furniture("lists", items)),
    ...(options.reasons ? added("reasons", REASON_COLUMN, paper, list, (wide) => reasonBlocks(report, wide)) : []),
    ...(comparison
      ? added("comparison", COMPARISON_COLUMN, paper, list, (wide) => comparisonBlocks(comparison, report, wide))
      : []),
  ];
  const count = 1 + further.length;
  const title = (number: number, group: string) =>
    drawTitleBlock(
      { ...titleFields(site, report, scale, paper, `${number} of ${count}`), ...documentTypeOf(group, comparison) },
      titleBox(paper),
    );
  const sheets: Sheet[] = [
    {
      width: paper.width,
      height: paper.height,
      groups: [...placed.groups, furniture("lists", [...first.items, ...title(1, "lists")])],
    },
    ...further.map((group, i) => ({
      width: paper.width,
      height: paper.height,
      groups: [{ ...group, items: [...group.items, ...title(i + 2, group.name)] }],
    })),
  ];
  return { sheets, isRoomy: first.rest.length === 0 && scale.pointsPerInch >= EIGHTH_INCH_SCALE / 2 };
}

/** What a sheet is, where it is not the plan and its lists. */
function documentTypeOf(group: string, comparison: SheetOptions["comparison"]): Partial<TitleFields> {
  if (group === "reasons") return { documentType: "Reasons of the findings in full" };
  if (group !== "comparison" || !comparison) return {};
  return { documentType: `What changes under ${EDITIONS[comparison.after].title}` };
}

function poolsOf(site: Site): PoolElement[] {
  return site.elements.filter((element): element is PoolElement => element.kind === "pool");
}

function titleBox(paper: Paper): Bounds {
  const left = paper.width - MARGIN - COLUMN;
  return { minX: left, minY: MARGIN, maxX: left + COLUMN, maxY: MARGIN + TITLE_HEIGHT };
}

function furniture(name: string, items: readonly Item[]): Group {
  return { name, view: PAPER_VIEW, items };
}

interface PlacedPlan {
  readonly scene: Scene;
  readonly scale: Scale;
  readonly groups: readonly Group[];
}

/** The plan with its frame, and under it the strip with north arrow, scale bar and legend. */
function placePlan(site: Site, report: Report, paper: Paper, strip: Bounds, options: SheetOptions): PlacedPlan {
  const units = site.display?.units ?? "ft-in";
  const legendColumns = Math.max(1, Math.floor((strip.maxX - strip.minX - STRIP_LEFT) / LEGEND_COLUMN));
  const legendHeight = (scene: Scene) => Math.ceil(legendEntries(scene).length / legendColumns) * LEGEND_STEP + 12;
  const draft = planScene(site, report, { ...options, pointsPerInch: EIGHTH_INCH_SCALE });
  const stripHeight = Math.max(64, legendHeight(draft));
  const frame: Bounds = { ...strip, minY: strip.minY + stripHeight + 6, maxY: paper.height - MARGIN };
  const bounds = sceneBounds(site, report) ?? { minX: 0, minY: 0, maxX: 240, maxY: 240 };
  const dimensions = dimensionRoom(bounds, poolsOf(site));
  const room: Bounds = {
    minX: frame.minX + LETTERING_MARGIN + dimensions.left,
    minY: frame.minY + LETTERING_MARGIN + dimensions.bottom,
    maxX: frame.maxX - LETTERING_MARGIN - dimensions.right,
    maxY: frame.maxY - LETTERING_MARGIN - dimensions.top,
  };
  const width = bounds.maxX - bounds.minX;
  const height = bounds.maxY - bounds.minY;
  const scale = fittingScale(width, height, room.maxX - room.minX, room.maxY - room.minY, units);
  const k = scale.pointsPerInch;
  const scene = planScene(site, report, { ...options, pointsPerInch: k });
  const origin: Point = [
    (room.minX + room.maxX) / 2 - ((bounds.minX + bounds.maxX) / 2) * k,
    (room.minY + room.maxY) / 2 - ((bounds.minY + bounds.maxY) / 2) * k,
  ];
  const items: Item[] = [
    paperBox("frame", frame),
    ...drawNorth([strip.minX + 22, strip.minY + stripHeight / 2 - 4], site.north ?? 90),
    ...drawScaleBar([strip.minX + 54, strip.minY + stripHeight / 2 + 2], k, units, 120),
    typeLine(`Scale ${scale.words}`, [strip.minX + 54, strip.minY + stripHeight / 2 + 15], { strong: true }),
    ...drawLegend(
      legendEntries(scene),
      [strip.minX + STRIP_LEFT, strip.minY + stripHeight - 9],
      legendColumns,
      LEGEND_COLUMN,
    ),
  ];
  if (scene.bounds === null) {
    const middle: Point = [(frame.minX + frame.maxX) / 2, (frame.minY + frame.maxY) / 2];
    items.push(
      typeLine("Nothing is drawn on this site yet", middle, { size: "heading", role: "faint", anchor: "middle" }),
    );
  }
  return { scene, scale, groups: [...sceneGroups(scene, { scale: k, origin }, frame), furniture("sheet", items)] };
}

function columnBlocks(site: Site, report: Report, list: ListOptions, scene: Scene): Block[] {
  const left: Block[] = [];
  if (scene.marks === "open") {
    left.push(
      paragraphBlock("The plan bears the numbers of what is not settled; the list holds every finding.", list.width),
    );
  }
  const hidden = hiddenWords(site, list);
  if (hidden !== null) left.push(paragraphBlock(hidden, list.width, { strong: true }));
  if (scene.unmarked.length > 0) {
    left.push(paragraphBlock(`No room on the plan for the numbers ${scene.unmarked.join(", ")}.`, list.width));
  }
  return [
    headingBlock("Caution"),
    paragraphBlock(report.cautions.join(" "), list.width),
    spaceBlock(4),
    ...amendmentBlocks(report, list),
    ...copperBlocks(report, list),
    spaceBlock(4),
    ...tieBlocks(report, list),
    spaceBlock(4),
    headingBlock("Findings", missingText(report)),
    paragraphBlock(standingCountsText(report), list.width, { strong: true }),
    ...left,
    ...findingBlocks(report, list),
  ];
}

/** What the plan leaves out because the site hides it; null when nothing is. */
function hiddenWords(site: Site, { names }: ListOptions): string | null {
  const ids = hiddenIds(site);
  const hidden = site.elements.filter(({ id }) => ids.has(id)).map(({ id }) => names.get(id) ?? id);
  return hidden.length === 0 ? null : `Not drawn on the plan, but judged like the rest: ${hidden.join(", ")}.`;
}

/** Further sheets of their own, in columns at least as wide as named. */
function added(
  name: string,
  least: number,
  paper: Paper,
  list: ListOptions,
  blocksOf: (list: ListOptions) => Block[],
): Group[] {
  const room = paper.width - 2 * MARGIN + WIDE_GAP;
  const width = room / Math.max(1, Math.floor(room / (least + WIDE_GAP))) - WIDE_GAP;
  return continuation(blocksOf({ ...list, width }), paper, width).map((items) => furniture(name, items));
}

/** Blocks on further sheets, each as many columns as the paper holds. */
function continuation(blocks: readonly Block[], paper: Paper, width: number): Item[][] {
  const sheets: Item[][] = [];
  const count = Math.floor((paper.width - 2 * MARGIN + GAP) / (width + GAP));
  const pitch = count > 1 ? (paper.width - 2 * MARGIN - width) / (count - 1) : 0;
  let rest = blocks;
  while (rest.length > 0) {
    const columns = Array.from(
      { length: count },
      (_, i): Column => ({
        left: MARGIN + i * pitch,
        width,
        top: paper.height - MARGIN,
        bottom: MARGIN + (i === count - 1 ? TITLE_HEIGHT + 6 : 0),
      }),
    );
    const { items, rest: left } = flow(rest, columns);
    if (left.length === rest.length) throw new Error("A block is taller than a sheet.");
    sheets.push(items);
    rest = left;
  }
  return sheets;
}

function titleFields(site: Site, report: Report, scale: Scale, paper: Paper, sheet: string): TitleFields {
  return {
    title: report.site === "" ? "Site without a name" : report.site,
    documentType: "Bonding plan with findings",
    edition: isEditionId(report.edition) ? EDITIONS[report.edition].title : report.edition,
    amendments: amendmentCount(report),
    scale: scale.words,
    paper: paper.words,
    sheet,
    isInvented: site.invented === true,
  };
}
