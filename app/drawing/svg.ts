/** Writes sheets and scenes as SVG: true to scale (1 unit = 1 point), every text escaped, nothing fetched from anywhere. */
import { grownBounds } from "../../geometry/points.ts";
import type { Point } from "../../geometry/types.ts";
import { HATCHES, type HatchName } from "./hatches.ts";
import { MARK_POINTS, markDrawing } from "./mark-shapes.ts";
import { type LineStyle, PALETTES, type Palette, type PaletteName } from "./palette.ts";
import {
  type Item,
  LETTER_SPACING,
  type MarkItem,
  type Scene,
  type ShapeItem,
  type Step,
  type SymbolItem,
  TEXT_POINTS,
  type TextItem,
} from "./scene.ts";
import { type Group, paperBox, type Sheet, type View } from "./sheet.ts";
import { type Part, SYMBOLS } from "./symbols.ts";
import { itemPoints } from "./text-width.ts";
import { escapeXml } from "./xml.ts";

export const FONT_FAMILY = "'IBM Plex Sans', 'DejaVu Sans', sans-serif";

/** How far the veil behind a finding in focus reaches past the drawing, inches: past any sheet's edge. */
const FAR = 1e5;

/** Paper between two sheets of one file, points. */
const BETWEEN_SHEETS = 24;

export interface SvgOptions {
  readonly palette?: PaletteName;
  /** For those who do not see the drawing. */
  readonly title: string;
  readonly description?: string;
}

/** The sheets one under the other, each at its true size. */
export function sheetsToSvg(sheets: readonly Sheet[], options: SvgOptions): string {
  const palette = PALETTES[options.palette ?? "sheet"];
  const width = Math.max(...sheets.map((sheet) => sheet.width));
  const height = sheets.reduce((sum, sheet) => sum + sheet.height + BETWEEN_SHEETS, -BETWEEN_SHEETS);
  let top = 0;
  const bodies = sheets.map((sheet, i) => {
    const writer = new SvgWriter(palette, sheet.height, `s${i + 1}`);
    const body = sheet.groups.map((group) => writer.group(group)).join("");
    const paper = `<rect width="${num(sheet.width)}" height="${num(sheet.height)}" fill="${palette.paper}"/>`;
    const text = `<g id="sheet-${i + 1}" transform="translate(0 ${num(top)})">${writer.definitions()}${paper}\n${body}</g>\n`;
    top += sheet.height + BETWEEN_SHEETS;
    return text;
  });
  return document(width, height, bodies.join(""), options);
}

/** The plan alone, as large as its box and `margin` points round it. An empty scene gives an empty page of one inch. */
export function sceneToSvg(scene: Scene, options: SvgOptions & { readonly margin?: number }): string {
  const palette = PALETTES[options.palette ?? "sheet"];
  const margin = options.margin ?? 36;
  const k = scene.pointsPerInch;
  const { minX, minY, maxX, maxY } = scene.bounds ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  const width = (maxX - minX) * k + 2 * margin;
  const height = (maxY - minY) * k + 2 * margin;
  const view: View = { scale: k, origin: [margin - minX * k, margin - minY * k] };
  const writer = new SvgWriter(palette, height, "plan");
  const body = sceneGroups(scene, view)
    .map((group) => writer.group(group))
    .join("");
  const paper = `<rect width="${num(width)}" height="${num(height)}" fill="${palette.paper}"/>\n`;
  return document(width, height, writer.definitions() + paper + body, options);
}

/** The layers of a scene as groups of a sheet. A finding in focus comes last, over a veil that pushes all else back. */
export function sceneGroups(scene: Scene, view: View, clip?: Group["clip"]): Group[] {
  const groups = scene.layers
    .filter(({ items }) => items.length > 0)
    .map(({ name, items }): Group => ({ name, view, items, ...(clip ? { clip } : {}) }));
  const focus = groups.filter(({ name }) => name === "focus");
  if (focus.length === 0 || scene.bounds === null) return groups;
  const veil: Group = {
    name: "veil",
    view,
    items: [paperBox("veil", grownBounds(scene.bounds, FAR))],
    ...(clip ? { clip } : {}),
  };
  return [...groups.filter(({ name }) => name !== "focus"), veil, ...focus];
}

function document(width: number, height: number, body: string, options: SvgOptions): string {
  const description = options.description ? `<desc>${escapeXml(options.description)}</desc>\n` : "";
  return (
    `<?xml version="1.0" encoding="UTF-8"?>\n` +
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(width / 72)}in" height="${num(height / 72)}in" ` +
    `viewBox="0 0 ${num(width)} ${num(height)}" font-family="${FONT_FAMILY}" role="img">\n` +
    `<title>${escapeXml(options.title)}</title>\n${description}${body}</svg>\n`
  );
}

/** A number for SVG: thousandths of a point are finer than any printer. */
export function num(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`A drawing cannot hold the number ${value}.`);
  return String(Math.round(value * 1000) / 1000 || 0);
}

