/** The outline of a site as rows: name, kind, size, position and the worst outcome of each element; filter and order. */
import { pathLength } from "../../geometry/outline.ts";
import type { Bounds } from "../../geometry/types.ts";
import { isKnown } from "../../rules/measures/reading-notes.ts";
import { shapeOf } from "../../rules/measures/shapes.ts";
import { OUTCOMES_WORST_FIRST, type Outcome, type Report } from "../../rules/report.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import { KINDS, type Kind } from "../../rules/site/elements.ts";
import { KIND_LABELS } from "../../rules/site/kind-labels.ts";
import type { Arrangement } from "../../rules/site/site.ts";
import { capitalized, elementName, namesOf } from "../../rules/words/element-names.ts";
import { copperText, type Units } from "../../rules/words/lengths.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { elementBounds } from "../drawing/element-bounds.ts";
import type { AnyElement } from "../edits/edit.ts";

export type OutlineOrder = "file" | "kind";

export interface OutlineRow {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  /** Length of a line, width by height of an area; empty for a point. */
  readonly size: string;
  /** Where its middle lies: right and up from the site's origin. */
  readonly position: string;
  readonly outcome: Outcome | null;
  /** How it is handled on the sheet, in words: `locked`, `hidden`, `in a group`; empty for none. */
  readonly handled: string;
}

/** One row. Kept by element, as elements never change in place. */
const described = new WeakMap<AnyElement, Map<string, Described>>();
type Described = Omit<OutlineRow, "outcome" | "handled">;

function describe(element: AnyElement, units: Units): Described {
  const known = described.get(element)?.get(units);
  if (known) return known;
  const bounds = elementBounds(element);
  const row = {
    id: element.id,
    name: capitalized(elementName(element)),
    kind: isKnownKind(element.kind) ? KIND_LABELS[element.kind as Kind].label : `Unknown kind “${element.kind}”`,
    size: sizeOf(element, bounds, units),
    position: bounds === null ? "" : positionText(bounds, units),
  };
  described.set(element, (described.get(element) ?? new Map()).set(units, row));
  return row;
}

function sizeOf(element: AnyElement, bounds: Bounds | null, units: Units): string {
  if (bounds === null || !isKnown(element)) return "";
  const shape = element.kind === "pool" ? null : shapeOf(element);
  if (shape?.kind === "point") return "";
  if (shape?.kind === "path") return `${copperText(pathLength(shape.path), units)} long`;
  return `${copperText(bounds.maxX - bounds.minX, units)} by ${copperText(bounds.maxY - bounds.minY, units)}`;
}

function positionText(bounds: Bounds, units: Units): string {
  const x = copperText((bounds.minX + bounds.maxX) / 2, units);
  const y = copperText((bounds.minY + bounds.maxY) / 2, units);
  return `at ${x}, ${y}`;
}

/** Rows in the order asked for. `report` null: no outcomes yet. */
export function outlineRows(
  elements: readonly AnyElement[],
  report: Pick<Report, "findings"> | null,
  units: Units,
  order: OutlineOrder,
  arrangement: Arrangement = {},
): OutlineRow[] {
  const marks: readonly (readonly [string, ReadonlySet<string>])[] = [
    ["hidden", new Set(arrangement.hidden)],
    ["locked", new Set(arrangement.locked)],
    ["in a group", new Set(arrangement.groups?.flatMap((group) => group.elements))],
  ];
  const worst = new Map<string, number>();
  for (const { element, body, outcome } of report?.findings ?? []) {
    const about = element ?? body;
    if (about === null) continue;
    const rank = OUTCOMES_WORST_FIRST.indexOf(outcome);
    worst.set(about, Math.min(worst.get(about) ?? rank, rank));
  }
  const names = namesOf(elements);
  const rows = elements.map((element): OutlineRow => {
    const rank = worst.get(element.id);
    const handled = marks.flatMap(([word, ids]) => (ids.has(element.id) ? [word] : [])).join(", ");
    const outcome = rank === undefined ? null : (OUTCOMES_WORST_FIRST[rank] ?? null);
    const row = describe(element, units);
    // Two of one number, as from a site written elsewhere, are told apart as they are in the findings.
    const name = capitalized(names.get(element.id) ?? row.name);
    return { ...row, name, outcome, handled };
  });
  if (order === "file") return rows;
  const ranks = new Map(elements.map((element) => [element.id, kindRank(element.kind)]));
  return rows.sort((a, b) => (ranks.get(a.id) ?? 0) - (ranks.get(b.id) ?? 0));
}

function kindRank(kind: string): number {
  const at = (KINDS as readonly string[]).indexOf(kind);
  return at < 0 ? KINDS.length : at;
}

/** The rows that hold every word of the filter, in name, kind, id, outcome, or how it is handled. */
export function filteredRows(rows: readonly OutlineRow[], filter: string): readonly OutlineRow[] {
  const words = filter.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return rows;
  return rows.filter((row) => {
    const outcome = row.outcome === null ? "" : OUTCOME_WORDS[row.outcome];
    const text = `${row.name} ${row.kind} ${row.id} ${outcome} ${row.handled}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
}

/** The slice of equally high rows that a scrolled box shows, with a few to spare on both sides. */
export function rowsInView(count: number, rowHeight: number, top: number, height: number, spare = 6): [number, number] {
  const first = Math.max(0, Math.floor(top / rowHeight) - spare);
  const last = Math.min(count, Math.ceil((top + height) / rowHeight) + spare);
  return [Math.min(first, count), Math.max(last, 0)];
}
