/** The first questions of a new site: which edition, permanent or storable, new or existing paving. Gone once answered. */
import { EDITION_IDS } from "../../rules/editions/edition.ts";
import { EDITIONS, editionInForce, namedEdition } from "../../rules/editions/in-force.ts";
import type { Site } from "../../rules/site/site.ts";
import { capitalized, elementName } from "../../rules/words/element-names.ts";
import { useDocument, useEditor } from "../editor-context.tsx";
import type { Edit } from "../edits/edit.ts";
import { setEdition } from "../edits/set-edition.ts";
import { setField } from "../edits/set-field.ts";
import "./code-panel.css";

export interface FirstQuestion {
  readonly id: string;
  readonly text: string;
  readonly options: readonly { readonly label: string; readonly edit: Edit }[];
}

/** What a site has not said yet, in the order in which it is asked. */
export function firstQuestions(site: Site): FirstQuestion[] {
  const asked: FirstQuestion[] = [];
  if (namedEdition(site) === null) {
    asked.push({
      id: "edition",
      text: "Which edition does the permit fall under?",
      options: EDITION_IDS.map((id) => ({ label: EDITIONS[id].title, edit: setEdition(id) })),
    });
  }
  const unpaved = editionInForce(site).value("perimeter.unpaved");
  for (const element of site.elements) {
    if (mayBeStored(element)) {
      asked.push({
        id: `storable ${element.id}`,
        text: `${capitalized(elementName(element))}: is it built to stay, or is it taken down and stored?`,
        options: [
          { label: "It stays", edit: setField(element.id, "storable", false) },
          { label: "It is stored", edit: setField(element.id, "storable", true) },
        ],
      });
    }
    const isPaving = element.kind === "surface" && !unpaved.includes(String(element.material));
    if (isPaving && element.existing === undefined) {
      asked.push({
        id: `existing ${element.id}`,
        text: `${capitalized(elementName(element))}: is it laid new, or is it there already?`,
        options: [
          { label: "It is new", edit: setField(element.id, "existing", false) },
          { label: "It is there already", edit: setField(element.id, "existing", true) },
        ],
      });
    }
  }
  return asked;
}

/** A pool that is neither storable nor built in by what the site says. */
function mayBeStored(element: Site["elements"][number]): boolean {
  if (element.kind !== "pool" || element.body !== "pool" || element.storable !== undefined) return false;
  return element.installation !== "in-ground" && element.installation !== "indoor";
}

/** Questions shown at once. */
const SHOWN = 3;

export function FirstQuestions() {
  const editor = useEditor();
  const site = useDocument((state) => state.shown);
  const asked = firstQuestions(site);
  if (asked.length === 0) return null;
  return (
    <section aria-label="First questions" className="first-questions">
      <h2>First questions</h2>
      <ul className="plain-list">
        {asked.slice(0, SHOWN).map((question) => (
          <li key={question.id}>
            <p>{question.text}</p>
            <div className="row">
              {question.options.map(({ label, edit }) => (
                <button
                  key={label}
                  type="button"
                  onClick={() => {
                    const refusal = editor.document.getState().edit(edit);
                    if (refusal) editor.view.getState().say(refusal.reason, "problem");
                  }}
                >
                  {label}
                </button>
              ))}
            </div>
          </li>
        ))}
      </ul>
      {asked.length > SHOWN ? <p className="small soft">{asked.length - SHOWN} more after these.</p> : null}
    </section>
  );
}
