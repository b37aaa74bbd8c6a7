/** An entry that was refused and goes from the page with its field, as when another element is pressed: it is said then. */
import { useEffect, useRef } from "react";
import { useEditor } from "../editor-context.tsx";

/** Takes each time why the entry was refused, or null once it was taken or given up. */
export function useUnreadEntry(label: string): (problem: string | null) => void {
  const editor = useEditor();
  const last = useRef({ label, problem: null as string | null });
  last.current.label = label;
  useEffect(() => {
    const { opened } = editor.document.getState();
    const entry = last.current;
    return () => {
      // With another site on the sheet there is nothing left that it is about.
      if (entry.problem === null || editor.document.getState().opened !== opened) return;
      editor.view.getState().say(`${entry.label} stays as it was. ${entry.problem}`, "problem");
    };
  }, [editor]);
  return (problem) => {
    last.current.problem = problem;
  };
}
