/**
 * Whether a straight segment crosses no barrier. Touching a barrier, and following its line, is allowed.
 *
 * Stages. 1. Every piece near the segment is compared with it in the segment's own frame (t along, o to the left). The
 * piece crosses it (blocked), ends on it (a contact with a corner), runs along it, or an end of the segment lies on the
 * piece (blocked when the other end lies on its covered side). 2. Contacts with corners are put in order along the
 * segment, and the sides of the barrier's line on which the path can be are carried from one to the next: a path that
 * follows a thin wall stays on its side, and passes a corner only within one free sector.
 *
 * Terms. Eye: an end of the segment; at a turning corner it says in which sector it stands, at a pool's edge in which
 * directions the water lies: where a barrier touches the edge, a path goes on only on the side that the water is on.
 */
import { type BarrierMap, type Piece, type Sector, TURN } from "./barrier-map.ts";
import { distanceBetween } from "./points.ts";
import { sortBy } from "./short-lists.ts";
import { SIGHT_SLACK, STRAIGHT_ANGLE } from "./tolerances.ts";
import type { Point } from "./types.ts";

/** Directions counter-clockwise from `start` through `span`, radians. */
export interface Cone {
  readonly start: number;
  readonly span: number;
}

export interface Eye {
  readonly at: Point;
  /** Set when the path leaves or reaches the position within this sector only. */
  readonly sector?: Sector;
  /** Set on a pool's edge, where a path starts: the directions in which the water lies. Asked for only at a barrier. */
  readonly water?: () => readonly Cone[];
}

const LEFT = 1;
const RIGHT = 2;
const BOTH = 3;

/** Bits of `directionIn`: strictly inside the sector, along its first piece, along its last. */
const INSIDE = 1;
const ALONG_START = 2;
const ALONG_END = 4;

interface Contact {
  readonly t: number;
  readonly corner: number;
}

interface Run {
  readonly from: number;
  readonly to: number;
  /** Sides of the segment on which a path beside the piece is free. */
  readonly sides: number;
}

/** What the segment that is looked at meets; emptied for each. */
const contacts: Contact[] = [];
const runs: Run[] = [];

/** The piece of each map that blocked a segment last. */
const blockers = new WeakMap<BarrierMap, Piece>();

/** True when the straight path between the eyes crosses no barrier. Both are taken to be outside of the solids' insides. */
export function canSee(map: BarrierMap, from: Eye, to: Eye): boolean {
  const a = from.at;
  const b = to.at;
  const length = distanceBetween(a, b);
  if (length <= SIGHT_SLACK) {
    if (from.sector && to.sector && from.sector !== to.sector) return false;
    return !to.sector || touchesWater(from, to.sector);
  }
  const dx = (b[0] - a[0]) / length;
  const dy = (b[1] - a[1]) / length;
  // What blocked the last segment mostly blocks the next.
  const last = blockers.get(map);
  if (last && isBlockedBy(last, from, b, dx, dy, length, contacts, runs)) return false;
  contacts.length = 0;
  runs.length = 0;
  for (const piece of map.hasFewPieces ? map.pieces : piecesAlong(map, a, b)) {
    if (!isBlockedBy(piece, from, b, dx, dy, length, contacts, runs)) continue;
    blockers.set(map, piece);
    return false;
  }
  if (contacts.length === 0 && runs.length === 0) return true;
  return passesContacts(map, from, to, Math.atan2(dy, dx), length, contacts, runs);
}

function piecesAlong(map: BarrierMap, a: Point, b: Point): Piece[] {
  const box = {
    minX: Math.min(a[0], b[0]) - SIGHT_SLACK,
    minY: Math.min(a[1], b[1]) - SIGHT_SLACK,
    maxX: Math.max(a[0], b[0]) + SIGHT_SLACK,
    maxY: Math.max(a[1], b[1]) + SIGHT_SLACK,
  };
  return Array.from(map.piecesIn(box), (i) => map.pieces[i] as Piece);
}

