/** Dimensions that somebody drew: each with its length, how far its line lies away, and a button that takes it away. */
import type { Dimension } from "../../rules/site/site.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { finder } from "../dimensions/anchors.ts";
import { dimensionLine } from "../dimensions/dimension-line.ts";
import { useDocument } from "../editor-context.tsx";
import { moveDimension, removeDimension } from "../edits/dimension-edits.ts";
import type { Edit } from "../edits/edit.ts";
import { LengthCell } from "./corner-table.tsx";

interface DimensionListProps {
  /** Only those with an end on this element; all when absent. */
  readonly element?: string;
  apply(edit: Edit): string | null;
}

export function DimensionList({ element, apply }: DimensionListProps) {
  const site = useDocument((state) => state.shown);
  const units = site.display?.units ?? "ft-in";
  const find = finder(site);
  const listed = (site.dimensions ?? []).flatMap((dimension) => {
    const { from, to } = dimension;
    const line = dimensionLine(dimension, find);
    const isWanted = element === undefined || from.element === element || to.element === element;
    return isWanted ? [{ dimension, length: line ? lengthText(line.length, units) : "not on the sheet" }] : [];
  });
  if (listed.length === 0) return null;
  return (
    <fieldset className="corners">
      <legend>Dimensions</legend>
      {listed.map(({ dimension, length }) => (
        <div className="row" key={dimension.id}>
          <strong className="dimension-length">{length}</strong>
          <LengthCell
            label={`Line of dimension ${length} away by`}
            hideLabel
            inches={dimension.offset}
            units={units}
            onChange={(offset) => apply(moveDimension(dimension.id, wayOf(dimension, offset)))}
          />
          <button
            type="button"
            aria-label={`Take dimension ${length} away`}
            onClick={() => apply(removeDimension(dimension.id))}
          >
            Take away
          </button>
        </div>
      ))}
    </fieldset>
  );
}

function wayOf({ direction }: Dimension, offset: number) {
  return direction === undefined ? { offset } : { offset, direction };
}
