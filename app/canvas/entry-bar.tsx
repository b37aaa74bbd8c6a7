/** Typed lengths and directions while drawing: the fields that the tool in hand takes, Enter places. */
import { useEffect, useId, useState } from "react";
import { useEditor, useView } from "../editor-context.tsx";
import type { EntryField } from "../tools/tool.ts";
import { sheetOf } from "./sheet-of.ts";

export function EntryBar() {
  const editor = useEditor();
  const tool = useView((view) => view.tool);
  const [fields, setFields] = useState<readonly EntryField[]>([]);
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [problem, setProblem] = useState<string | null>(null);
  const id = useId();

  useEffect(() => {
    setTyped({});
    setProblem(null);
    setFields([]);
    const sheet = sheetOf(editor);
    if (!sheet || tool === "select" || tool === "pan") return;
    const read = () => setFields(sheet.tool.fields());
    read();
    return sheet.onTool(read);
  }, [editor, tool]);

  if (fields.length === 0) return null;
  const place = () => {
    const sheet = sheetOf(editor);
    if (!sheet) return;
    const refusal = sheet.tool.enter(typed);
    setProblem(refusal);
    if (refusal === null) setTyped({});
    sheet.changed(2);
  };
  return (
    <form
      className="entry-bar"
      aria-label="Typed measurements"
      onSubmit={(event) => {
        event.preventDefault();
        place();
      }}
    >
      {fields.map((field) => (
        <label key={field.name} htmlFor={`${id}-${field.name}`}>
          {field.label}
          <input
            id={`${id}-${field.name}`}
            value={typed[field.name] ?? ""}
            placeholder={field.shown}
            autoComplete="off"
            aria-invalid={problem !== null}
            onChange={(event) => setTyped({ ...typed, [field.name]: event.target.value })}
          />
        </label>
      ))}
      <button type="submit">Place</button>
      {problem === null ? null : (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
    </form>
  );
}
