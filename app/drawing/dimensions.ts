/** Dimensions: each body's length and width, and how far the ring lies from the inside wall. Ticks, not arrows. */
import { edgeLength, pointAt, tangentAt } from "../../geometry/edge.ts";
import { areaFrom } from "../../geometry/outline.ts";
import { boundsUnion } from "../../geometry/points.ts";
import type { Bounds, Point } from "../../geometry/types.ts";
import type { PoolElement } from "../../rules/site/elements.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { chosenLoops } from "./copper-layers.ts";
import type { Drafting } from "./drafting.ts";
import { readable } from "./part-layers.ts";
import { lineSteps } from "./steps.ts";

/** Paper from the drawing to the first line of dimensions, and from one line to the next, points. */
const FIRST_LINE = 15;
const NEXT_LINE = 15;
/** A dimension stays this near to the water when the yard goes on much farther, inches: past the reach of fixed metal. */
const NEAR = 84;
/** How far a yard may go on before dimensions move in from its edge, inches. */
const YARD = 720;
/** How far a figure stands over its line, points. */
const LIFT = 2.4;
/** The most lines of dimensions on a side. */
const MOST_LINES = 3;

/** Where lengths and widths are written: on the side where the water is nearer to the edge of the drawing. */
interface Sides {
  readonly lengths: "bottom" | "top";
  readonly widths: "left" | "right";
}

function sidesFor(bounds: Bounds, waters: Bounds): Sides {
  return {
    lengths: bounds.maxY - waters.maxY < waters.minY - bounds.minY ? "top" : "bottom",
    widths: waters.minX - bounds.minX < bounds.maxX - waters.maxX ? "left" : "right",
  };
}

function boxOf(pool: PoolElement): Bounds {
  return areaFrom(pool.outline).outer.bounds;
}

/** What a sheet has to leave free on each side of the plan for the dimensions, points. */
export function dimensionRoom(
  bounds: Bounds,
  pools: readonly PoolElement[],
): Record<"left" | "right" | "top" | "bottom", number> {
  const room = { left: 0, right: 0, top: 0, bottom: 0 };
  const lines = Math.min(MOST_LINES, pools.length);
  if (lines === 0) return room;
  const { lengths, widths } = sidesFor(bounds, boundsUnion(pools.map(boxOf)));
  const height = FIRST_LINE + (lines - 1) * NEXT_LINE + 10;
  return { ...room, [lengths]: height, [widths]: height };
}

/** Draws the dimensions of the largest bodies and of the ring. */
export function drawDimensions(bounds: Bounds, drafting: Drafting): void {
  if (drafting.pools.length === 0) return;
  const waters = boundsUnion(drafting.pools.map(boxOf));
  const { lengths, widths } = sidesFor(bounds, waters);
  const boxes = drafting.pools
    .map(boxOf)
    .sort((a, b) => b.maxX - b.minX + (b.maxY - b.minY) - (a.maxX - a.minX + (a.maxY - a.minY)))
    .slice(0, MOST_LINES)
    .reverse();
  const edge = (water: number, drawing: number) =>
    Math.abs(drawing - water) > YARD ? water + Math.sign(drawing - water) * NEAR : drawing;
  boxes.forEach((box, i) => {
    const out = drafting.inches(FIRST_LINE + i * NEXT_LINE);
    const isTop = lengths === "top";
    const isLeft = widths === "left";
    const y = isTop ? edge(waters.maxY, bounds.maxY) + out : edge(waters.minY, bounds.minY) - out;
    const x = isLeft ? edge(waters.minX, bounds.minX) - out : edge(waters.maxX, bounds.maxX) + out;
    const fromY = isTop ? box.maxY : box.minY;
    const fromX = isLeft ? box.minX : box.maxX;
    drawDimension([box.minX, fromY], [box.maxX, fromY], [box.minX, y], [box.maxX, y], drafting);
    drawDimension([fromX, box.minY], [fromX, box.maxY], [x, box.minY], [x, box.maxY], drafting);
  });
  drawRingOffset(drafting);
}

