/** The same site under two editions, side by side: what changes, why, and which numbers make it change. */
import { useEffect, useState } from "react";
import { useStore } from "zustand";
import { type FindingChange, type ParameterSide, type Side, saysOtherwise } from "../../rules/compare-editions.ts";
import { EDITION_IDS, type EditionId } from "../../rules/editions/edition.ts";
import { EDITION_WHEN_UNNAMED, EDITIONS, namedEdition } from "../../rules/editions/in-force.ts";
import { OUTCOMES_WORST_FIRST } from "../../rules/report.ts";
import { answerText } from "../../rules/words/answers.ts";
import { bandText, TOTAL_WORDS, totalText } from "../../rules/words/comparison.ts";
import { capitalized, namesOf } from "../../rules/words/element-names.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { parameterText } from "../../rules/words/parameters.ts";
import { useDocument, useView } from "../editor-context.tsx";
import { openCompareWorker } from "../live/compare-worker.ts";
import { type ComparisonStore, createComparison } from "../live/live-comparison.ts";
import type { ShownComparison } from "../workers/compare-messages.ts";
import { OutcomeMark } from "./outcome-mark.tsx";
import "./code-panel.css";

/** The comparison of the sheet under two editions; worked out again when either or the sheet changes, not while dragging. */
function useComparison(before: EditionId, after: EditionId) {
  const site = useDocument((state) => state.gesture?.start ?? state.shown);
  const [live] = useState<ComparisonStore>(() => createComparison(openCompareWorker));
  useEffect(() => live.ask({ site, before, after }), [live, site, before, after]);
  useEffect(() => () => live.close(), [live]);
  return useStore(live);
}

/** Begun anew by the code panel for another site: it has an edition of its own, and its findings are others. */
export function ComparePanel() {
  const site = useDocument((state) => state.shown);
  const own = namedEdition(site) ?? EDITION_WHEN_UNNAMED;
  const [before, setBefore] = useState<EditionId>(own);
  const [after, setAfter] = useState<EditionId>(EDITION_IDS.find((id) => id !== own) ?? own);
  const { comparison, pending, failure } = useComparison(before, after);
  const fits = comparison !== null && comparison.before === before && comparison.after === after;
  return (
    <section aria-label="Editions side by side" className="compare">
      <h2>Editions side by side</h2>
      <div className="compare-choice">
        <EditionChoice label="This site under" value={before} onChange={setBefore} />
        <EditionChoice label="and under" value={after} onChange={setAfter} />
      </div>
      <div aria-live="polite" aria-busy={pending}>
        {failure === null ? null : <p className="problem">The comparison stopped: {failure}</p>}
        {pending ? <p className="panel-note">Working it out …</p> : null}
        {fits ? <Changes comparison={comparison} /> : null}
      </div>
    </section>
  );
}

interface EditionChoiceProps {
  readonly label: string;
  readonly value: EditionId;
  onChange(edition: EditionId): void;
}

function EditionChoice({ label, value, onChange }: EditionChoiceProps) {
  return (
    <label>
      {label}
      <select
        value={value}
        onChange={(event) => {
          const id = EDITION_IDS.find((edition) => edition === event.target.value);
          if (id) onChange(id);
        }}
      >
        {EDITION_IDS.map((id) => (
          <option key={id} value={id}>
            {EDITIONS[id].title}
          </option>
        ))}
      </select>
    </label>
  );
}

function Changes({ comparison }: { readonly comparison: ShownComparison }) {
  const elements = useDocument((state) => state.shown.elements);
  const units = useDocument((state) => state.shown.display?.units) ?? "ft-in";
  const names = namesOf(elements);
  const nameOf = (id: string) => names.get(id) ?? id;
  const otherwise = comparison.changes.filter(saysOtherwise);
  const same = comparison.same + comparison.changes.length - otherwise.length;
  if (otherwise.length === 0) {
    return <p>Nothing changes between these editions on this site. All {same} findings stay.</p>;
  }
  return (
    <>
      <p>
        {otherwise.length} {otherwise.length === 1 ? "finding changes" : "findings change"}; {same} stay.
      </p>
      <Totals comparison={comparison} units={units} />
      <Bands comparison={comparison} units={units} nameOf={nameOf} />
      <ul className="plain-list">
        {otherwise.map((change) => (
          <li key={change.id}>
            <Change change={change} comparison={comparison} nameOf={nameOf} />
          </li>
        ))}
      </ul>
      <Numbers comparison={comparison} units={units} />
    </>
  );
}

interface PartProps {
  readonly comparison: ShownComparison;
  readonly units: Units;
}

function Head({ comparison }: { readonly comparison: ShownComparison }) {
  return (
    <thead>
      <tr>
        <td />
        <th scope="col">{EDITIONS[comparison.before].title}</th>
        <th scope="col">{EDITIONS[comparison.after].title}</th>
      </tr>
    </thead>
  );
}

