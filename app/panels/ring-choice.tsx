/** How the ring is laid: evenly or pulled short, how far out, and the three lengths to choose by. */
import { useEffect, useId, useState } from "react";
import { editionInForce } from "../../rules/editions/in-force.ts";
import type { RingReport } from "../../rules/report.ts";
import { DEFAULT_SETTINGS } from "../../rules/site/defaults.ts";
import { copperText, lengthText, type Units } from "../../rules/words/lengths.ts";
import { useDocument, useEditor, useView } from "../editor-context.tsx";
import { setSetting } from "../edits/set-site-field.ts";
import { lengthEntry } from "../entry/length-entry.ts";
import { parseLength } from "../entry/parse-length.ts";

interface RingChoiceProps {
  readonly ring: RingReport;
  readonly units: Units | undefined;
}

const STYLES = ["even", "short"] as const;

export function RingChoice({ ring, units = "ft-in" }: RingChoiceProps) {
  const editor = useEditor();
  const style = useDocument((state) => state.shown.settings?.ringStyle) ?? DEFAULT_SETTINGS.ringStyle;
  const choose = (next: (typeof STYLES)[number]) => {
    const refusal = editor.document.getState().edit(setSetting("ringStyle", next));
    if (refusal) editor.view.getState().say(refusal.reason, "problem");
  };
  if (ring.loops.length === 0) {
    return <p className="panel-note">No ring is planned on this sheet.</p>;
  }
  return (
    <div className="ring-choice">
      <h3>Ring</h3>
      <div className="ring-row">
        <fieldset className="switch">
          <legend className="unseen">How the ring is laid</legend>
          {STYLES.map((one) => (
            <button key={one} type="button" aria-pressed={style === one} onClick={() => choose(one)}>
              {one === "even" ? "Even" : "Short"}
            </button>
          ))}
        </fieldset>
        <OffsetField units={units} />
      </div>
      <dl className="sums">
        <div className={style === "even" ? "sum-chosen" : ""}>
          <dt>Even, {lengthText(ring.offset, units)} out</dt>
          <dd>{copperText(ring.length, units)}</dd>
        </div>
        <div className={style === "short" ? "sum-chosen" : ""}>
          <dt>Short, within both limits</dt>
          <dd>{ring.short ? copperText(ring.short.length, units) : "no room for one"}</dd>
        </div>
        <div>
          <dt>{ring.legalIn === "part" ? "Shortest the code allows, where one fits" : "Shortest the code allows"}</dt>
          <dd>{copperText(ring.shortestLegal, units)}</dd>
        </div>
      </dl>
      {(ring.tooClose ?? []).length > 0 ? (
        <p className="problem">
          {copperText(
            (ring.tooClose ?? []).reduce((sum, stretch) => sum + stretch.length, 0),
            units,
          )}{" "}
          of the ring finds no legal place: see Findings, Perimeter.
        </p>
      ) : null}
    </div>
  );
}

function OffsetField({ units }: { readonly units: Units }) {
  const editor = useEditor();
  const id = useId();
  const site = useDocument((state) => state.shown);
  const setHighlight = useView((view) => view.setHighlight);
  const edition = editionInForce(site);
  const [least, most] = [edition.value("ring.min"), edition.value("ring.max")];
  const written = lengthEntry(site.settings?.ringOffset ?? DEFAULT_SETTINGS.ringOffset, units);
  const [text, setText] = useState(written);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    setText(written);
    setProblem(null);
  }, [written]);

  const commit = () => {
    setHighlight(null);
    if (text.trim() === written) return setProblem(null);
    // A bare number is inches here: nobody lays a ring 21 feet out.
    const typed = /^\d+(\.\d+)?$/.test(text.trim()) && units !== "m" ? `${text.trim()}in` : text;
    const read = parseLength(typed, units);
    if (!read.ok) return setProblem(read.reason);
    const { inches } = read;
    if (inches < least || inches > most) {
      return setProblem(`The ring lies ${lengthText(least, units)} to ${lengthText(most, units)} out.`);
    }
    const refusal = editor.document.getState().edit(setSetting("ringOffset", inches));
    setProblem(refusal?.reason ?? null);
  };

  return (
    <div className="offset">
      <label htmlFor={id}>Offset</label>
      <input
        id={id}
        value={text}
        autoComplete="off"
        aria-invalid={problem !== null}
        aria-describedby={`${id}-limits`}
        onFocus={() => setHighlight("ring")}
        onChange={(event) => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === "Enter") commit();
          if (event.key === "Escape") {
            setText(written);
            setProblem(null);
          }
        }}
      />
      <span className="small soft" id={`${id}-limits`}>
        {lengthText(least, units)} to {lengthText(most, units)}
      </span>
      {problem === null ? null : (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
