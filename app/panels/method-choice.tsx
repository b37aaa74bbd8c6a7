/** Which method bonds the perimeter: every choice with its copper and joints, and why one is not open. */
import { Fragment, useId } from "react";
import type { MethodsReport } from "../../rules/report.ts";
import { DEFAULT_SETTINGS } from "../../rules/site/defaults.ts";
import { optionLabel } from "../../rules/site/kind-labels.ts";
import { PERIMETER_CHOICES, type PerimeterChoice } from "../../rules/site/site.ts";
import { BONDING_WORDS } from "../../rules/words/comparison.ts";
import { capitalized, elementName } from "../../rules/words/element-names.ts";
import { areaText, copperText, type Units } from "../../rules/words/lengths.ts";
import { useDocument, useEditor } from "../editor-context.tsx";
import { setSetting } from "../edits/set-site-field.ts";

interface MethodChoiceProps {
  readonly methods: readonly MethodsReport[];
  readonly units: Units | undefined;
}

export function MethodChoice({ methods, units }: MethodChoiceProps) {
  const editor = useEditor();
  const id = useId();
  const elements = useDocument((state) => state.shown.elements);
  const chosen = useDocument((state) => state.shown.settings?.perimeterMethod) ?? DEFAULT_SETTINGS.perimeterMethod;
  if (methods.length === 0) return null;
  const choose = (next: PerimeterChoice) => {
    const refusal = editor.document.getState().edit(setSetting("perimeterMethod", next));
    if (refusal) editor.view.getState().say(refusal.reason, "problem");
  };
  const nameOf = (pool: string) => {
    const element = elements.find((one) => one.id === pool);
    return element ? elementName(element) : pool;
  };
  const hasSeveralPools = new Set(methods.flatMap(({ pools }) => pools)).size > 1;
  const pieceName = ({ pool, surface }: { readonly pool: string; readonly surface: string | null }) => {
    const by = surface === null || hasSeveralPools ? ` by ${nameOf(pool)}` : "";
    return `${surface === null ? "bare ground" : nameOf(surface)}${by}`;
  };
  return (
    <fieldset className="method-choice">
      <legend>Perimeter</legend>
      {PERIMETER_CHOICES.map((method) => {
        const { copper, joints, isAllowed, notes } = summed(methods, method);
        const pieces = chosen === method ? piecesOf(methods, method) : [];
        return (
          <Fragment key={method}>
            <label>
              <input
                type="radio"
                name={`${id}-method`}
                value={method}
                checked={chosen === method}
                disabled={!isAllowed}
                aria-describedby={notes.length > 0 ? `${id}-${method}` : undefined}
                onChange={() => choose(method)}
              />
              <span>{optionLabel(method, "settings.perimeterMethod")}</span>
              <span className={isAllowed ? "method-amount" : "method-amount faint"}>
                {isAllowed
                  ? `${copperText(copper, units)}, ${joints === 1 ? "1 joint" : `${joints} joints`}`
                  : "not allowed"}
              </span>
            </label>
            {pieces.length > 0 ? (
              <ul className="plain-list small method-note" aria-label="What it lays where">
                {pieces.slice(0, MOST_PIECES).map((piece) => (
                  <li key={`${piece.pool} ${piece.surface} ${piece.method}`}>
                    {capitalized(pieceName(piece))}: {BONDING_WORDS[piece.method]}, {areaText(piece.area, units)}
                    {piece.existing && piece.method !== "steel" ? ", there already" : ""}
                  </li>
                ))}
                {pieces.length > MOST_PIECES ? (
                  <li className="soft">and {pieces.length - MOST_PIECES} more, under Perimeter</li>
                ) : null}
              </ul>
            ) : null}
            {notes.length > 0 ? (
              <div id={`${id}-${method}`} className="small soft method-note">
                {notes.map(({ pool, note }) => (
                  <p key={pool}>{methods.length > 1 ? `${nameOf(pool)}: ${note}` : note}</p>
                ))}
              </div>
            ) : null}
          </Fragment>
        );
      })}
    </fieldset>
  );
}

/** Pieces listed of the method in force. */
const MOST_PIECES = 8;

/** What the method in force lays on each piece; where a perimeter does not allow it, what is laid there instead. */
function piecesOf(
  methods: readonly MethodsReport[],
  method: PerimeterChoice,
): MethodsReport["choices"][number]["pieces"] {
  return methods.flatMap(({ choices }) => {
    const choice = choices.find((one) => one.method === method);
    const laid = choice?.allowed ? choice : choices.find((one) => one.method === "least-copper");
    return laid?.pieces ?? [];
  });
}

interface Summed {
  readonly copper: number;
  readonly joints: number;
  readonly isAllowed: boolean;
  readonly notes: readonly { readonly pool: string; readonly note: string }[];
}

/**
 * A choice over all perimeters, as it is one setting for the site. A perimeter that does not allow it keeps its allowed
 * method, so that one's copper counts there.
 */
function summed(methods: readonly MethodsReport[], method: PerimeterChoice): Summed {
  let [copper, joints, isAllowed] = [0, 0, false];
  const notes: { pool: string; note: string }[] = [];
  for (const { pool, choices } of methods) {
    const choice = choices.find((one) => one.method === method);
    const laid = choice?.allowed ? choice : choices.find((one) => one.method === "least-copper");
    copper += laid?.copper ?? 0;
    joints += laid?.connections ?? 0;
    isAllowed ||= choice?.allowed === true;
    if (choice && choice.note !== "") notes.push({ pool, note: choice.note });
  }
  return { copper, joints, isAllowed, notes };
}