/** Stage 1: false when the piece leaves the segment free or only adds to `contacts` and `runs`. */
function isBlockedBy(
  piece: Piece,
  from: Eye,
  b: Point,
  dx: number,
  dy: number,
  length: number,
  contacts: Contact[],
  runs: Run[],
): boolean {
  const a = from.at;
  const ux = piece.a[0] - a[0];
  const uy = piece.a[1] - a[1];
  const vx = piece.b[0] - a[0];
  const vy = piece.b[1] - a[1];
  const ou = dx * uy - dy * ux;
  const ov = dx * vy - dy * vx;
  if ((ou > SIGHT_SLACK && ov > SIGHT_SLACK) || (ou < -SIGHT_SLACK && ov < -SIGHT_SLACK)) return false;
  const tu = dx * ux + dy * uy;
  const tv = dx * vx + dy * vy;
  const last = length + SIGHT_SLACK;
  if ((tu < -SIGHT_SLACK && tv < -SIGHT_SLACK) || (tu > last && tv > last)) return false;

  const onU = Math.abs(ou) <= SIGHT_SLACK && tu >= -SIGHT_SLACK && tu <= last;
  const onV = Math.abs(ov) <= SIGHT_SLACK && tv >= -SIGHT_SLACK && tv <= last;
  if (onU) contacts.push({ t: tu, corner: piece.from });
  if (onV) contacts.push({ t: tv, corner: piece.to });
  const run = runAlong(piece, tu, ou, tv, ov, length);
  if (run) {
    const startsBetween = Math.min(tu, tv) < -SIGHT_SLACK;
    runs.push(startsBetween ? { ...run, sides: run.sides & sidesOnWater(from, Math.atan2(dy, dx)) } : run);
    return false;
  }
  if (onU || onV) return false;

  // Neither end of the piece is on the segment: an end of the segment on the piece, or a crossing.
  const px = (piece.b[0] - piece.a[0]) / piece.length;
  const py = (piece.b[1] - piece.a[1]) / piece.length;
  const sideA = px * -uy - py * -ux;
  const sideB = px * (b[1] - piece.a[1]) - py * (b[0] - piece.a[0]);
  if (Math.abs(sideA) <= SIGHT_SLACK && isBeside(px * -ux + py * -uy, piece)) {
    if (isCovered(piece, sideB)) return true;
    return (sidesOnWater(from, Math.atan2(py, px)) & (sideB > 0 ? LEFT : RIGHT)) === 0;
  }
  const alongB = px * (b[0] - piece.a[0]) + py * (b[1] - piece.a[1]);
  if (Math.abs(sideB) <= SIGHT_SLACK && isBeside(alongB, piece)) return isCovered(piece, sideA);
  return ou > 0 !== ov > 0 && sideA > 0 !== sideB > 0;
}

/** The sides of a line through the eye, in direction `angle`, on which the water lies; both where the eye is at no water. */
function sidesOnWater(eye: Eye, angle: number): number {
  if (!eye.water) return BOTH;
  const left = touchesWater(eye, { start: angle, span: Math.PI });
  const right = touchesWater(eye, { start: angle + Math.PI, span: Math.PI });
  return (left ? LEFT : 0) | (right ? RIGHT : 0);
}

/** True when water lies in some direction of the cone, or the eye is at no water. */
export function touchesWater(eye: Eye, cone: Cone): boolean {
  return !eye.water || eye.water().some((water) => overlap(water, cone));
}

function overlap(one: Cone, other: Cone): boolean {
  const ahead = turned(other.start - one.start);
  const behind = turned(one.start - other.start);
  return shareStart(ahead, one.span, other.span) || shareStart(behind, other.span, one.span);
}

/** Whether a cone that starts `ahead` of another of span `span` lies partly in it; a start within rounding of a full turn is at 0. */
function shareStart(ahead: number, span: number, other: number): boolean {
  if (TURN - ahead <= STRAIGHT_ANGLE) return Math.min(span, other) > STRAIGHT_ANGLE;
  return ahead < span - STRAIGHT_ANGLE && other > STRAIGHT_ANGLE;
}

function isBeside(along: number, piece: Piece): boolean {
  return along >= 0 && along <= piece.length;
}

/** Whether the side (positive: left) of a piece lies inside a solid. */
function isCovered(piece: Piece, side: number): boolean {
  if (Math.abs(side) <= SIGHT_SLACK) return false;
  return side > 0 ? piece.leftCovered : piece.rightCovered;
}

