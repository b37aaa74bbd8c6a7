/** Copper, hardware and the places of the ties as blocks for a column of the sheet. */
import type { Report } from "../../rules/report.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import { copperText, lengthText } from "../../rules/words/lengths.ts";
import { runNames } from "../../rules/words/runs.ts";
import { type Block, headingBlock, paragraphBlock, rowBlock } from "./blocks.ts";
import type { ListOptions } from "./finding-list.ts";

export function copperBlocks(report: Report, { units, width }: ListOptions): Block[] {
  const { conductor, hardware, weightPounds } = report.takeoff;
  const { ring } = report;
  const blocks = [headingBlock("Copper", "proposed broken, recorded solid")];
  if (ring.pending)
    blocks.push(
      paragraphBlock(
        "The routes of the branches are not worked out: they are missing here, and lengths may grow.",
        width,
      ),
    );
  for (const [run, name] of runNames(report)) {
    if (conductor[run] !== 0) blocks.push(rowBlock(capitalized(name), copperText(conductor[run], units), width));
  }
  blocks.push(rowBlock("Copper in all", copperText(conductor.total, units), width, true));
  blocks.push(rowBlock("Weight", `${weightPounds.toFixed(1)} lb`, width));
  if (ring.loops.length > 0) {
    const even = `Ring laid evenly, ${lengthText(ring.offset, units)} out`;
    blocks.push(rowBlock(even, copperText(ring.length, units), width));
    const legal = ring.legalIn === "part" ? "Shortest legal ring, where one fits" : "Shortest legal ring";
    blocks.push(rowBlock(legal, copperText(ring.shortestLegal, units), width));
  }
  for (const { item, count } of hardware) blocks.push(rowBlock(capitalized(item), String(count), width));
  return blocks;
}

/** Where each tie goes, taped along the inside wall from the first corner, which the plan marks with a wedge. */
export function tieBlocks(report: Report, { units, width, names }: ListOptions): Block[] {
  if (report.ties.length === 0) return [];
  return [
    headingBlock("Ties", "along the inside wall from the wedge"),
    ...report.ties.map((tie, i) => {
      const pools = tie.between.filter((end) => end !== "perimeter").map((id) => names.get(id) ?? id);
      const state = tie.present ? "recorded" : "needed";
      return rowBlock(
        `T${i + 1}  ${capitalized(pools.join(", "))}, ${state}`,
        lengthText(tie.distanceAlong, units),
        width,
      );
    }),
  ];
}
