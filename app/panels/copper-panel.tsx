/** Copper: which method bonds the perimeter, how the ring is laid, every run of the takeoff, the ties to tick off, hardware and weight. */
import { useState } from "react";
import type { Report } from "../../rules/report.ts";
import { capitalized } from "../../rules/words/element-names.ts";
import { copperText, type Units } from "../../rules/words/lengths.ts";
import { missingText } from "../../rules/words/outcomes.ts";
import type { TakeoffRun } from "../drawing/highlight.ts";
import { useDocument, useLive, useView } from "../editor-context.tsx";
import { copperLines, routesWords } from "./copper-lines.ts";
import { MethodChoice } from "./method-choice.tsx";
import { MissingList } from "./missing-list.tsx";
import { RingChoice } from "./ring-choice.tsx";
import { TieList } from "./tie-list.tsx";

export function CopperPanel() {
  const report = useLive((state) => state.report);
  const routesPending = useLive((state) => state.routesPending);
  const units = useDocument((state) => state.shown.display?.units);
  const opened = useDocument((state) => state.opened);
  const failure = useLive((state) => state.failure);
  const routesFailure = useLive((state) => state.routesFailure);
  const routes: Routes = { isThere: !routesPending, words: routesWords(routesFailure) };
  if (!report) {
    return (
      <p className="panel-note">
        {failure === null ? "Working out the first report …" : "The calculation stopped: see Findings."}
      </p>
    );
  }
  return (
    <section aria-label="Copper" className="copper">
      <header className="copper-head">
        <h2>Copper</h2>
        <p>{missingText(report)}</p>
      </header>
      {report.missing === 0 ? null : (
        <p className="small soft">
          Missing are the ties, parts, perimeter loops and water contacts that no recorded copper makes yet.
        </p>
      )}
      <MethodChoice methods={report.methods} units={units} />
      <RingChoice ring={report.ring} units={units} />
      {routesFailure === null ? null : (
        <p className="problem failure">The routes of the branches are not worked out; all else is. {routesFailure}</p>
      )}
      <Takeoff key={opened} report={report} routes={routes} units={units} />
      <MissingList report={report} waiting={routes.isThere ? null : routes.words} units={units} />
      <TieList ties={report.ties} units={units} />
      <Hardware report={report} routes={routes} />
    </section>
  );
}

/** Whether the routes of the branches are there, and what stands for figures that need them. */
interface Routes {
  readonly isThere: boolean;
  readonly words: string;
}

interface PartProps {
  readonly report: Report;
  readonly routes: Routes;
  readonly units: Units | undefined;
}

/** Runs of copper. A line that is pointed at, has the focus or is chosen lights up its pieces on the sheet. */
function Takeoff({ report, routes, units }: PartProps) {
  const highlight = useView((view) => view.highlight);
  const setHighlight = useView((view) => view.setHighlight);
  const [chosen, setChosen] = useState<TakeoffRun | null>(null);
  const { conductor } = report.takeoff;
  const spare = useDocument((state) => state.shown.settings?.spareFraction);
  return (
    <div className="takeoff">
      <h3>Takeoff</h3>
      <ul onPointerLeave={() => setHighlight(chosen)}>
        {copperLines(report, !routes.isThere, units, routes.words).map(({ line, label, text, isNone, isOnItsWay }) => (
          <li key={line}>
            <button
              type="button"
              className="takeoff-line"
              aria-pressed={chosen === line}
              disabled={isNone}
              data-lit={highlight === line ? "" : undefined}
              title={isNone ? "" : "Light up its pieces on the sheet"}
              onPointerEnter={() => setHighlight(line)}
              onFocus={() => setHighlight(line)}
              onBlur={() => setHighlight(chosen)}
              onClick={() => {
                const next = chosen === line ? null : line;
                setChosen(next);
                setHighlight(next);
              }}
            >
              <span>{label}</span>
              <span className={isOnItsWay ? "on-its-way" : isNone ? "faint" : ""}>{text}</span>
            </button>
          </li>
        ))}
      </ul>
      <dl className="sums">
        <div>
          <dt>{spare === undefined ? "Spare" : `Spare, ${Math.round(spare * 100)}%`}</dt>
          <dd>{routes.isThere ? copperText(conductor.spare, units) : <NotThere words={routes.words} />}</dd>
        </div>
        <div className="sum-total">
          <dt>Copper in all</dt>
          <dd>{routes.isThere ? copperText(conductor.total, units) : <NotThere words={routes.words} />}</dd>
        </div>
      </dl>
    </div>
  );
}

function NotThere({ words }: Pick<Routes, "words">) {
  return <span className="on-its-way">{words}</span>;
}

function Hardware({ report, routes }: Omit<PartProps, "units">) {
  const { hardware, weightPounds } = report.takeoff;
  return (
    <div className="hardware">
      <h3>Hardware and weight</h3>
      <dl className="sums">
        {hardware.map(({ item, count }) => (
          <div key={item}>
            <dt>{capitalized(item)}</dt>
            <dd>{count}</dd>
          </div>
        ))}
        <div className="sum-total">
          <dt>Weight of the copper</dt>
          <dd>{routes.isThere ? `${weightPounds.toFixed(1)} lb` : <NotThere words={routes.words} />}</dd>
        </div>
      </dl>
      {routes.isThere ? null : <p className="panel-note">Clamps and joints of the branches: {routes.words}.</p>}
    </div>
  );
}
