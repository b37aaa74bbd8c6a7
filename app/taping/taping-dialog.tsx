/** Points as they were taped on the ground: typed or pasted, looked over, then drawn in one step. */
import { useEffect, useId, useState } from "react";
import { lengthText } from "../../rules/words/lengths.ts";
import { useDocument, useEditor } from "../editor-context.tsx";
import type { DrawingTool } from "../edits/templates.ts";
import { Dialog } from "../panels/dialog.tsx";
import { drawTaped } from "./draw-taped.ts";
import { keepTaping, keptTaping } from "./keep-taping.ts";
import { readTable } from "./read-table.ts";
import { type SolvedTaping, solveTaping } from "./solve-taping.ts";
import {
  DRAWABLES,
  drawableOf,
  emptyRow,
  emptyTaping,
  isEmptyRow,
  type Method,
  type Taping,
  type Thing,
} from "./taping.ts";
import { TapingPicture } from "./taping-picture.tsx";
import { Summary } from "./taping-summary.tsx";
import { TapingTable } from "./taping-table.tsx";
import "./taping.css";

const METHODS: readonly { readonly id: Method; readonly label: string }[] = [
  { id: "stakes", label: "From two stakes" },
  { id: "line", label: "Along a straight line" },
];

/** Accuracies are rounded up to this share of an inch. */
const ACCURACY_STEPS = 4;

