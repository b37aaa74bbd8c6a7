/** Says on the sheet what is not drawn on it, and that it counts all the same. */
import { runCommand } from "../commands/command.ts";
import { useDocument, useEditor, useView } from "../editor-context.tsx";
import { hiddenIds } from "../edits/arrangement.ts";

export function HiddenNote() {
  const editor = useEditor();
  const parts = useView((view) => view.hiddenParts.length);
  const hidden = useDocument(({ shown }) => {
    const ids = hiddenIds(shown);
    return ids.size === 0 ? 0 : shown.elements.filter(({ id }) => ids.has(id)).length;
  });
  if (hidden === 0 && parts === 0) return null;
  const words = [
    ...(hidden === 0 ? [] : [hidden === 1 ? "1 element" : `${hidden} elements`]),
    ...(parts === 0 ? [] : [parts === 1 ? "1 part of the article" : `${parts} parts of the article`]),
  ].join(" and ");
  return (
    <p className="hidden-note">
      <span>Not drawn, but still judged: {words}.</span>
      <button type="button" className="plain" onClick={() => runCommand(editor, editor.commands.get("show-all"))}>
        Show all
      </button>
    </p>
  );
}
