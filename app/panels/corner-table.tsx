/** The corners of an element as numbers: every one can be typed, and every edge bent into an arc or made straight. */
import { useEffect, useState } from "react";
import { edgeFromVertices, pointAt } from "../../geometry/edge.ts";
import type { Units } from "../../rules/words/lengths.ts";
import { deleteVertex } from "../edits/delete-vertex.ts";
import type { AnyElement, Edit } from "../edits/edit.ts";
import { insertVertex } from "../edits/insert-vertex.ts";
import { moveElements } from "../edits/move-elements.ts";
import { moveVertex } from "../edits/move-vertex.ts";
import { hasHeights, type PathRef, pathOf, pathRefs, pointOf } from "../edits/path-ref.ts";
import { setBulge } from "../edits/set-bulge.ts";
import { setHeight } from "../edits/set-height.ts";
import { lengthEntry } from "../entry/length-entry.ts";
import { parseLength } from "../entry/parse-length.ts";
import { tip } from "./tip-props.ts";
import { useUnreadEntry } from "./unread-entry.ts";

interface CornerTableProps {
  readonly element: AnyElement;
  readonly units: Units;
  apply(edit: Edit): string | null;
}

export function CornerTable({ element, units, apply }: CornerTableProps) {
  const at = pointOf(element);
  if (at) {
    return (
      <fieldset className="corners">
        <legend>Position</legend>
        <div className="row">
          {([0, 1] as const).map((axis) => (
            <LengthCell
              key={axis}
              label={axis === 0 ? "To the right" : "Up"}
              inches={at[axis]}
              units={units}
              onChange={(value) =>
                apply(moveElements([element.id], axis === 0 ? value - at[0] : 0, axis === 1 ? value - at[1] : 0))
              }
            />
          ))}
        </div>
      </fieldset>
    );
  }
  return pathRefs(element).map((ref) => (
    <Corners key={`${ref.field} ${ref.index ?? ""}`} element={element} reference={ref} units={units} apply={apply} />
  ));
}

const BEND_HINT = "How far the middle of the side lies off the straight; a minus bends it to the other hand.";

/** Corners of an outline shown at once; a longer one is shown in pages. */
const PAGE = 40;

