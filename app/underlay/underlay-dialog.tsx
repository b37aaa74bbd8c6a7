/** A survey or photograph laid under the sheet: chosen, brought to scale by two places on it, shown, hidden, taken away. */
import { useId, useState } from "react";
import type { Point } from "../../geometry/types.ts";
import type { Underlay } from "../../rules/site/site.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { UNDERLAY_STRENGTH } from "../canvas/underlay-picture.tsx";
import { useDocument, useEditor } from "../editor-context.tsx";
import { setUnderlay } from "../edits/set-underlay.ts";
import { parseBearing } from "../entry/parse-bearing.ts";
import { parseLength } from "../entry/parse-length.ts";
import { Dialog } from "../panels/dialog.tsx";
import { FilePicker } from "./file-picker.tsx";
import { placeOf, placeUnderlay, wayOf } from "./place-underlay.ts";
import { EnlargedPlace, PlacesOnPicture } from "./places-on-picture.tsx";
import type { Picture } from "./read-picture.ts";
import { tracedAccuracy } from "./traced-accuracy.ts";
import "./underlay.css";

export default function UnderlayDialog({ onClose }: { onClose(): void }) {
  const underlay = useDocument((state) => state.shown.underlay);
  const [picture, setPicture] = useState<Picture | null>(null);
  const calibrated = picture ?? (underlay ? { ...underlay, name: underlay.name ?? "The picture" } : null);
  const [reads, setReads] = useState(0);
  const [isPlacing, setIsPlacing] = useState(underlay === undefined);
  return (
    <Dialog
      title="Picture underneath"
      className="dialog-wide underlay"
      staysOpen={calibrated !== null && isPlacing}
      onClose={onClose}
    >
      <FilePicker
        onRead={(read) => {
          setPicture(read);
          setReads((count) => count + 1);
          setIsPlacing(true);
        }}
      />
      {calibrated && isPlacing ? (
        <Calibrate key={reads} picture={calibrated} lies={picture === null ? underlay : undefined} onDone={onClose} />
      ) : null}
      {underlay && !isPlacing ? (
        <Kept underlay={underlay} onPlace={() => setIsPlacing(true)} onClose={onClose} />
      ) : null}
      {calibrated ? null : (
        <p className="soft">
          A scan of a survey, a photograph from above, or a page of a PDF. It is kept in the site file, dimmed and
          locked; nothing on it is judged, and it is not printed.
        </p>
      )}
    </Dialog>
  );
}

interface CalibrateProps {
  readonly picture: Pick<Underlay, "picture" | "width" | "height"> & { readonly name: string };
  /** The same picture as it lies on the sheet already: what is not typed stays so. */
  readonly lies: Underlay | undefined;
  onDone(): void;
}

