/** A search box over the rules: by word or section; each with its limits, what it protects from, and its findings here. */
import { useDeferredValue, useId, useState } from "react";
import { editionInForce } from "../../rules/editions/in-force.ts";
import type { Finding } from "../../rules/report.ts";
import type { RuleFound } from "../../rules/search.ts";
import { searchRules } from "../../rules/search-instead.ts";
import { capitalized, namesOf } from "../../rules/words/element-names.ts";
import { foundInstead } from "../../rules/words/other-names.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { useDocument, useReport, useView } from "../editor-context.tsx";
import { subjectOf } from "./finding-words.ts";
import { OutcomeMark } from "./outcome-mark.tsx";
import "./code-panel.css";

/** Findings of a rule that are listed before the rest is asked for. */
const FIRST = 12;

export function RuleSearch() {
  const site = useDocument((state) => state.shown);
  const [text, setText] = useState("");
  const wanted = useDeferredValue(text);
  const id = useId();
  const edition = editionInForce(site);
  const { found, instead } = searchRules(wanted, edition, site.display?.units);
  return (
    <section aria-label="Rules" className="rule-search">
      <h2>Rules</h2>
      <label htmlFor={id}>Word or section</label>
      <input
        id={id}
        type="search"
        value={text}
        autoComplete="off"
        placeholder="ladder, or 680.26(B)(7)"
        onChange={(event) => setText(event.target.value)}
      />
      <p className="small soft" role="status">
        {found.length === 0
          ? "No rule holds all of this. Try one word, or a section."
          : `${foundInstead(wanted, instead)}${found.length} ${found.length === 1 ? "rule" : "rules"}, limits by ${edition.title}.`}
      </p>
      <ul className="plain-list">
        {found.map((one) => (
          <li key={one.rule.id}>
            <OneRule found={one} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function OneRule({ found: { rule, section, limits } }: { readonly found: RuleFound }) {
  const findings = (useReport()?.findings ?? []).filter((finding) => finding.rule === rule.id);
  return (
    <details className="rule">
      <summary>
        <span>{rule.title}</span> <span className="small soft">{section ?? "not in this edition"}</span>
      </summary>
      <p>
        <strong>Looks at.</strong> {rule.subjects}
      </p>
      <p>
        <strong>Measures.</strong> {rule.measure}
      </p>
      {limits.length === 0 ? null : (
        <ul className="limits">
          {limits.map((limit) => (
            <li key={limit.id}>
              <strong>{limit.value}</strong> {limit.says}{" "}
              <span className="small soft">
                {limit.section}, {limit.basis}
                {limit.amended === null ? "" : ", changed by a local amendment"}
              </span>
            </li>
          ))}
        </ul>
      )}
      <p>
        <strong>What it protects people from.</strong> {rule.protects}
      </p>
      <Findings findings={findings} />
    </details>
  );
}

function Findings({ findings }: { readonly findings: readonly Finding[] }) {
  const elements = useDocument((state) => state.shown.elements);
  const chooseFinding = useView((view) => view.chooseFinding);
  const select = useView((view) => view.select);
  const [all, setAll] = useState(false);
  if (findings.length === 0) return <p className="small soft">It finds nothing to look at on this site.</p>;
  const names = namesOf(elements);
  const shown = all ? findings : findings.slice(0, FIRST);
  return (
    <>
      <h3>On this site</h3>
      <ul className="plain-list">
        {shown.map((finding) => (
          <li key={finding.id}>
            <button
              type="button"
              className="plain link"
              onClick={() => {
                chooseFinding(finding.id);
                if (finding.element !== null) select([finding.element]);
              }}
            >
              <OutcomeMark outcome={finding.outcome} /> {capitalized(subjectOf(finding, names))}:{" "}
              {OUTCOME_WORDS[finding.outcome]}
            </button>
          </li>
        ))}
      </ul>
      {shown.length < findings.length ? (
        <button type="button" onClick={() => setAll(true)}>
          Show all {findings.length}
        </button>
      ) : null}
    </>
  );
}
