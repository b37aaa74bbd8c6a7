/** Blocks of a sheet's columns: small pieces of type and lines of a known height, flowed one under the other. */
import type { Point } from "../../geometry/types.ts";
import type { Item, TextItem } from "./scene.ts";
import { TEXT_POINTS } from "./scene.ts";
import { paperLine } from "./sheet.ts";
import { itemPoints, wrapPoints } from "./text-width.ts";

/** A piece that is never parted. `draw` sets it with its upper left corner at the given place, points of paper, y up. */
export interface Block {
  readonly height: number;
  /** A heading: it stays with the block that follows. */
  readonly keepWithNext?: boolean;
  readonly draw: (corner: Point, width: number) => Item[];
}

export interface Column {
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}

/** Sets blocks into columns; returns what was drawn and the blocks that found no room. */
export function flow(blocks: readonly Block[], columns: readonly Column[]): { items: Item[]; rest: Block[] } {
  const items: Item[] = [];
  let at = 0;
  for (const column of columns) {
    let y = column.top;
    while (at < blocks.length) {
      const block = blocks[at] as Block;
      const next = blocks[at + 1];
      const needed = block.height + (block.keepWithNext && next ? next.height : 0);
      const isWhole = y === column.top && needed > column.top - column.bottom;
      if (y - needed < column.bottom && !isWhole) break;
      items.push(...block.draw([column.left, y], column.width));
      y -= block.height;
      at++;
    }
  }
  return { items, rest: blocks.slice(at) };
}

/** Line distance of a size of type, points. */
export function lineHeight(size: TextItem["size"]): number {
  return TEXT_POINTS[size] * 1.28;
}

/** A line of type whose upper edge is at `y`. */
export function typeLine(
  text: string,
  [x, y]: Point,
  style: Partial<Pick<TextItem, "size" | "role" | "anchor" | "strong" | "spaced">> = {},
): Item {
  const size = style.size ?? "small";
  const at: Point = [x, y - TEXT_POINTS[size] * 0.95];
  return { kind: "text", text, at, size, role: "ink", anchor: "start", turn: 0, ...style };
}

/** A heading of a column with a line under it, and its note at the right. */
export function headingBlock(text: string, note = ""): Block {
  return {
    height: 17,
    keepWithNext: true,
    draw: ([x, y], width) => [
      typeLine(text, [x, y - 4], { size: "body", strong: true }),
      ...(note === "" ? [] : [typeLine(note, [x + width, y - 5], { role: "faint", anchor: "end" })]),
      paperLine("rule-line", [
        [x, y - 14],
        [x + width, y - 14],
      ]),
    ],
  };
}

/** A heading inside a list, in small type. */
export function subheadingBlock(text: string, note: string): Block {
  return {
    height: 13,
    keepWithNext: true,
    draw: ([x, y], width) => [
      typeLine(text, [x, y - 2.5], { strong: true, role: "faint" }),
      typeLine(note, [x + width, y - 2.5], { role: "faint", anchor: "end" }),
      paperLine("rule-line", [
        [x, y - 10.5],
        [x + width, y - 10.5],
      ]),
    ],
  };
}

/** A paragraph in the given width. */
export function paragraphBlock(
  text: string,
  width: number,
  style: { readonly role?: TextItem["role"]; readonly strong?: boolean } = {},
): Block {
  const lines = wrapPoints(text, width, TEXT_POINTS.small, style.strong);
  return {
    height: lines.length * lineHeight("small") + 2,
    draw: ([x, y]) => lines.map((line, i) => typeLine(line, [x, y - i * lineHeight("small")], style)),
  };
}

/** A row of a table: name at the left, figure at the right. A long name is wrapped beside it. */
export function rowBlock(name: string, value: string, width: number, isTotal = false): Block {
  const valueWidth = itemPoints({ text: value, size: "small", strong: isTotal });
  const lines = wrapPoints(name, width - valueWidth - 8, TEXT_POINTS.small, isTotal);
  const height = Math.max(1, lines.length) * lineHeight("small") + 2;
  return {
    height,
    draw: ([x, y], all) => [
      ...lines.map((line, i) => typeLine(line, [x, y - 1 - i * lineHeight("small")], { strong: isTotal })),
      typeLine(value, [x + all, y - 1], { anchor: "end", strong: isTotal }),
      paperLine("rule-line", [
        [x, y - height],
        [x + all, y - height],
      ]),
    ],
  };
}

/** White space. */
export function spaceBlock(height: number): Block {
  return { height, draw: () => [] };
}
