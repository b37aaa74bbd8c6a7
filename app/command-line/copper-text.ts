/** The copper of a report as text: ways to bond the perimeter, ring, ties with their places, takeoff and hardware. */
import { optionLabel } from "../../rules/site/kind-labels.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import { copperText, lengthText } from "../../rules/words/lengths.ts";
import { runNames } from "../../rules/words/runs.ts";
import { heading, leaderLine, wrapped } from "./text-lines.ts";
import type { Writing } from "./writing.ts";

/** Widest table, characters: name and number stay within one glance. */
const TABLE = 60;

/** Ways to bond the perimeter, ring, ties and takeoff, each a block. */
export function copperLines(writing: Writing): string[][] {
  return [methodLines(writing), ringLines(writing), tieLines(writing), takeoffLines(writing)];
}

function methodLines(writing: Writing): string[] {
  const { report, width, units, nameOf } = writing;
  if (report.methods.length === 0) return [];
  return [
    ...heading("Ways to bond the perimeter", writing),
    ...report.methods.flatMap(({ pools, choices }) => [
      ...wrapped(`${capitalized(pools.map(nameOf).join(" and "))}:`, width),
      ...choices.flatMap(({ method, copper, connections, chosen, note }) => {
        const name = `${optionLabel(method, "settings.perimeterMethod")}${chosen ? " (chosen)" : ""}`;
        const amount =
          copper === null
            ? "not allowed"
            : `${copperText(copper, units)}, ${connections} joint${connections === 1 ? "" : "s"}`;
        return [leaderLine(name, amount, TABLE), ...(note === "" ? [] : wrapped(note, width, "      "))];
      }),
    ]),
  ];
}

function ringLines(writing: Writing): string[] {
  const { report, width, units, nameOf } = writing;
  const { ring } = report;
  const lines = heading("Ring", writing);
  if (ring.pending) lines.push("The routes of this plan are still being worked out.");
  if (ring.loops.length === 0) lines.push("No stretch of perimeter needs a ring by this plan.");
  else {
    const loops = ring.loops.length === 1 ? "" : `, ${ring.loops.length} loops`;
    lines.push(
      ...wrapped(
        `${copperText(ring.length, units)} laid evenly at ${lengthText(ring.offset, units)} from the inside wall${loops}; ${ring.legalIn === "part" ? "where a legal ring fits, the shortest" : "the shortest legal ring"} is ${copperText(ring.shortestLegal, units)}.`,
        width,
      ),
    );
    if (ring.loops.length > 1) {
      for (const loop of ring.loops) {
        lines.push(leaderLine(loop.pools.map(nameOf).join(" and "), copperText(loop.length, units), TABLE));
      }
    }
  }
  for (const stretch of ring.tooClose ?? []) {
    lines.push(
      ...wrapped(
        `No legal place for ${copperText(stretch.length, units)} of it: a wall or building is too near.`,
        width,
      ),
    );
  }
  return lines;
}

function tieLines(writing: Writing): string[] {
  const { report, units, nameOf } = writing;
  if (report.ties.length === 0) return [];
  return [
    ...heading("Ties, along the inside wall from its first corner", writing),
    ...report.ties.map((tie, i) => {
      const state = tie.present ? `recorded${tie.recorded === null ? "" : ` as ${tie.recorded}`}` : "needed";
      const pool = tie.between.filter((end) => end !== "perimeter").map(nameOf);
      return leaderLine(
        `T${i + 1}  ${capitalized(pool.join(", "))}, ${state}`,
        lengthText(tie.distanceAlong, units),
        TABLE,
      );
    }),
  ];
}

function takeoffLines(writing: Writing): string[] {
  const { report, units } = writing;
  const { conductor, hardware, weightPounds } = report.takeoff;
  return [
    ...heading("Copper and hardware", writing),
    ...runNames(report).map(([run, name]) => leaderLine(name, copperText(conductor[run], units), TABLE)),
    leaderLine("copper in all", copperText(conductor.total, units), TABLE),
    leaderLine("weight", `${weightPounds.toFixed(1)} lb`, TABLE),
    ...hardware.map(({ item, count }) => leaderLine(item, String(count), TABLE)),
  ];
}
