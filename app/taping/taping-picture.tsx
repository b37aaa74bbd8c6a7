/** What the table draws so far: stakes, points by number, the paths through them; doubtful points stand out. */
import type { Point } from "../../geometry/types.ts";
import { pathD } from "../drawing/path-d.ts";
import type { SolvedTaping } from "./solve-taping.ts";

const LONGEST = 280;
const MARGIN = 0.12;

export function TapingPicture({ solved, isLine, chosen }: { solved: SolvedTaping; isLine: boolean; chosen: number }) {
  const stakes: Point[] = solved.end ? [solved.start, solved.end] : [];
  const points = solved.things.flatMap(({ rows }) => rows.flatMap(({ at }) => (at ? [at] : [])));
  const all = [...stakes, ...points];
  if (points.length === 0) {
    return <p className="taping-nothing soft">What you type is drawn here as it stands on the ground.</p>;
  }
  const xs = all.map(([x]) => x);
  const ys = all.map(([, y]) => -y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const size = Math.max(Math.max(...xs) - left, Math.max(...ys) - top, 12);
  const pad = size * MARGIN;
  const pixel = (size + 2 * pad) / LONGEST;
  const [width, height] = [Math.max(...xs) - left + 2 * pad, Math.max(...ys) - top + 2 * pad];
  return (
    <svg
      className="taping-picture"
      viewBox={`${left - pad} ${top - pad} ${width} ${height}`}
      role="img"
      aria-label={`${points.length} points as they stand`}
    >
      {stakes.length === 2 ? <Stakes stakes={stakes} pixel={pixel} isLine={isLine} /> : null}
      {solved.things.map(({ path }, i) =>
        path ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: things are known by their place in the table
          <path key={i} className={i === chosen ? "taped chosen" : "taped"} d={pathD(path)} strokeWidth={1.5 * pixel} />
        ) : null,
      )}
      {solved.things.map(({ rows }, i) =>
        rows.map(({ at, doubts }, row) =>
          at ? (
            // biome-ignore lint/suspicious/noArrayIndexKey: points are known by their place in the table
            <g key={`${i} ${row}`} className={doubts.length > 0 ? "point doubtful" : "point"}>
              <circle cx={at[0]} cy={-at[1]} r={(doubts.length > 0 ? 5 : 3) * pixel} strokeWidth={1.5 * pixel} />
              {i === chosen ? (
                <text x={at[0] + 6 * pixel} y={-at[1] - 5 * pixel} fontSize={11 * pixel}>
                  {row + 1}
                </text>
              ) : null}
            </g>
          ) : null,
        ),
      )}
    </svg>
  );
}

function Stakes({ stakes, pixel, isLine }: { stakes: readonly Point[]; pixel: number; isLine: boolean }) {
  const [a, b] = stakes as readonly [Point, Point];
  return (
    <g className="stakes">
      <line
        x1={a[0]}
        y1={-a[1]}
        x2={b[0]}
        y2={-b[1]}
        strokeWidth={pixel}
        strokeDasharray={`${4 * pixel} ${3 * pixel}`}
      />
      {stakes.map(([x, y], i) => (
        <g key={i === 0 ? "A" : "B"}>
          <rect x={x - 4 * pixel} y={-y - 4 * pixel} width={8 * pixel} height={8 * pixel} />
          {isLine && i === 1 ? null : (
            <text x={x - 4 * pixel} y={-y + 17 * pixel} fontSize={12 * pixel}>
              {isLine ? "0" : i === 0 ? "A" : "B"}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}