export default function TapingDialog({ onClose }: { onClose(): void }) {
  const editor = useEditor();
  const site = useDocument((state) => state.shown);
  const units = site.display?.units ?? "ft-in";
  const { north, accuracy = 0 } = site;
  const [taping, setTaping] = useState<Taping | null>(null);
  const [chosen, setChosen] = useState(0);
  const [problem, setProblem] = useState<string | null>(null);
  const [setsAccuracy, setSetsAccuracy] = useState(true);
  /** The table before something was taken out of it, until something else is typed. */
  const [cleared, setCleared] = useState<Taping | null>(null);

  useEffect(() => {
    keptTaping().then(setTaping, (error: unknown) => {
      setTaping(emptyTaping("stakes"));
      setProblem(notKept(error));
    });
  }, []);
  /** `before`: what can be brought back, when something is taken away. */
  const change = (next: Taping, before: Taping | null = null) => {
    setTaping(next);
    setCleared(before);
    setProblem(null);
    keepTaping(next).catch((error: unknown) => setProblem(notKept(error)));
  };
  if (!taping) return null;

  const solved = solveTaping(taping, units, north);
  const at = Math.min(chosen, taping.things.length - 1);
  const thing = taping.things[at] as Thing;
  const setThing = (fields: Partial<Thing>) => {
    const takesAway = fields.rows !== undefined && fields.rows.length < thing.rows.length;
    const things = taping.things.map((one, i) => (i === at ? { ...one, ...fields } : one));
    change({ ...taping, things }, takesAway ? taping : null);
  };
  const paste = (text: string): boolean => {
    const read = readTable(text, taping.method, thing.tool, units);
    if (!read.ok) {
      setProblem(`Line ${read.line}: ${read.reason}`);
      return false;
    }
    // Only what nobody has begun gives way.
    const kept = taping.things.filter(({ name, rows }) => name.trim() !== "" || !rows.every(isEmptyRow));
    change({ ...taping, things: [...kept, ...read.things] });
    setChosen(kept.length);
    return true;
  };
  const reached = Math.ceil(solved.between * ACCURACY_STEPS) / ACCURACY_STEPS;
  const needsAccuracy = reached > accuracy;
  const draw = () => {
    const edit = drawTaped(taping, solved, needsAccuracy && setsAccuracy ? reached : null);
    const before = editor.document.getState().shown.elements.length;
    const refusal = editor.document.getState().edit(edit);
    if (refusal) {
      setProblem(refusal.reason);
      return;
    }
    const { elements } = editor.document.getState().shown;
    editor.view.getState().select(elements.slice(before).map(({ id }) => id));
    editor.canvas?.fit();
    onClose();
  };

  return (
    <Dialog title="Tape points in" className="dialog-wide taping" onClose={onClose}>
      <div className="scrolls taping-body">
        <Ground taping={taping} solved={solved} change={change} />
        <div className="taping-work">
          <div className="taping-thing">
            <ThingTabs taping={taping} at={at} choose={setChosen} change={change} />
            <ThingHead thing={thing} setThing={setThing} />
            <TapingTable
              thing={thing}
              solved={solved.things[at]?.rows ?? []}
              method={taping.method}
              hasSides={drawableOf(thing.tool).as !== "points"}
              units={units}
              onRows={(rows) => setThing({ rows })}
              onPasteTable={paste}
            />
            <button type="button" onClick={() => setThing({ rows: [...thing.rows, emptyRow(thing.rows.at(-1))] })}>
              Add a point
            </button>
            <PasteBox read={paste} method={taping.method} />
          </div>
          <TapingPicture solved={solved} isLine={taping.method === "line"} chosen={at} />
        </div>
      </div>
      <Summary taping={taping} solved={solved} units={units} site={site} />
      {problem === null ? null : (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <footer className="taping-foot">
        {needsAccuracy ? (
          <label>
            <input type="checkbox" checked={setsAccuracy} onChange={(event) => setSetsAccuracy(event.target.checked)} />
            Take the drawing as exact to {lengthText(reached, units)}, as it was taped: what is closer than that to a
            limit becomes a question
          </label>
        ) : null}
        <div className="dialog-buttons">
          <button
            type="button"
            onClick={() => {
              change(cleared ?? emptyTaping(taping.method), cleared ? null : taping);
              setChosen(0);
            }}
          >
            {cleared ? "Bring the table back" : "Clear the table"}
          </button>
          <button type="button" className="strong" onClick={draw}>
            Draw it
          </button>
        </div>
      </footer>
    </Dialog>
  );
}

interface PartProps {
  readonly taping: Taping;
  change(next: Taping, before?: Taping): void;
}

/** How it was taped, and where on the sheet the stakes or the line stand. */
function Ground({ taping, solved, change }: PartProps & { readonly solved: SolvedTaping }) {
  const isStakes = taping.method === "stakes";
  const fields: readonly [keyof SolvedTaping["faults"], string][] = [
    ...(isStakes ? ([["apart", "From A to B"]] satisfies [keyof SolvedTaping["faults"], string][]) : []),
    ["startX", isStakes ? "A, to the right" : "Start, to the right"],
    ["startY", isStakes ? "A, up" : "Start, up"],
    ["bearing", isStakes ? "Direction A to B" : "Direction"],
    ["tape", "A tape may be off by"],
  ];
  return (
    <>
      <fieldset className="switch" aria-label="How it was taped">
        {METHODS.map(({ id, label }) => (
          <button
            key={id}
            type="button"
            aria-pressed={taping.method === id}
            onClick={() => change({ ...taping, method: id })}
          >
            {label}
          </button>
        ))}
      </fieldset>
      <p className="soft">
        {isStakes
          ? "Drive two stakes, A and B, that see the whole outline. Tape every point from both, to the inside wall and not to the nose of the coping. Left and right are seen from A toward B."
          : "Stretch a line. For every point give how far along the line it lies and how far square off it. Left and right are seen along the line."}
      </p>
      <div className="taping-ground">
        {fields.map(([field, label]) => (
          <GroundField
            key={field}
            label={label}
            value={taping[field]}
            fault={field === "apart" && taping.apart === "" ? undefined : solved.faults[field]}
            onChange={(value) => change({ ...taping, [field]: value })}
          />
        ))}
      </div>
    </>
  );
}

interface GroundFieldProps {
  readonly label: string;
  readonly value: string;
  readonly fault: string | undefined;
  onChange(value: string): void;
}

function GroundField({ label, value, fault, onChange }: GroundFieldProps) {
  const id = useId();
  return (
    <div className="taping-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={value}
        autoComplete="off"
        aria-invalid={fault !== undefined || undefined}
        onChange={(event) => onChange(event.target.value)}
      />
      {fault === undefined ? null : <p className="problem">{fault}</p>}
    </div>
  );
}

function ThingTabs({ taping, at, choose, change }: PartProps & { readonly at: number; choose(index: number): void }) {
  return (
    <div className="row">
      {taping.things.map((thing, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: things are known by their place in the table
        <button key={i} type="button" aria-pressed={i === at} onClick={() => choose(i)}>
          {thing.name.trim() === "" ? drawableOf(thing.tool).label : thing.name}
        </button>
      ))}
      <button
        type="button"
        className="plain"
        onClick={() => {
          change({ ...taping, things: [...taping.things, { tool: "surface", name: "", rows: [emptyRow()] }] });
          choose(taping.things.length);
        }}
      >
        Add another thing
      </button>
      {taping.things.length > 1 ? (
        <button
          type="button"
          className="plain"
          onClick={() => {
            change({ ...taping, things: taping.things.filter((_, i) => i !== at) }, taping);
            choose(Math.max(0, at - 1));
          }}
        >
          Take this one away
        </button>
      ) : null}
    </div>
  );
}

function ThingHead({ thing, setThing }: { readonly thing: Thing; setThing(fields: Partial<Thing>): void }) {
  const [kindId, nameId] = [useId(), useId()];
  return (
    <div className="taping-ground">
      <div className="taping-field">
        <label htmlFor={kindId}>Drawn as</label>
        <select
          id={kindId}
          value={thing.tool}
          onChange={(event) => setThing({ tool: event.target.value as DrawingTool })}
        >
          {DRAWABLES.map(({ tool, label }) => (
            <option key={tool} value={tool}>
              {label}
            </option>
          ))}
        </select>
      </div>
      <div className="taping-field">
        <label htmlFor={nameId}>Name</label>
        <input
          id={nameId}
          value={thing.name}
          maxLength={200}
          autoComplete="off"
          onChange={(event) => setThing({ name: event.target.value })}
        />
      </div>
    </div>
  );
}

function PasteBox({ read, method }: { readonly method: Method; read(text: string): boolean }) {
  const [text, setText] = useState("");
  const id = useId();
  return (
    <details className="taping-paste">
      <summary>Paste a table</summary>
      <label htmlFor={id}>
        A line for each point, cells apart by tabs, commas or semicolons. A line of words begins the next thing.
      </label>
      <textarea
        id={id}
        rows={5}
        value={text}
        placeholder={
          method === "stakes"
            ? `Pool\n1, 12' 4", 20' 1"\n2, 18' 0", 15' 7 1/2", left, curve`
            : `Pool\n0, 5'\n20', 5' 6"`
        }
        onChange={(event) => setText(event.target.value)}
      />
      <button type="button" disabled={text.trim() === ""} onClick={() => read(text) && setText("")}>
        Read it
      </button>
    </details>
  );
}

function notKept(error: unknown): string {
  const said = error instanceof Error ? error.message : String(error);
  return `The browser does not keep this table (${said}): draw it before you close the page.`;
}
