/** What to do first on a sheet that holds nothing yet. */
import { runCommand } from "../commands/command.ts";
import { useDocument, useEditor, useView } from "../editor-context.tsx";
import { keyWords } from "./key-words.ts";
import { ToolIcon } from "./tool-icons.tsx";

export function EmptySheet() {
  const editor = useEditor();
  const isEmpty = useDocument((state) => state.shown.elements.length === 0 && state.gesture === null);
  // Over a picture the first lines are drawn along it: it has to be seen.
  const hasPicture = useDocument(({ shown: { underlay } }) => underlay !== undefined && underlay.hidden !== true);
  const tool = useView((view) => view.tool);
  if (!isEmpty || (tool !== "select" && tool !== "pan")) return null;
  const first = (id: string, label: string, sign: React.ReactNode = null) => {
    const command = editor.commands.get(id);
    return (
      <button type="button" className={sign === null ? "" : "strong"} onClick={() => runCommand(editor, command)}>
        {sign}
        {label}
        {command.key === undefined ? null : <kbd>{keyWords(command.key)}</kbd>}
      </button>
    );
  };
  return (
    <section className={hasPicture ? "empty-sheet aside" : "empty-sheet"} aria-labelledby="empty-sheet-title">
      <h2 id="empty-sheet-title">Begin with the pool</h2>
      {hasPicture ? null : (
        <p>
          Draw the inside wall to scale. Then the deck, the house and the fences: findings and copper follow as you
          draw.
        </p>
      )}
      <div className="empty-choices">
        {first("tool-pool-rectangle", "Rectangle by size", <ToolIcon tool="pool-rectangle" />)}
        {first("tool-pool-outline", "Free outline", <ToolIcon tool="pool-outline" />)}
      </div>
      <div className="empty-choices">{first("tool-pool-shape", "Another shape, by its dimensions")}</div>
      {hasPicture ? null : (
        <>
          <div className="empty-choices">
            {first("tape-in", "Tape it in")}
            {first("underlay", "Lay a survey underneath")}
          </div>
          <div className="empty-choices empty-other">
            {first("open", "Open a file")}
            {first("gallery", "Look at demo sites")}
            {first("walk", "Walk round")}
          </div>
        </>
      )}
    </section>
  );
}
