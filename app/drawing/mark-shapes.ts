/** The shape that each outcome's number stands in. Told apart without color: open diamond, full diamond, cut square, square, heavy ring, light ring. */

import type { Outcome } from "../../rules/report.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import type { Role, TextRole } from "./palette.ts";
import type { Part } from "./symbols.ts";
import { textPoints } from "./text-width.ts";

/** Size of the number in a mark, points. */
export const MARK_POINTS = 6.5;

export interface MarkDrawing {
  readonly role: Role;
  readonly textRole: TextRole;
  readonly parts: readonly Part[];
  /** Box, points. */
  readonly width: number;
  readonly height: number;
}

const ROLES: Readonly<Record<Outcome, readonly [Role, TextRole]>> = {
  bond: ["mark-bond", "mark-copper"],
  missing: ["mark-missing", "mark-light"],
  conflict: ["mark-conflict", "mark-light"],
  review: ["mark-review", "mark-dark"],
  meets: ["mark-meets", "mark-meets"],
  exempt: ["mark-exempt", "mark-exempt"],
};

/** The mark of a finding, centered on its origin. */
export function markDrawing(outcome: Outcome, text: string): MarkDrawing {
  const half = Math.max(3.6, textPoints(text, MARK_POINTS, true) / 2 + 1.4);
  const [role, textRole] = ROLES[outcome];
  switch (outcome) {
    case "bond":
    case "missing": {
      const x = half + 4.2;
      const y = 7.2;
      return { role, textRole, parts: [area(0, -y, x, 0, 0, y, -x, 0)], width: 2 * x + 1, height: 2 * y + 1 };
    }
    case "conflict": {
      const x = half + 1.6;
      const y = 5.4;
      const cut = 2.2;
      const parts = [
        area(-x + cut, -y, x - cut, -y, x, -y + cut, x, y - cut, x - cut, y, -x + cut, y, -x, y - cut, -x, -y + cut),
      ];
      return { role, textRole, parts, width: 2 * x + 1, height: 2 * y + 1 };
    }
    case "review": {
      const x = half + 1;
      const y = 4.9;
      return { role, textRole, parts: [area(-x, -y, x, -y, x, y, -x, y)], width: 2 * x + 1, height: 2 * y + 1 };
    }
    case "meets":
      return {
        role,
        textRole,
        parts: [pill(half + 1.2, 5.2)],
        width: 2 * half + 3.8,
        height: 11.8,
      };
    case "exempt":
      return { role, textRole, parts: [pill(half + 1, 5)], width: 2 * half + 3, height: 11 };
  }
}

/** What the mark's shape says, for the legend. */
export function markWords(outcome: Outcome): string {
  return OUTCOME_WORDS[outcome];
}

function area(...line: number[]): Part {
  return { line, closed: true, paint: "area" };
}

/** A circle drawn out sideways for long numbers. */
function pill(halfWidth: number, radius: number): Part {
  const straight = Math.max(0, halfWidth - radius);
  const line: number[] = [];
  for (let i = 0; i <= 12; i++) {
    const angle = -Math.PI / 2 + (i / 12) * Math.PI;
    line.push(straight + radius * Math.cos(angle), radius * Math.sin(angle));
  }
  for (let i = 0; i <= 12; i++) {
    const angle = Math.PI / 2 + (i / 12) * Math.PI;
    line.push(-straight + radius * Math.cos(angle), radius * Math.sin(angle));
  }
  return area(...line);
}
