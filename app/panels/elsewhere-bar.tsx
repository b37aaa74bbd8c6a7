/** Says over the sheet that the site is open in another tab, and leads out of it. */
import { useStore } from "zustand";
import { useEditor } from "../editor-context.tsx";
import "./elsewhere-bar.css";

export default function ElsewhereBar() {
  const editor = useEditor();
  const elsewhere = useStore(editor.files.state, (state) => state.elsewhere);
  if (elsewhere === null) return null;
  const { how, isDecided } = elsewhere;
  return (
    <section className={isDecided ? "elsewhere elsewhere-small" : "elsewhere"} aria-label="Open in another tab">
      <p role="status">
        <strong>{how === "taken" ? "Another tab works on this site now." : "This site is open in another tab."}</strong>{" "}
        {isDecided ? "Here it is only looked at, and follows." : "Nothing is changed here yet."}
      </p>
      <div className="elsewhere-ways">
        <button type="button" className={isDecided ? "" : "strong"} onClick={() => void editor.files.takeOver()}>
          Work on it here
        </button>
        <button type="button" onClick={() => editor.files.workOnCopy()}>
          Open a copy
        </button>
        {isDecided ? null : (
          <button type="button" onClick={() => editor.files.lookOnly()}>
            Only look
          </button>
        )}
      </div>
    </section>
  );
}