function Corners({ element, reference, units, apply }: CornerTableProps & { readonly reference: PathRef }) {
  const [page, setPage] = useState(0);
  const path = pathOf(element, reference);
  if (!path) return null;
  const heights = hasHeights(element);
  const pages = Math.ceil(path.vertices.length / PAGE);
  // The outline may have become shorter since its last page was turned to.
  const at = Math.min(page, pages - 1);
  const first = at * PAGE;
  const shown = path.vertices.slice(first, first + PAGE);
  const name = reference.index === undefined ? "Corners" : `Corners of inner outline ${reference.index + 1}`;
  return (
    <fieldset className="corners">
      <legend>{name}</legend>
      <table>
        <thead>
          <tr>
            <th scope="col">No.</th>
            <th scope="col">Right</th>
            <th scope="col">Up</th>
            <th scope="col" title={heights ? undefined : BEND_HINT}>
              {heights ? "Height" : "Bend"}
            </th>
            <th scope="col">
              <span className="unseen">Change</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((vertex, i) => {
            const index = first + i;
            const next = path.vertices[(index + 1) % path.vertices.length] ?? vertex;
            const lastOpen = !path.closed && index === path.vertices.length - 1;
            return (
              <tr key={index}>
                <th scope="row">{index + 1}</th>
                {([0, 1] as const).map((axis) => (
                  <td key={axis}>
                    <LengthCell
                      label={`Corner ${index + 1}, ${axis === 0 ? "right" : "up"}`}
                      hideLabel
                      inches={vertex[axis]}
                      units={units}
                      onChange={(value) =>
                        apply(
                          moveVertex(element.id, reference, index, [
                            axis === 0 ? value : vertex[0],
                            axis === 1 ? value : vertex[1],
                          ]),
                        )
                      }
                    />
                  </td>
                ))}
                <td>
                  {heights ? (
                    <LengthCell
                      label={`Corner ${index + 1}, height`}
                      hideLabel
                      inches={vertex[2]}
                      units={units}
                      onChange={(value) => apply(setHeight(element.id, index, value))}
                    />
                  ) : lastOpen ? null : (
                    <BendCell
                      label={`Bend of the side from corner ${index + 1}`}
                      chord={Math.hypot(next[0] - vertex[0], next[1] - vertex[1])}
                      bulge={vertex[2] ?? 0}
                      units={units}
                      onChange={(value) => apply(setBulge(element.id, reference, index, value))}
                    />
                  )}
                </td>
                <td className="row">
                  {lastOpen ? null : (
                    <button
                      type="button"
                      className="plain"
                      {...tip("Put a corner into the middle of the edge")}
                      aria-label={`Put a corner after corner ${index + 1}`}
                      onClick={() =>
                        apply(
                          insertVertex(
                            element.id,
                            reference,
                            index,
                            pointAt(edgeFromVertices(heights ? [vertex[0], vertex[1]] : vertex, next), 0.5),
                          ),
                        )
                      }
                    >
                      +
                    </button>
                  )}
                  <button
                    type="button"
                    className="plain"
                    aria-label={`Take away corner ${index + 1}`}
                    {...tip(`Take away corner ${index + 1}`)}
                    onClick={() => apply(deleteVertex(element.id, reference, index))}
                  >
                    −
                  </button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {pages > 1 ? (
        <div className="row">
          <button type="button" disabled={at === 0} onClick={() => setPage(at - 1)}>
            Corners before
          </button>
          <button type="button" disabled={at >= pages - 1} onClick={() => setPage(at + 1)}>
            Corners after
          </button>
        </div>
      ) : null}
    </fieldset>
  );
}

interface LengthCellProps {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly inches: number | undefined;
  readonly units: Units;
  onChange(inches: number): string | null;
}

export function LengthCell({ label, hideLabel = false, inches, units, onChange }: LengthCellProps) {
  const written = inches === undefined ? "" : lengthEntry(inches, units);
  return (
    <TypedCell
      label={label}
      hideLabel={hideLabel}
      written={written}
      read={(text) => {
        const read = parseLength(text, units, { mayBeNegative: true });
        return read.ok ? onChange(read.inches) : read.reason;
      }}
    />
  );
}

interface BendCellProps {
  readonly label: string;
  /** Straight distance between the side's ends, inches. */
  readonly chord: number;
  readonly bulge: number;
  readonly units: Units;
  onChange(bulge: number): string | null;
}

/** The bend as a tape finds it: how deep the arc is at its middle. A bulge is that depth over half the chord. */
function BendCell({ label, chord, bulge, units, onChange }: BendCellProps) {
  return (
    <TypedCell
      label={label}
      hideLabel
      written={bulge === 0 ? "" : lengthEntry((bulge * chord) / 2, units)}
      placeholder="straight"
      read={(text) => {
        if (text.trim() === "") return onChange(0);
        const read = parseLength(text, units, { mayBeNegative: true });
        return read.ok ? onChange((2 * read.inches) / chord) : read.reason;
      }}
    />
  );
}

interface TypedCellProps {
  readonly label: string;
  readonly hideLabel: boolean;
  readonly written: string;
  readonly placeholder?: string;
  read(text: string): string | null;
}

function TypedCell({ label, hideLabel, written, placeholder, read }: TypedCellProps) {
  const [text, setText] = useState(written);
  const [problem, setProblem] = useState<string | null>(null);
  const keep = useUnreadEntry(label);
  const refuse = (reason: string | null) => {
    keep(reason);
    setProblem(reason);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is written begins anew, and only that.
  useEffect(() => {
    setText(written);
    refuse(null);
  }, [written]);
  const commit = () => refuse(text === written ? null : read(text));
  return (
    <label className="cell">
      <span className={hideLabel ? "unseen" : undefined}>{label}</span>
      <input
        value={text}
        placeholder={placeholder ?? ""}
        aria-invalid={problem !== null}
        title={problem ?? ""}
        autoComplete="off"
        onChange={(event) => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === "Enter") commit();
          if (event.key !== "Escape") return;
          setText(written);
          refuse(null);
        }}
      />
      {problem === null ? null : (
        <span className="problem" role="alert">
          {problem}
        </span>
      )}
    </label>
  );
}
