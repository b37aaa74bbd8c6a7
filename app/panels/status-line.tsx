/** The line under the sheet: what to do with the tool in hand, snapping, and how large the sheet is shown. */
import { ListPlus, Magnet, Maximize, Minus, Plus } from "lucide-react";
import { runCommand } from "../commands/command.ts";
import { useDocument, useEditor, useView } from "../editor-context.tsx";
import { commandTip } from "./tip-props.ts";
import { ToolIcon } from "./tool-icons.tsx";
import { ADDING_HINT, labelOf, RESHAPING_HINT, TOOL_HINTS, touchHint } from "./tool-words.ts";
import { useCoarsePointer } from "./use-coarse-pointer.ts";

export function StatusLine() {
  const editor = useEditor();
  const isCoarse = useCoarsePointer();
  const tool = useView((view) => view.tool);
  const snapping = useView((view) => view.snapping);
  const adding = useView((view) => view.adding);
  const isReshaping = useView((view) => view.reshaping !== null);
  const refusal = useDocument((state) => state.refusal?.reason ?? null);
  const isMoving = useDocument((state) => state.gesture !== null);
  const ofTool = isCoarse ? touchHint(tool) : TOOL_HINTS[tool];
  const ofAdding = isCoarse ? ADDING_HINT : `${ADDING_HINT} Escape ends it.`;
  const hint = isReshaping ? RESHAPING_HINT : adding && tool === "select" ? ofAdding : ofTool;
  const button = (id: string, sign: React.ReactNode) => {
    const command = editor.commands.get(id);
    return (
      <button
        type="button"
        className="plain icon-button"
        aria-label={command.label}
        {...commandTip(command)}
        onClick={() => runCommand(editor, command)}
      >
        {sign}
      </button>
    );
  };
  return (
    <footer className="status">
      <p className={isMoving && refusal !== null ? "hint hint-problem" : "hint"}>
        {isMoving && refusal !== null ? (
          refusal
        ) : (
          <>
            <strong>{labelOf(tool)}.</strong> {hint}
          </>
        )}
      </p>
      <p className="status-caution">A drawing aid, not an approval.</p>
      <div className="zoom">
        {isCoarse && tool === "select" ? (
          <button
            type="button"
            className="plain icon-button"
            aria-pressed={adding}
            aria-label="Add what is picked to the selection"
            {...commandTip(editor.commands.get("select-more"))}
            onClick={() => runCommand(editor, editor.commands.get("select-more"))}
          >
            <ListPlus size={16} aria-hidden="true" />
          </button>
        ) : null}
        {(["measure", "dimension"] as const).map((id) => (
          <button
            key={id}
            type="button"
            className="plain icon-button"
            aria-pressed={tool === id}
            aria-label={labelOf(id)}
            {...commandTip(editor.commands.get(`tool-${id}`), TOOL_HINTS[id])}
            onClick={() => runCommand(editor, editor.commands.get(`tool-${id}`))}
          >
            <ToolIcon tool={id} />
          </button>
        ))}
        <button
          type="button"
          className="plain icon-button"
          aria-pressed={snapping}
          aria-label="Snapping"
          {...commandTip(
            editor.commands.get("snapping"),
            `To corners, edges, distances from the water and the grid. It is ${snapping ? "on" : "off"}; Alt held down holds it off.`,
          )}
          onClick={() => runCommand(editor, editor.commands.get("snapping"))}
        >
          <Magnet size={16} aria-hidden="true" />
        </button>
        {button("zoom-out", <Minus size={16} aria-hidden="true" />)}
        {button("zoom-in", <Plus size={16} aria-hidden="true" />)}
        {button("fit", <Maximize size={16} aria-hidden="true" />)}
      </div>
    </footer>
  );
}
