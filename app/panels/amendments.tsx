/** Local amendments: which numbers of the code the authority here has changed, why, and where each acts. */
import { type ReactNode, useId, useLayoutEffect, useRef, useState } from "react";
import { RULES } from "../../rules/catalogue/index.ts";
import { BASIS_WORDS, type Parameter, type ParameterValue } from "../../rules/editions/edition.ts";
import { EDITIONS, editionInForce } from "../../rules/editions/in-force.ts";
import type { ParameterId, ParameterTable } from "../../rules/editions/parameter-types.ts";
import type { Amendment } from "../../rules/site/site.ts";
import { tied } from "../../rules/words/breaks.ts";
import { capitalized, namesOf } from "../../rules/words/element-names.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { parameterText } from "../../rules/words/parameters.ts";
import { useDocument, useEditor, useReport, useView } from "../editor-context.tsx";
import { removeAmendment, setAmendment } from "../edits/set-amendment.ts";
import { parameterEntry, parseParameter } from "../entry/parse-parameter.ts";
import { subjectOf } from "./finding-words.ts";
import { useHandOnFocus } from "./hand-on-focus.ts";
import { OutcomeMark } from "./outcome-mark.tsx";
import "./code-panel.css";

/** Numbers offered at once while one is being looked for. */
const OFFERED = 8;