class SvgWriter {
  private readonly palette: Palette;
  private readonly height: number;
  private readonly prefix: string;
  private readonly hatches = new Set<HatchName>();
  private readonly clips: string[] = [];

  /** `prefix` keeps the names of patterns and clips apart where several sheets share a file. */
  constructor(palette: Palette, height: number, prefix: string) {
    this.palette = palette;
    this.height = height;
    this.prefix = prefix;
  }

  /** Patterns and clips that what was written so far refers to. */
  definitions(): string {
    const patterns = [...this.hatches].map((name) => this.pattern(name));
    if (patterns.length + this.clips.length === 0) return "";
    return `<defs>\n${[...patterns, ...this.clips].join("\n")}\n</defs>\n`;
  }

  group(group: Group): string {
    // Leaders first, so that none runs over the number of another.
    const leaders = group.items.map((item) => (item.kind === "mark" ? this.leader(item, group.view) : ""));
    const items = [...leaders, ...group.items.map((item) => this.item(item, group.view))].filter((text) => text !== "");
    if (items.length === 0) return "";
    let attributes = ` data-layer="${escapeXml(group.name)}"`;
    if (group.clip) {
      const id = `${this.prefix}-clip-${this.clips.length}`;
      const { minX, minY, maxX, maxY } = group.clip;
      const box = `x="${num(minX)}" y="${num(this.height - maxY)}" width="${num(maxX - minX)}" height="${num(maxY - minY)}"`;
      this.clips.push(`<clipPath id="${id}"><rect ${box}/></clipPath>`);
      attributes += ` clip-path="url(#${id})"`;
    }
    return `<g${attributes}>\n${items.join("\n")}\n</g>\n`;
  }

  private item(item: Item, view: View): string {
    switch (item.kind) {
      case "shape":
        return this.shape(item, view);
      case "symbol":
        return this.symbol(item, view);
      case "text":
        return this.text(item, this.at(item.at, view));
      case "mark":
        return this.mark(item, view);
    }
  }

  private at([x, y]: Point, { scale, origin }: View): Point {
    return [x * scale + origin[0], this.height - (y * scale + origin[1])];
  }

  private shape(item: ShapeItem, view: View): string {
    if (item.steps.length === 0) return "";
    const d = item.steps.map((step) => this.step(step, view)).join("");
    const style = this.palette.roles[item.role];
    const about = aboutOf(item);
    const main = `<path d="${d}"${paintOf(style)}${about}/>`;
    if (!item.hatch) return main;
    this.hatches.add(item.hatch);
    const hatch = `url(#${this.prefix}-${item.hatch})`;
    // The hatch lies between the fill and the edge, so that it never blunts the line.
    const { fill, ...line } = style;
    const ground = fill === undefined ? "" : `<path d="${d}" fill="${fill}" fill-rule="evenodd"/>`;
    return `${ground}<path d="${d}" fill="${hatch}" fill-rule="evenodd"/><path d="${d}"${paintOf(line)}${about}/>`;
  }

  private step(step: Step, view: View): string {
    if (step.step === "close") return "Z";
    const [x, y] = this.at(step.to, view);
    const to = `${num(x)} ${num(y)}`;
    if (step.step === "move") return `M${to}`;
    if (step.step === "line") return `L${to}`;
    const r = num(step.radius * view.scale);
    return `A${r} ${r} 0 ${Math.abs(step.sweep) > Math.PI ? 1 : 0} ${step.sweep > 0 ? 0 : 1} ${to}`;
  }

  private symbol(item: SymbolItem, view: View): string {
    const [x, y] = this.at(item.at, view);
    const style = this.palette.roles[item.role];
    const parts = SYMBOLS[item.symbol].parts.map((part) => partMarkup(part, style)).join("");
    const turn = item.turn % 360 === 0 ? "" : ` rotate(${num(-item.turn)})`;
    const letters = item.letters
      ? `<text y="${num(MARK_POINTS * 0.36)}" text-anchor="middle" font-size="${MARK_POINTS}" font-weight="600" fill="${style.stroke ?? this.palette.texts.ink}">${escapeXml(item.letters)}</text>`
      : "";
    return `<g transform="translate(${num(x)} ${num(y)})${turn}"${aboutOf(item)}>${parts}${letters}</g>`;
  }