function Totals({ comparison, units }: PartProps) {
  const rows = comparison.totals.flatMap(({ name, before, after }) => {
    const words = TOTAL_WORDS[name];
    if (!words || before === after) return [];
    return [{ text: words.text, before: totalText(name, before, units), after: totalText(name, after, units) }];
  });
  const counts = OUTCOMES_WORST_FIRST.map((outcome) => {
    const total = comparison.totals.find(({ name }) => name === `count ${outcome}`);
    const [before, after] = [String(total?.before ?? 0), String(total?.after ?? 0)];
    return { text: capitalized(OUTCOME_WORDS[outcome]), before, after };
  });
  return (
    <table className="compare-table">
      <caption>What it takes</caption>
      <Head comparison={comparison} />
      <tbody>
        {[...counts, ...rows].map((row) => (
          <tr key={row.text}>
            <th scope="row">{row.text}</th>
            <td>{row.before}</td>
            <td>{row.after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Bands({ comparison, units, nameOf }: PartProps & { nameOf(id: string): string }) {
  if (comparison.bands.length === 0) return null;
  return (
    <table className="compare-table">
      <caption>Perimeter, by surface</caption>
      <Head comparison={comparison} />
      <tbody>
        {comparison.bands.map(({ pool, surface, before, after }) => (
          <tr key={`${pool} ${surface}`}>
            <th scope="row">
              {surface === null ? "The ground" : capitalized(nameOf(surface))}, by {nameOf(pool)}
            </th>
            <td>{bandText(before, units)}</td>
            <td>{bandText(after, units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface ChangeProps {
  readonly change: FindingChange;
  readonly comparison: ShownComparison;
  nameOf(id: string): string;
}

function Change({ change, comparison, nameOf }: ChangeProps) {
  const select = useView((view) => view.select);
  const { element, body, title } = change;
  const about = element ?? body;
  return (
    <article className="compare-change">
      <h3>
        {about === null ? (
          "The site"
        ) : (
          <button type="button" className="plain link" onClick={() => select([about])}>
            {capitalized(nameOf(about))}
          </button>
        )}
        {body !== null && body !== about ? `, by ${nameOf(body)}` : ""}. {title}.
      </h3>
      <div className="compare-sides">
        <SideText edition={comparison.before} side={change.before} />
        <SideText edition={comparison.after} side={change.after} />
      </div>
    </article>
  );
}

function SideText({ edition, side }: { readonly edition: EditionId; readonly side: Side | null }) {
  return (
    <div>
      <p className="small soft">{EDITIONS[edition].title}</p>
      {side === null ? (
        <p>Asks for nothing here.</p>
      ) : (
        <>
          <p>
            <OutcomeMark outcome={side.outcome} /> {OUTCOME_WORDS[side.outcome]},{" "}
            {[side.section, ...side.alsoSections].join(", ")}
          </p>
          <p>{side.why}</p>
          {side.question ? <p>Question: {side.question.text}</p> : side.remedy === "" ? null : <p>{side.remedy}</p>}
          {side.answered ? <p>{answerText(side.answered)}.</p> : null}
          {side.lapsed ? <p className="soft">An earlier answer has lapsed.</p> : null}
          <p className="small soft">How sure the limit is: {side.basis}</p>
        </>
      )}
    </div>
  );
}

function Numbers({ comparison, units }: PartProps) {
  const side = ({ value, unit, section, basis, says }: ParameterSide) => (
    <>
      <strong>{parameterText(value, unit, units)}</strong> {says}{" "}
      <span className="small soft">
        {section}, {basis}
      </span>
    </>
  );
  /** The rules that read a number are named once, above their numbers. */
  const byReaders = new Map<string, ShownComparison["parameters"][number][]>();
  for (const parameter of comparison.parameters) {
    const readers = parameter.rules.length === 0 ? "The plan and its copper" : parameter.rules.join(", ");
    const others = byReaders.get(readers);
    if (others) others.push(parameter);
    else byReaders.set(readers, [parameter]);
  }
  return (
    <details>
      <summary>Numbers of the editions that differ ({comparison.parameters.length})</summary>
      <table className="compare-table">
        <thead>
          <tr>
            <th scope="col">{EDITIONS[comparison.before].title}</th>
            <th scope="col">{EDITIONS[comparison.after].title}</th>
          </tr>
        </thead>
        {[...byReaders].map(([readers, parameters]) => (
          <tbody key={readers}>
            <tr>
              <th scope="rowgroup" colSpan={2}>
                {readers}
              </th>
            </tr>
            {parameters.map(({ id, before, after }) => (
              <tr key={id}>
                <td>{side(before)}</td>
                <td>{side(after)}</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </details>
  );
}