export function Amendments() {
  const editor = useEditor();
  const site = useDocument((state) => state.shown);
  const units = site.display?.units ?? "ft-in";
  const [problem, setProblem] = useState<string | null>(null);
  const [changing, setChanging] = useState<string | null>(null);
  const edition = editionInForce(site);
  const written: ParameterTable = EDITIONS[edition.id].parameters;
  // What a number means stands as the edition says it, beside the value that holds here.
  const inForce = edition.amendments.map(({ parameter }) => parameter as ParameterId);
  const now: ParameterTable = {
    ...written,
    ...Object.fromEntries(inForce.map((id) => [id, { ...written[id], value: edition.parameters[id].value }])),
  };
  const amendments = site.amendments ?? [];
  const reasons = new Map(edition.useless.map(({ amendment, reason }) => [amendment, reason]));
  return (
    <section aria-label="Local amendments" className="amendments">
      <h2>Local amendments</h2>
      <p className="panel-note">
        Where an ordinance or the authority having jurisdiction asks for something else than {edition.title}, change the
        number here. It is named in every finding, report and plan that it acts on.
      </p>
      {amendments.length === 0 ? <p>None is in force.</p> : null}
      <ul className="plain-list">
        {amendments.map((amendment) => {
          const { parameter, value, reason } = amendment;
          const known: Parameter | null = Object.hasOwn(written, parameter) ? written[parameter as ParameterId] : null;
          const fault = reasons.get(amendment);
          if (known !== null && changing === parameter) {
            return (
              <li key={`${parameter} being changed`}>
                <AmendmentForm
                  parameter={parameter as ParameterId}
                  now={now[parameter as ParameterId]}
                  units={units}
                  said={reason}
                  onDone={() => setChanging(null)}
                />
              </li>
            );
          }
          return (
            <Row key={`${parameter} ${JSON.stringify(value)}`} parameter={parameter}>
              <p>
                <strong>{known?.says ?? parameter}</strong>
              </p>
              <p>
                {known === null ? "" : `${parameterText(known.value, known.unit, units)} by the edition, here `}
                <strong>{known === null ? JSON.stringify(value) : parameterText(value, known.unit, units)}</strong>
                {`: ${reason ?? "no reason given"}`}
              </p>
              {fault === undefined ? (
                <WhereItActs parameter={parameter as ParameterId} />
              ) : (
                <p className="problem">It does not act: {fault}.</p>
              )}
              <div className="row">
                {known === null ? null : (
                  <button type="button" onClick={() => setChanging(parameter)}>
                    Change it
                  </button>
                )}
                <button
                  type="button"
                  onClick={() =>
                    setProblem(editor.document.getState().edit(removeAmendment(parameter))?.reason ?? null)
                  }
                >
                  Take it back
                </button>
              </div>
            </Row>
          );
        })}
      </ul>
      {problem === null ? null : (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <AddAmendment table={now} amendments={amendments} units={units} />
    </section>
  );
}

/** An amendment in the list. Changed or taken back, it gives the focus on to what stands in its place, or to the search. */
function Row({ parameter, children }: { readonly parameter: string; readonly children: ReactNode }) {
  const box = useRef<HTMLLIElement>(null);
  useHandOnFocus(box, handedTo(parameter));
  return (
    <li ref={box} className="amendment" data-amends={parameter}>
      {children}
    </li>
  );
}

function handedTo(parameter: string): Parameters<typeof useHandOnFocus>[1] {
  return {
    place: ".amendments",
    next: [`[data-amends="${CSS.escape(parameter)}"] .row button`, ".amendment-search input"],
  };
}

/** The rules that read a number, and what they find on this site. */
function WhereItActs({ parameter }: { readonly parameter: ParameterId }) {
  const findings = useReport()?.findings ?? [];
  const elements = useDocument((state) => state.shown.elements);
  const chooseFinding = useView((view) => view.chooseFinding);
  const rules = RULES.filter((rule) => rule.parameters.includes(parameter));
  const acted = findings.filter(({ rule }) => rules.some(({ id }) => id === rule));
  const names = namesOf(elements);
  if (rules.length === 0) return <p className="small soft">It acts on the plan and its copper alone.</p>;
  return (
    <details>
      <summary>
        Read by: {rules.map(({ title }) => title.toLowerCase()).join(", ")} ({acted.length}{" "}
        {acted.length === 1 ? "finding" : "findings"} here)
      </summary>
      <ul className="plain-list">
        {acted.map((finding) => (
          <li key={finding.id}>
            <button type="button" className="plain link" onClick={() => chooseFinding(finding.id)}>
              <OutcomeMark outcome={finding.outcome} /> {capitalized(subjectOf(finding, names))}:{" "}
              {OUTCOME_WORDS[finding.outcome]}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

interface AddProps {
  readonly table: ParameterTable;
  readonly amendments: readonly Amendment[];
  readonly units: Units;
}

function AddAmendment({ table, amendments, units }: AddProps) {
  const id = useId();
  const [sought, setSought] = useState("");
  const [chosen, setChosen] = useState<ParameterId | null>(null);
  const found = sought.trim() === "" ? [] : parametersWith(sought, table);
  if (chosen !== null) {
    return (
      <AmendmentForm
        key={chosen}
        parameter={chosen}
        now={table[chosen]}
        units={units}
        said={amendments.find((one) => one.parameter === chosen)?.reason}
        onDone={() => {
          setChosen(null);
          setSought("");
        }}
      />
    );
  }
  return (
    <div className="amendment-search">
      <label htmlFor={id}>Which number does it change?</label>
      <input
        id={id}
        type="search"
        value={sought}
        autoComplete="off"
        placeholder="ring under paving, or 680.26(B)(7)"
        onChange={(event) => setSought(event.target.value)}
      />
      <p className="small soft" role="status">
        {sought.trim() === ""
          ? ""
          : found.length === 0
            ? "No number is described in these words."
            : `${found.length} found`}
      </p>
      <ul className="plain-list">
        {found.slice(0, OFFERED).map((parameter) => {
          const { value, unit, section, says }: Parameter = table[parameter];
          return (
            <li key={parameter}>
              <button type="button" className="plain link" onClick={() => setChosen(parameter)}>
                {says} {tied(`Now ${parameterText(value, unit, units)}.`)} <span className="small soft">{section}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}

/** The numbers whose meaning, section or name holds every word. */
export function parametersWith(text: string, table: ParameterTable): ParameterId[] {
  const words = text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  return (Object.keys(table) as ParameterId[]).filter((id) => {
    const { says, section }: Parameter = table[id];
    const plain = `${id.replace(/[.]|(?=[A-Z])/g, " ")} ${id} ${says} ${section}`.toLowerCase();
    return words.every((word) => plain.includes(word));
  });
}

interface FormProps {
  readonly parameter: ParameterId;
  readonly now: Parameter;
  readonly units: Units;
  /** Where the amendment comes from, if it stands already. */
  readonly said: string | undefined;
  onDone(): void;
}

function AmendmentForm({ parameter, now, units, said, onDone }: FormProps) {
  const editor = useEditor();
  const id = useId();
  const [text, setText] = useState(() => parameterEntry(now.value, now.unit, units));
  const [reason, setReason] = useState(said ?? "");
  const [problem, setProblem] = useState<string | null>(null);
  const form = useRef<HTMLFormElement>(null);
  useHandOnFocus(form, handedTo(parameter));
  useLayoutEffect(() => form.current?.querySelector<HTMLElement>("input, select")?.focus(), []);
  const put = (value: ParameterValue) => {
    const refusal = editor.document.getState().edit(setAmendment(parameter, value, reason));
    if (refusal) return setProblem(refusal.reason);
    editor.view.getState().say("The amendment is in force.");
    onDone();
  };
  return (
    <form
      ref={form}
      className="amendment"
      onSubmit={(event) => {
        event.preventDefault();
        const read = parseParameter(text, now.unit, units);
        if (read.ok) put(read.value);
        else setProblem(read.reason);
      }}
    >
      <p>
        <strong>{now.says}</strong>{" "}
        <span className="small soft">
          {now.section}, {BASIS_WORDS[now.basis]}, now {parameterText(now.value, now.unit, units)}
        </span>
      </p>
      <label htmlFor={`${id}-value`}>Here it is</label>
      {now.unit === "yes/no" ? (
        <select id={`${id}-value`} value={text} onChange={(event) => setText(event.target.value)}>
          {now.value === null ? <option value="">choose</option> : null}
          <option value="yes">yes</option>
          <option value="no">no</option>
        </select>
      ) : (
        <input
          id={`${id}-value`}
          value={text}
          autoComplete="off"
          aria-describedby={`${id}-unit`}
          onChange={(event) => setText(event.target.value)}
        />
      )}
      <p className="small soft" id={`${id}-unit`}>
        {now.unit === "in" ? "A length." : now.unit === "list" ? "Words, commas between." : `In: ${now.unit}.`}
      </p>
      <label htmlFor={`${id}-reason`}>By which ordinance or authority</label>
      <input
        id={`${id}-reason`}
        value={reason}
        autoComplete="off"
        onChange={(event) => setReason(event.target.value)}
      />
      {problem === null ? null : (
        <p className="problem" role="alert">
          {tied(problem)}
        </p>
      )}
      <div className="row">
        <button type="submit" className="strong">
          Put it in force
        </button>
        <button type="button" onClick={onDone}>
          Leave it
        </button>
      </div>
    </form>
  );
}