/** The stretch of the segment along which the piece lies on it, or null. */
function runAlong(piece: Piece, tu: number, ou: number, tv: number, ov: number, length: number): Run | null {
  const advance = tv - tu;
  if (Math.abs(advance) <= SIGHT_SLACK) return null;
  const clippedU = Math.min(length, Math.max(0, tu));
  const clippedV = Math.min(length, Math.max(0, tv));
  if (Math.abs(clippedV - clippedU) <= SIGHT_SLACK) return null;
  const slope = (ov - ou) / advance;
  if (Math.abs(ou + slope * (clippedU - tu)) > SIGHT_SLACK) return null;
  if (Math.abs(ou + slope * (clippedV - tu)) > SIGHT_SLACK) return null;
  const left = advance > 0 ? piece.leftCovered : piece.rightCovered;
  const right = advance > 0 ? piece.rightCovered : piece.leftCovered;
  return {
    from: Math.min(clippedU, clippedV),
    to: Math.max(clippedU, clippedV),
    sides: (left ? 0 : LEFT) | (right ? 0 : RIGHT),
  };
}

/**
 * Where a direction lies in the closure of a sector (0: outside). Along a piece means within SIGHT_SLACK of it over the
 * `reach` inches that the path goes in this direction.
 */
export function directionIn(sector: Sector, angle: number, reach: number): number {
  const past = turned(angle - sector.start);
  let bits = 0;
  if (isAlong(past, Math.min(reach, sector.startLength))) bits |= ALONG_START;
  if (isAlong(turned(past - sector.span), Math.min(reach, sector.endLength))) bits |= ALONG_END;
  return bits === 0 && past < sector.span ? INSIDE : bits;
}

function isAlong(angle: number, reach: number): boolean {
  const off = angle > Math.PI ? TURN - angle : angle;
  return off < 1 && Math.sin(off) * reach <= SIGHT_SLACK;
}

/** The angle brought into 0 (included) to a full turn (left out). */
export function turned(angle: number): number {
  const rest = angle % TURN;
  return rest < 0 ? rest + TURN : rest;
}

/** Stage 2. */
function passesContacts(
  map: BarrierMap,
  from: Eye,
  to: Eye,
  angle: number,
  length: number,
  contacts: Contact[],
  runs: readonly Run[],
): boolean {
  sortBy(contacts, ({ t }) => t);
  let sides = BOTH;
  let at = 0;
  let lastCorner = -1;
  for (const { t, corner } of contacts) {
    if (corner === lastCorner) continue;
    lastCorner = corner;
    const atStart = t <= SIGHT_SLACK;
    const atEnd = t >= length - SIGHT_SLACK;
    if (!atStart) sides = sidesAlong(runs, at, t, sides);
    const eye = atStart ? from : atEnd ? to : undefined;
    const sectors = eye?.sector ? [eye.sector] : (map.sectors[corner] ?? []);
    let after = 0;
    for (const sector of sectors) {
      const arriving = atStart ? BOTH : sidesArriving(directionIn(sector, angle + Math.PI, t));
      if ((arriving & sides) === 0 || (atStart && !touchesWater(from, sector))) continue;
      after |= atEnd ? BOTH : sidesLeaving(directionIn(sector, angle, length - t));
    }
    sides = after;
    if (sides === 0) return false;
    at = t;
  }
  return sidesAlong(runs, at, length, sides) !== 0;
}

/** Sides that stay open from `at` to `t`: those left free by a piece that runs along there; all of them on free ground. */
function sidesAlong(runs: readonly Run[], at: number, t: number, sides: number): number {
  if (t - at <= SIGHT_SLACK) return sides;
  const middle = (at + t) / 2;
  let found = false;
  let open = sides;
  for (const run of runs) {
    if (run.from >= middle || run.to <= middle) continue;
    found = true;
    open &= run.sides;
  }
  return found ? open : sides === 0 ? 0 : BOTH;
}

/** A path that arrives along the sector's first piece has it on its left: it is on the piece's right side. */
function sidesArriving(bits: number): number {
  if (bits === INSIDE) return BOTH;
  return ((bits & ALONG_START) !== 0 ? RIGHT : 0) | ((bits & ALONG_END) !== 0 ? LEFT : 0);
}

function sidesLeaving(bits: number): number {
  if (bits === INSIDE) return BOTH;
  return ((bits & ALONG_START) !== 0 ? LEFT : 0) | ((bits & ALONG_END) !== 0 ? RIGHT : 0);
}
