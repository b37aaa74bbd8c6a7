/** The rows of one taped thing. */
import { Trash2 } from "lucide-react";
import { type ClipboardEvent, type KeyboardEvent, useRef } from "react";
import { flushSync } from "react-dom";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { tip } from "../panels/tip-props.ts";
import type { SolvedRow } from "./solve-taping.ts";
import { emptyRow, type Method, type Row, type Thing } from "./taping.ts";

interface TapingTableProps {
  readonly thing: Thing;
  readonly solved: readonly SolvedRow[];
  readonly method: Method;
  /** Points are joined by sides. */
  readonly hasSides: boolean;
  readonly units: Units;
  onRows(rows: readonly Row[]): void;
  /** Several lines were pasted into a field. */
  onPasteTable(text: string): void;
}

export function TapingTable({ thing, solved, method, hasSides, units, onRows, onPasteTable }: TapingTableProps) {
  const box = useRef<HTMLTableElement>(null);
  const { rows } = thing;
  const change = (index: number, fields: Partial<Row>) =>
    onRows(rows.map((row, i) => (i === index ? { ...row, ...fields } : row)));
  const isStakes = method === "stakes";
  const columns = isStakes ? (["first", "second", "check"] as const) : (["first", "second"] as const);
  const heads = isStakes ? ["From A", "From B", "To the point before"] : ["Along", "Off"];

  const goTo = (row: number, column: number) =>
    box.current?.querySelector<HTMLInputElement>(`[data-cell="${row} ${column}"]`)?.focus();
  const onKey = (event: KeyboardEvent, row: number, column: number) => {
    const step = event.key === "ArrowUp" ? -1 : event.key === "ArrowDown" || event.key === "Enter" ? 1 : 0;
    if (step === 0) return;
    event.preventDefault();
    if (row + step === rows.length && event.key === "Enter") {
      // The new row has to stand before it can take the focus.
      flushSync(() => onRows([...rows, emptyRow(rows.at(-1))]));
    }
    goTo(row + step, event.key === "Enter" ? 0 : column);
  };
  const onPaste = (event: ClipboardEvent) => {
    const text = event.clipboardData.getData("text");
    if (!/[\n\t]/.test(text.trim())) return;
    event.preventDefault();
    onPasteTable(text);
  };

  return (
    <table className="taping-table" ref={box}>
      <thead>
        <tr>
          <th scope="col">No.</th>
          {heads.map((head) => (
            <th scope="col" key={head}>
              {head}
            </th>
          ))}
          <th scope="col">Side</th>
          {hasSides ? <th scope="col">Curve to the next</th> : null}
          <th scope="col">Left out</th>
          <th scope="col">
            <span className="unseen">Take away</span>
          </th>
        </tr>
      </thead>
      {rows.map((row, i) => {
        const { faults = [], doubts = [], residuals = null } = solved[i] ?? {};
        const said = [...faults, ...doubts];
        const misfit = isStakes && said.length === 0 && residuals?.check != null ? residuals : null;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: points are known by their place in the table
          <tbody key={i} className={row.isLeftOut ? "left-out" : ""}>
            <tr>
              <th scope="row">{i + 1}</th>
              {columns.map((column, c) => (
                <td key={column}>
                  <input
                    value={row[column]}
                    data-cell={`${i} ${c}`}
                    aria-label={`${heads[c]}, point ${i + 1}`}
                    aria-invalid={faults.some((fault) => fault.startsWith(heads[c] as string)) || undefined}
                    autoComplete="off"
                    onChange={(event) => change(i, { [column]: event.target.value })}
                    onKeyDown={(event) => onKey(event, i, c)}
                    onPaste={onPaste}
                  />
                </td>
              ))}
              <td>
                <select
                  value={row.side}
                  aria-label={`Side, point ${i + 1}`}
                  onChange={(event) => change(i, { side: event.target.value === "right" ? "right" : "left" })}
                >
                  <option value="left">left</option>
                  <option value="right">right</option>
                </select>
              </td>
              {hasSides ? (
                <td className="check">
                  <label className="tick">
                    <input
                      type="checkbox"
                      checked={row.isCurved}
                      aria-label={`Curve from point ${i + 1} to the next`}
                      onChange={(event) => change(i, { isCurved: event.target.checked })}
                    />
                  </label>
                </td>
              ) : null}
              <td className="check">
                <label className="tick">
                  <input
                    type="checkbox"
                    checked={row.isLeftOut}
                    aria-label={`Leave point ${i + 1} out`}
                    onChange={(event) => change(i, { isLeftOut: event.target.checked })}
                  />
                </label>
              </td>
              <td>
                <button
                  type="button"
                  className="plain icon-button"
                  aria-label={`Take point ${i + 1} away`}
                  {...tip(`Take point ${i + 1} away`)}
                  disabled={rows.length === 1}
                  onClick={() => onRows(rows.filter((_, other) => other !== i))}
                >
                  <Trash2 size={16} aria-hidden="true" />
                </button>
              </td>
            </tr>
            {said.length > 0 || misfit ? (
              <tr>
                <td />
                <td colSpan={columns.length + (hasSides ? 4 : 3)}>
                  {said.map((one) => (
                    <p key={one} className={faults.includes(one) ? "problem" : "doubt"}>
                      {one}
                    </p>
                  ))}
                  {misfit ? <p className="small soft">{misfitText(misfit, units)}</p> : null}
                </td>
              </tr>
            ) : null}
          </tbody>
        );
      })}
    </table>
  );
}

function misfitText({ a, b, check }: NonNullable<SolvedRow["residuals"]>, units: Units): string {
  const one = (length: number | null) => lengthText(length ?? 0, units);
  return `Off by ${one(a)} from A, ${one(b)} from B, ${one(check)} to the point before.`;
}
