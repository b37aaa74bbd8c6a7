/** The facts of what is selected: every field with a typed control; with nothing selected, the facts of the site. */

import { RULE_HEADINGS } from "../../rules/catalogue/headings.ts";
import { EDITION_IDS } from "../../rules/editions/edition.ts";
import { EDITIONS } from "../../rules/editions/in-force.ts";
import { isKnownKind } from "../../rules/site/element-check.ts";
import type { Kind } from "../../rules/site/elements.ts";
import { type Field, fieldsOf, KIND_LABELS, siteFields } from "../../rules/site/field-list.ts";
import { capitalized, elementName, namesOf } from "../../rules/words/element-names.ts";
import { OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { ArrangePanel } from "../arranging/arrange-panel.tsx";
import { runCommand } from "../commands/command.ts";
import { useDocument, useEditor, useReport, useView } from "../editor-context.tsx";
import type { AnyElement, Edit } from "../edits/edit.ts";
import { setEdition } from "../edits/set-edition.ts";
import { setField } from "../edits/set-field.ts";
import { setSetting, setSiteField } from "../edits/set-site-field.ts";
import { CornerTable } from "./corner-table.tsx";
import { DimensionList } from "./dimension-list.tsx";
import { FieldControl } from "./field-control.tsx";
import { OutcomeMark } from "./outcome-mark.tsx";

export function ElementPanel() {
  const site = useDocument((state) => state.shown);
  const selection = useView((view) => view.selection);
  const editor = useEditor();
  const opened = useDocument((state) => state.opened);
  const chosen = site.elements.filter((element) => selection.includes(element.id));
  const [only] = chosen;
  if (!only) return <SiteFacts key={opened} />;
  if (chosen.length > 1) {
    return (
      <section aria-label="Selection">
        <h2>{chosen.length} elements selected</h2>
        <Buttons />
        <ArrangePanel ids={chosen.map(({ id }) => id)} />
        <ul className="plain-list" aria-label="What is selected">
          {chosen.slice(0, MOST_LISTED).map((element) => (
            <li key={element.id}>{capitalized(elementName(element))}</li>
          ))}
          {chosen.length > MOST_LISTED ? <li className="soft">and {chosen.length - MOST_LISTED} more</li> : null}
        </ul>
      </section>
    );
  }
  const apply = (edit: Edit): string | null => editor.document.getState().edit(edit)?.reason ?? null;
  return <ElementFacts element={only} apply={apply} key={`${opened} ${only.id}`} />;
}

/** Names listed of a selection; the outline marks all of them. */
const MOST_LISTED = 40;

function Buttons({ kind }: { readonly kind?: string }) {
  const editor = useEditor();
  return (
    <div className="row">
      {["duplicate", "delete", ...(kind === "pool" ? ["pool-dimensions"] : [])].map((id) => (
        <button key={id} type="button" onClick={() => runCommand(editor, editor.commands.get(id))}>
          {id === "pool-dimensions" ? "Change its dimensions" : editor.commands.get(id).label}
        </button>
      ))}
    </div>
  );
}

interface ElementFactsProps {
  readonly element: AnyElement;
  apply(edit: Edit): string | null;
}

function ElementFacts({ element, apply }: ElementFactsProps) {
  const elements = useDocument((state) => state.shown.elements);
  const units = useDocument((state) => state.shown.display?.units) ?? "ft-in";
  const report = useReport();
  const chooseFinding = useView((view) => view.chooseFinding);
  if (!isKnownKind(element.kind)) {
    return (
      <section aria-label="Facts">
        <h2>{capitalized(elementName(element))}</h2>
        <p className="panel-note">
          This version does not know the kind “{element.kind}”. It is kept as it is, and the report asks about it.
        </p>
        <Buttons />
      </section>
    );
  }
  const kind = element.kind as Kind;
  const names = namesOf(elements);
  const others = elements
    .filter((other) => other.id !== element.id)
    .map(({ id }) => ({ id, name: names.get(id) ?? id }));
  const fields = fieldsOf(kind).filter((field) => !field.isGeometry && field.name !== "id");
  const findings = (report?.findings ?? []).filter((finding) => (finding.element ?? finding.body) === element.id);
  const values = element as Readonly<Record<string, unknown>>;
  return (
    <section aria-label="Facts">
      <p className="small soft">
        {KIND_LABELS[kind].label}, {element.id}
      </p>
      <h2>{capitalized(elementName(element))}</h2>
      {findings.length === 0 ? null : (
        <ul className="fact-findings" aria-label="Its findings">
          {findings.map((finding) => (
            <li key={finding.id}>
              <button type="button" className="plain fact-finding" onClick={() => chooseFinding(finding.id)}>
                <OutcomeMark outcome={finding.outcome} />
                <span>{RULE_HEADINGS.get(finding.rule)?.title ?? finding.section}</span>
                <span className="small soft">{OUTCOME_WORDS[finding.outcome]}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <Buttons kind={kind} />
      <ArrangePanel ids={[element.id]} />
      {fields.map((field) => (
        <FieldControl
          key={field.name}
          field={field}
          value={values[field.name]}
          units={units}
          elements={others}
          onChange={(value) => apply(setField(element.id, field.name, value))}
        />
      ))}
      <CornerTable element={element} units={units} apply={apply} />
      <DimensionList element={element.id} apply={apply} />
    </section>
  );
}

function SiteFacts() {
  const editor = useEditor();
  const site = useDocument((state) => state.shown);
  const units = site.display?.units ?? "ft-in";
  const apply = (edit: Edit): string | null => editor.document.getState().edit(edit)?.reason ?? null;
  return (
    <section aria-label="Facts of the site">
      <h2>The site</h2>
      <p className="panel-note">Select something on the sheet to see and change its facts.</p>
      <div className="field">
        <label htmlFor="site-edition">Edition of the code</label>
        <select
          id="site-edition"
          value={site.edition ?? ""}
          onChange={(event) => {
            const id = EDITION_IDS.find((edition) => edition === event.target.value);
            if (id) apply(setEdition(id));
          }}
        >
          {site.edition !== undefined && EDITION_IDS.some((id) => id === site.edition) ? null : (
            <option value={site.edition ?? ""}>not settled</option>
          )}
          {EDITION_IDS.map((id) => (
            <option key={id} value={id}>
              {EDITIONS[id].title}
            </option>
          ))}
        </select>
        <p className="small soft">Ask which edition the permit falls under.</p>
      </div>
      {siteFields()
        .filter((field) => field.name !== "edition")
        .map((field: Field) => (
          <FieldControl
            key={field.name}
            field={field}
            value={siteValue(site, field.name)}
            units={units}
            elements={[]}
            onChange={(value) =>
              apply(
                field.name.startsWith("settings.")
                  ? setSetting(field.name.slice("settings.".length), value)
                  : setSiteField(field.name, value),
              )
            }
          />
        ))}
      <DimensionList apply={apply} />
    </section>
  );
}

function siteValue(site: object, name: string): unknown {
  let value: unknown = site;
  for (const key of name.split(".")) value = (value as Readonly<Record<string, unknown>> | undefined)?.[key];
  return value;
}