/** One dimension: extension lines from what is measured to the line a -> b, which is ticked at its ends and says its length. */
export function drawDimension(from: Point, to: Point, a: Point, b: Point, drafting: Drafting): void {
  const turn = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  const gap = drafting.inches(3);
  for (const [start, end] of [
    [from, a],
    [to, b],
  ] as const) {
    const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
    if (length <= 2 * gap) continue;
    const way: Point = [(end[0] - start[0]) / length, (end[1] - start[1]) / length];
    const steps = lineSteps([
      [start[0] + way[0] * gap, start[1] + way[1] * gap],
      [end[0] + way[0] * gap, end[1] + way[1] * gap],
    ]);
    drafting.add("dimensions", { kind: "shape", role: "extension", steps });
  }
  drafting.add("dimensions", { kind: "shape", role: "dimension", steps: lineSteps([a, b]) });
  for (const at of [a, b]) drafting.add("dimensions", { kind: "symbol", symbol: "tick", at, turn, role: "dimension" });
  const angle = (readable(turn) * Math.PI) / 180;
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const by: Point = [-Math.sin(angle) * LIFT, Math.cos(angle) * LIFT];
  drafting.add("dimensions", {
    kind: "text",
    at: [middle[0] + drafting.inches(by[0]), middle[1] + drafting.inches(by[1])],
    beside: { of: middle, by },
    text: lengthText(Math.hypot(b[0] - a[0], b[1] - a[1]), drafting.units),
    size: "body",
    role: "ink",
    anchor: "middle",
    turn: readable(turn),
    plate: true,
  });
}

/** From the middle of the longest straight edge of the first body that the ring goes round, square out to the ring. */
function drawRingOffset(drafting: Drafting): void {
  const { ring } = drafting.report;
  const [loop] = chosenLoops(drafting);
  const isEven = loop !== undefined && ring.loops.includes(loop);
  const pool = drafting.pools.find(({ id }) => loop?.pools.includes(id));
  if (!isEven || !pool) return;
  const { edges } = areaFrom(pool.outline).outer;
  const straight = edges.filter((edge) => edge.kind === "line").sort((a, b) => edgeLength(b) - edgeLength(a));
  for (const edge of straight) {
    const tangent = tangentAt(edge, 0.5);
    for (const share of [0.36, 0.64, 0.5]) {
      const wall = pointAt(edge, share);
      const out: Point = [wall[0] + tangent[1] * ring.offset, wall[1] - tangent[0] * ring.offset];
      if (!isOnLoop(out, loop.path)) continue;
      const turn = (Math.atan2(out[1] - wall[1], out[0] - wall[0]) * 180) / Math.PI;
      drafting.add("dimensions", { kind: "shape", role: "dimension", steps: lineSteps([wall, out]) });
      for (const at of [wall, out])
        drafting.add("dimensions", { kind: "symbol", symbol: "tick", at, turn, role: "dimension" });
      const beside = drafting.inches(2.5);
      const isUpright = Math.abs(tangent[0]) > Math.abs(tangent[1]);
      drafting.add("dimensions", {
        kind: "text",
        at: isUpright
          ? [(wall[0] + out[0]) / 2 + beside, (wall[1] + out[1]) / 2 - drafting.inches(2.6)]
          : [(wall[0] + out[0]) / 2, (wall[1] + out[1]) / 2 + beside],
        text: lengthText(ring.offset, drafting.units),
        size: "small",
        role: "ink",
        anchor: isUpright ? "start" : "middle",
        turn: 0,
        plate: true,
      });
      return;
    }
  }
}

/** Whether the ring really runs there: within an inch, however finely it was flattened. */
function isOnLoop(p: Point, path: readonly Point[]): boolean {
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1], path[i]];
    if (!a || !b) continue;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) continue;
    const along = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length;
    const off = Math.abs((p[0] - a[0]) * (b[1] - a[1]) - (p[1] - a[1]) * (b[0] - a[0])) / length;
    if (along >= -1 && along <= length + 1 && off <= 1) return true;
  }
  return false;
}
