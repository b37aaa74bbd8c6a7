/**
 * The title block, with the fields of ISO 7200 that a drawing without persons or firms can fill (from memory), and empty
 * boxes for those who sign. North arrow and scale bar.
 */
import type { Bounds, Point } from "../../geometry/types.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { typeLine } from "./blocks.ts";
import type { Item } from "./scene.ts";
import { TEXT_POINTS } from "./scene.ts";
import { paperBox, paperLine } from "./sheet.ts";
import { cutPoints, wrapPoints } from "./text-width.ts";

export interface TitleFields {
  readonly title: string;
  readonly documentType: string;
  readonly edition: string;
  readonly amendments: string;
  readonly scale: string;
  readonly paper: string;
  readonly sheet: string;
  readonly isInvented: boolean;
}

export const TITLE_HEIGHT = 92;

export function drawTitleBlock(fields: TitleFields, box: Bounds): Item[] {
  const { minX, minY, maxX, maxY } = box;
  const width = maxX - minX;
  const pad = 6;
  const items: Item[] = [paperBox("frame", box)];
  const title = wrapPoints(fields.title, width - 2 * pad, TEXT_POINTS.title, true);
  const shown = title.length > 1 ? [cutPoints(fields.title, width - 2 * pad, TEXT_POINTS.title, true)] : title;
  for (const line of shown) items.push(typeLine(line, [minX + pad, maxY - 5], { size: "title", strong: true }));
  items.push(typeLine(fields.documentType, [minX + pad, maxY - 22], { size: "body", role: "faint" }));
  if (fields.isInvented) {
    items.push(
      typeLine("Invented example; not for construction", [minX + pad, maxY - 32], { size: "body", strong: true }),
    );
  }
  const rows: readonly (readonly (readonly [label: string, value: string, share: number])[])[] = [
    [
      ["Code edition", fields.edition, 0.5],
      ["Amendments", fields.amendments, 0.5],
    ],
    [
      ["Scale", fields.scale, 0.3],
      ["Paper", fields.paper, 0.45],
      ["Sheet", fields.sheet, 0.25],
    ],
    [
      ["Date", "", 0.3],
      ["Drawn by", "", 0.35],
      ["Checked by", "", 0.35],
    ],
  ];
  const rowHeight = 16;
  rows.forEach((row, i) => {
    const top = minY + (rows.length - i) * rowHeight;
    items.push(
      paperLine("rule-line", [
        [minX, top],
        [maxX, top],
      ]),
    );
    let x = minX;
    row.forEach(([label, value, share], k) => {
      if (k > 0)
        items.push(
          paperLine("rule-line", [
            [x, top],
            [x, top - rowHeight],
          ]),
        );
      const room = share * width - 8;
      items.push(typeLine(label, [x + pad, top - 1.2], { role: "faint" }));
      items.push(typeLine(cutPoints(value, room, TEXT_POINTS.small, true), [x + pad, top - 8.4], { strong: true }));
      x += share * width;
    });
  });
  return items;
}

/** An arrow to the north; `north` is its direction on the plan, degrees counter-clockwise from +x. */
export function drawNorth(center: Point, north: number): Item[] {
  const angle = (north * Math.PI) / 180;
  const along = (forward: number, left: number): Point => [
    center[0] + forward * Math.cos(angle) - left * Math.sin(angle),
    center[1] + forward * Math.sin(angle) + left * Math.cos(angle),
  ];
  const letter = along(21, 0);
  return [
    paperLine("frame", [along(-13, 0), along(15, 0)]),
    paperLine("ink-fill", [along(15, 0), along(2, 4.6), along(5, 0)], true),
    paperLine("frame", [along(15, 0), along(2, -4.6), along(5, 0)], true),
    {
      kind: "text",
      at: [letter[0], letter[1] - 2.7],
      text: "N",
      size: "body",
      role: "ink",
      anchor: "middle",
      turn: 0,
      strong: true,
    },
  ];
}

/** What one part of the bar may be, and the unit that its figures then are in. */
interface BarStep {
  readonly count: number;
  readonly unit: "in" | "ft" | "cm" | "m";
}

const INCHES_PER_METER = 1 / 0.0254;
const UNIT_INCHES = { in: 1, ft: 12, cm: INCHES_PER_METER / 100, m: INCHES_PER_METER } as const;
const WHOLE_STEPS: readonly number[] = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];
/** Smallest first. */
const FEET_STEPS: readonly BarStep[] = [
  ...[0.25, 0.5, 1, 2, 3, 6].map((count): BarStep => ({ count, unit: "in" })),
  ...WHOLE_STEPS.map((count): BarStep => ({ count, unit: "ft" })),
];
const METER_STEPS: readonly BarStep[] = [
  ...[0.5, 1, 2, 5, 10, 20, 50].map((count): BarStep => ({ count, unit: "cm" })),
  ...WHOLE_STEPS.map((count): BarStep => ({ count, unit: "m" })),
];

/** A scale bar of four parts about `room` points long, in feet or meters; in inches or centimeters where the scale is large. */
export function drawScaleBar(corner: Point, pointsPerInch: number, units: Units, room: number): Item[] {
  const steps = units === "m" ? METER_STEPS : FEET_STEPS;
  const partOf = ({ count, unit }: BarStep) => count * UNIT_INCHES[unit] * pointsPerInch;
  const longest = steps.filter((step) => partOf(step) * 4 <= room).at(-1) ?? steps[0];
  if (!longest) return [];
  const part = partOf(longest);
  const [x, y] = corner;
  const items: Item[] = [];
  for (let i = 0; i < 4; i++) {
    const box = { minX: x + i * part, maxX: x + (i + 1) * part, minY: y - 4, maxY: y };
    if (i % 2 === 0) items.push(paperBox("ink-fill", box));
    items.push(paperBox("rule-line", box));
  }
  for (let i = 0; i <= 4; i++) {
    const figure = String(i * longest.count);
    const text = i === 4 ? `${figure} ${longest.unit}` : i % 2 === 1 && figure.includes(".") ? "" : figure;
    if (text !== "") items.push(typeLine(text, [x + i * part, y - 6], { anchor: "middle" }));
  }
  return items;
}
