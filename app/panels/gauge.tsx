/** The deciding measurement as a bar from the inside wall, with the limit as a tick to be crossed. */
import type { Finding } from "../../rules/report.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";

const WIDTH = 280;
const BASE = 26;
/** Room for the words at the start of the bar. */
const FROM_WIDTH = 70;

export function Gauge({ finding, units }: { readonly finding: Finding; readonly units: Units | undefined }) {
  const deciding = decidingMeasure(finding);
  if (!deciding) return null;
  const { measured, limit } = deciding;
  const span = Math.max(measured, limit) * 1.25 || 1;
  const x = (value: number) => (value / span) * WIDTH;
  const limitAt = x(limit);
  const text = lengthText(measured, units, limit);
  const limitText = `limit ${lengthText(limit, units)}`;
  return (
    <svg className="gauge" viewBox={`0 0 ${WIDTH} 46`} role="img" aria-label={`${text} measured, ${limitText}`}>
      <line x1={0} x2={WIDTH} y1={BASE} y2={BASE} stroke="var(--line)" strokeWidth={1} />
      <line x1={0} x2={x(measured)} y1={BASE} y2={BASE} stroke="var(--measure)" strokeWidth={4} />
      <line x1={limitAt} x2={limitAt} y1={BASE - 10} y2={BASE + 5} stroke="var(--ink)" strokeWidth={2} />
      <text
        x={Math.max(x(measured), 40)}
        y={BASE - 8}
        textAnchor="end"
        fontSize={13}
        fontWeight={600}
        fill="var(--measure)"
        dx={measured > limit && x(measured) - limitAt < 40 ? 36 : 0}
      >
        {text}
      </text>
      <text
        x={Math.max(limitAt + 4, FROM_WIDTH)}
        y={BASE + 18}
        fontSize={12}
        fill="var(--ink)"
        textAnchor={limitAt > WIDTH - 90 ? "end" : "start"}
      >
        {limitText}
      </text>
      <text x={0} y={BASE + 18} fontSize={12} fill="var(--soft)">
        inside wall
      </text>
    </svg>
  );
}

/** A length measured in plan that is held against one limit. */
function decidingMeasure(finding: Finding): { measured: number; limit: number } | null {
  for (const key of ["path", "horizontal"]) {
    const limit = finding.required[key];
    const measured = finding.measured[key];
    if (typeof limit === "number" && typeof measured === "number" && limit > 0) return { measured, limit };
  }
  return null;
}
