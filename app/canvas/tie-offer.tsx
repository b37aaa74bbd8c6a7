/** The button beside a proposed tie that was touched: records it as made. */

import { useStore } from "zustand";
import { useDocument, useEditor, useView } from "../editor-context.tsx";
import { recordTie } from "../edits/record-tie.ts";
import { focusSheet } from "./focus-sheet.ts";
import { hostOf } from "./host-of.ts";

export function TieOffer() {
  const editor = useEditor();
  const host = hostOf(editor);
  const tie = useStore(host.state, (state) => state.offeredTie);
  const camera = useView((view) => view.camera);
  const isShown = useDocument((state) => state.gesture === null);
  if (!tie || !isShown) return null;
  /** The button goes, and keys go on on the sheet. */
  const leave = () => {
    host.withdrawTie();
    focusSheet();
  };
  const record = () => {
    const refusal = editor.document.getState().edit(recordTie(tie));
    const { say, select } = editor.view.getState();
    if (refusal) say(refusal.reason, "problem");
    else {
      const made = editor.document.getState().history.present.elements.at(-1);
      if (made) select([made.id]);
      say("The tie is recorded. Say under Facts which hardware holds it.");
    }
    leave();
  };
  const x = (tie.to[0] - camera.x) * camera.scale;
  const y = (camera.y - tie.to[1]) * camera.scale;
  return (
    <div className="tie-offer" style={{ left: `calc(50% + ${x + 14}px)`, top: `calc(50% + ${y - 16}px)` }}>
      <button
        type="button"
        // The button comes because of a click beside it: keys go on with it.
        // biome-ignore lint/a11y/noAutofocus: it answers what was just touched.
        autoFocus
        onClick={record}
        onKeyDown={(event) => {
          if (event.key !== "Escape") return;
          event.preventDefault();
          leave();
        }}
      >
        Record this tie
      </button>
    </div>
  );
}