function Calibrate({ picture, lies, onDone }: CalibrateProps) {
  const editor = useEditor();
  const units = useDocument((state) => state.shown.display?.units ?? "ft-in");
  const north = useDocument((state) => state.shown.north);
  const before = useDocument((state) => state.shown.underlay);
  const accuracy = useDocument((state) => state.shown.accuracy ?? 0);
  const [setsAccuracy, setSetsAccuracy] = useState(true);
  const [places, setPlaces] = useState<readonly [Point, Point]>([
    [Math.round(picture.width / 4), Math.round(picture.height / 2)],
    [Math.round((3 * picture.width) / 4), Math.round(picture.height / 2)],
  ]);
  const [active, setActive] = useState<0 | 1>(0);
  const [typed, setTyped] = useState({
    length: "",
    x: lies ? "" : '0"',
    y: lies ? "" : '0"',
    bearing: "",
  });
  const [problem, setProblem] = useState<string | null>(null);
  const put = (which: 0 | 1, at: Point) => setPlaces(which === 0 ? [at, places[1]] : [places[0], at]);
  const type = (fields: Partial<typeof typed>) => setTyped({ ...typed, ...fields });

  const now = lies ? { at: placeOf(lies, places[0]), bearing: wayOf(lies, places[0], places[1]) } : null;
  const read = readTyped(typed, now, units, north);
  const placed =
    read.problem === undefined ? placeUnderlay(picture.height, { first: places[0], second: places[1], ...read }) : null;
  const traced = placed ? tracedAccuracy(placed) : 0;
  const lay = () => {
    if (read.problem !== undefined) {
      setProblem(read.problem);
      return;
    }
    if (!placed) {
      setProblem("The two places are one. Put them far apart: the farther, the better the scale.");
      return;
    }
    const { name, width, height } = picture;
    const strength = before?.strength ?? UNDERLAY_STRENGTH;
    const refusal = editor.document
      .getState()
      .edit(
        setUnderlay(
          { name, picture: picture.picture, width, height, ...placed, strength },
          undefined,
          traced > accuracy && setsAccuracy ? traced : null,
        ),
      );
    if (refusal) {
      setProblem(refusal.reason);
      return;
    }
    editor.canvas?.fit();
    onDone();
  };

  return (
    <>
      <p>
        Put 1 and 2 on two places whose distance is known, such as the ends of a long boundary or of the house. Press
        Place 1 or Place 2, then where it lies on the picture.
      </p>
      <div className="underlay-work">
        <PlacesOnPicture picture={picture} places={places} active={active} put={put} next={() => setActive(1)} />
        <div className="underlay-fields">
          {([0, 1] as const).map((which) => (
            <fieldset key={which} className="underlay-place">
              <button type="button" aria-pressed={active === which} onClick={() => setActive(which)}>
                Place {which + 1}
              </button>
              {([0, 1] as const).map((axis) => (
                <input
                  key={axis}
                  type="number"
                  aria-label={`Place ${which + 1}, pixels ${axis === 0 ? "from the left" : "from the top"}`}
                  value={places[which][axis]}
                  min={0}
                  step="any"
                  max={axis === 0 ? picture.width : picture.height}
                  onChange={(event) => {
                    const value = Number(event.target.value);
                    put(which, axis === 0 ? [value, places[which][1]] : [places[which][0], value]);
                  }}
                />
              ))}
            </fieldset>
          ))}
          <div className="underlay-place">
            {([0, 1] as const).map((which) => (
              <EnlargedPlace key={which} picture={picture} at={places[which]} which={which} put={put} />
            ))}
          </div>
          <Typed label="From 1 to 2" value={typed.length} onChange={(length) => type({ length })} />
          <div className="underlay-place">
            <Typed label="1 lies right by" value={typed.x} onChange={(x) => type({ x })} />
            <Typed label="and up by" value={typed.y} onChange={(y) => type({ y })} />
          </div>
          {lies ? <p className="small soft">Empty: it stays where it lies.</p> : null}
          <Typed
            label="Direction from 1 to 2"
            value={typed.bearing}
            hint={lies ? "Empty: it stays turned as it is" : "Empty: the picture stays upright"}
            onChange={(bearing) => type({ bearing })}
          />
        </div>
      </div>
      {problem === null ? null : (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      {traced > accuracy ? (
        <label className="underlay-exact">
          <input type="checkbox" checked={setsAccuracy} onChange={(event) => setSetsAccuracy(event.target.checked)} />
          Take the drawing as exact to {lengthText(traced, units)}, as what is traced over the picture can be: what is
          closer than that to a limit becomes a question
        </label>
      ) : null}
      <div className="dialog-buttons">
        <button type="button" className="strong" onClick={lay}>
          Lay it underneath
        </button>
      </div>
    </>
  );
}

interface TypedFields {
  readonly length: string;
  readonly x: string;
  readonly y: string;
  readonly bearing: string;
}

type Read =
  | { readonly problem: string }
  | { readonly problem?: undefined; readonly length: number; readonly at: Point; readonly bearing: number | null };

/** `now`: where place 1 lies on the sheet and which way 2 lies from it, for a picture that lies there already. */
function readTyped(
  { length, x, y, bearing }: TypedFields,
  now: { readonly at: Point; readonly bearing: number } | null,
  units: Units,
  north: number | undefined,
): Read {
  const known = parseLength(length, units);
  if (!known.ok) return { problem: `From 1 to 2: ${known.reason}` };
  if (known.inches === 0) return { problem: "From 1 to 2: this has to be more than zero." };
  const [right, up] = [x, y].map((text, axis) =>
    now && text.trim() === ""
      ? ({ ok: true, inches: now.at[axis] ?? 0 } as const)
      : parseLength(text, units, { mayBeNegative: true }),
  );
  if (!right?.ok || !up?.ok) return { problem: "Where 1 lies on the sheet: type two lengths, such as 0 and 0." };
  const turned = bearing.trim() === "" ? null : parseBearing(bearing, north);
  if (turned && !turned.ok) return { problem: `Direction from 1 to 2: ${turned.reason}` };
  const at: Point = [right.inches, up.inches];
  return { length: known.inches, at, bearing: turned ? turned.degrees : (now?.bearing ?? null) };
}

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly hint?: string;
  onChange(value: string): void;
}

function Typed({ label, value, hint, onChange }: FieldProps) {
  const id = useId();
  return (
    <div className="underlay-field">
      <label htmlFor={id}>{label}</label>
      <input id={id} value={value} autoComplete="off" onChange={(event) => onChange(event.target.value)} />
      {hint === undefined ? null : <p className="small soft">{hint}</p>}
    </div>
  );
}

interface KeptProps {
  readonly underlay: Underlay;
  onPlace(): void;
  onClose(): void;
}

/** What can be done with the picture that lies there. */
function Kept({ underlay, onPlace, onClose }: KeptProps) {
  const editor = useEditor();
  const id = useId();
  const [strength, setStrength] = useState(underlay.strength ?? UNDERLAY_STRENGTH);
  const edit = (next: Underlay | null, label: string) => {
    const refusal = editor.document.getState().edit(setUnderlay(next, label));
    if (refusal) editor.view.getState().say(refusal.reason, "problem");
  };
  return (
    <>
      <p>
        {underlay.name ?? "The picture"}, {(1 / underlay.inchesPerPixel).toFixed(2)} pixels to an inch.
      </p>
      <div className="underlay-field">
        <label htmlFor={id}>How strongly it shows</label>
        <input
          id={id}
          type="range"
          min={0.1}
          max={1}
          step={0.05}
          value={strength}
          onChange={(event) => setStrength(Number(event.target.value))}
          onPointerUp={() => edit({ ...underlay, strength }, "Dim the picture underneath")}
          onKeyUp={() => edit({ ...underlay, strength }, "Dim the picture underneath")}
        />
      </div>
      <div className="dialog-buttons">
        <button
          type="button"
          onClick={() =>
            edit(
              { ...underlay, hidden: underlay.hidden !== true },
              underlay.hidden ? "Show the picture underneath" : "Hide the picture underneath",
            )
          }
        >
          {underlay.hidden ? "Show it" : "Hide it"}
        </button>
        <button
          type="button"
          onClick={() => {
            edit(null, "Take the picture underneath away");
            onClose();
          }}
        >
          Take it away
        </button>
        <button type="button" onClick={onPlace}>
          Bring it to scale again
        </button>
        <button type="button" className="strong" onClick={onClose}>
          Back to the sheet
        </button>
      </div>
    </>
  );
}