  private text(item: TextItem, [x, y]: Point): string {
    const size = TEXT_POINTS[item.size];
    const turn = item.turn % 360 === 0 ? "" : ` transform="rotate(${num(-item.turn)} ${num(x)} ${num(y)})"`;
    const width = itemPoints(item);
    const fit = [...item.text].length > 1 ? ` textLength="${num(width)}" lengthAdjust="spacingAndGlyphs"` : "";
    const halo = item.plate
      ? ` stroke="${this.palette.paper}" stroke-width="2.4" stroke-linejoin="round" paint-order="stroke"`
      : "";
    const attributes =
      `x="${num(x)}" y="${num(y)}" font-size="${size}"${item.strong ? ' font-weight="600"' : ""}` +
      `${item.anchor === "start" ? "" : ` text-anchor="${item.anchor}"`} fill="${this.palette.texts[item.role]}"` +
      `${item.spaced ? ` letter-spacing="${num(size * LETTER_SPACING)}"` : ""}`;
    return `<text ${attributes}${fit}${halo}${turn}${aboutOf(item)}>${escapeXml(item.text)}</text>`;
  }

  private mark(item: MarkItem, view: View): string {
    const [x, y] = this.at(item.at, view);
    const text = String(item.number);
    const drawing = markDrawing(item.outcome, text);
    const style = this.palette.roles[drawing.role];
    const parts = drawing.parts.map((part) => partMarkup(part, style)).join("");
    const number = `<text y="${num(MARK_POINTS * 0.36)}" text-anchor="middle" font-size="${MARK_POINTS}" font-weight="600" fill="${this.palette.texts[drawing.textRole]}">${text}</text>`;
    return `<g transform="translate(${num(x)} ${num(y)})"${aboutOf(item)}>${parts}${number}</g>`;
  }

  private leader(item: MarkItem, view: View): string {
    if (!item.from) return "";
    const [x, y] = this.at(item.at, view);
    const [fromX, fromY] = this.at(item.from, view);
    const style = this.palette.roles.leader;
    const dot = `<circle cx="${num(fromX)}" cy="${num(fromY)}" r="0.9"${paintOf({ fill: style.stroke })}/>`;
    return `<path d="M${num(fromX)} ${num(fromY)}L${num(x)} ${num(y)}"${paintOf(style)}/>${dot}`;
  }

  private pattern(name: HatchName): string {
    const { width, height, turn, weight, lines, dots, rings } = HATCHES[name];
    const color = this.palette.hatches[name];
    const d = lines.map((line) => `M${pairs(line).join("L")}`).join("");
    const parts = [
      d === "" ? "" : `<path d="${d}" fill="none" stroke="${color}" stroke-width="${weight}"/>`,
      ...dots.map(([x, y, r]) => `<circle cx="${x}" cy="${y}" r="${r}" fill="${color}"/>`),
      ...rings.map(
        ([x, y, r]) => `<circle cx="${x}" cy="${y}" r="${r}" fill="none" stroke="${color}" stroke-width="${weight}"/>`,
      ),
    ].join("");
    const turned = turn === 0 ? "" : ` patternTransform="rotate(${turn})"`;
    return `<pattern id="${this.prefix}-${name}" patternUnits="userSpaceOnUse" width="${width}" height="${height}"${turned}>${parts}</pattern>`;
  }
}

function pairs(line: readonly number[]): string[] {
  const texts: string[] = [];
  for (let i = 0; i + 1 < line.length; i += 2) texts.push(`${num(line[i] ?? 0)} ${num(line[i + 1] ?? 0)}`);
  return texts;
}

function aboutOf(item: { readonly element?: string; readonly findings?: readonly string[] }): string {
  const element = item.element === undefined ? "" : ` data-element="${escapeXml(item.element)}"`;
  const findings = item.findings?.length ? ` data-finding="${escapeXml(item.findings.join(" "))}"` : "";
  return element + findings;
}

function paintOf(style: LineStyle): string {
  const opacity = style.opacity === undefined ? "" : ` opacity="${num(style.opacity)}"`;
  const fill = `${style.fill === undefined ? ' fill="none"' : ` fill="${style.fill}" fill-rule="evenodd"`}${opacity}`;
  if (style.stroke === undefined) return fill;
  const dash = style.dash ? ` stroke-dasharray="${style.dash.map(num).join(" ")}"` : "";
  const cap = style.cap ? ` stroke-linecap="${style.cap}"` : "";
  return `${fill} stroke="${style.stroke}" stroke-width="${num(style.weight ?? 1)}" stroke-linejoin="round"${dash}${cap}`;
}

/** A part of a symbol; the part's y runs up, the page's down. Symbols are drawn in whole lines whatever their role's pattern. */
function partMarkup(part: Part, style: LineStyle): string {
  const { dash: _pattern, ...whole } = style;
  const { fill: _fill, ...edge } = whole;
  const paint = part.paint === "area" ? whole : part.paint === "edge" ? edge : { fill: style.stroke ?? style.fill };
  if ("circle" in part) {
    const [x, y, r] = part.circle;
    return `<circle cx="${num(x)}" cy="${num(-y)}" r="${num(r)}"${paintOf(paint)}/>`;
  }
  const flipped = part.line.map((value, i) => (i % 2 === 1 ? -value : value));
  return `<path d="M${pairs(flipped).join("L")}${part.closed ? "Z" : ""}"${paintOf(paint)}/>`;
}
