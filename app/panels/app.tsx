/** The page: the parts of the article, the sheet with its tools, and beside it what the code says, facts and copper. */
import { useEffect, useState } from "react";
import { useStore } from "zustand";
import { CAUTIONS } from "../../rules/cautions.ts";
import { EntryBar } from "../canvas/entry-bar.tsx";
import { SheetCanvas } from "../canvas/sheet-canvas.tsx";
import { useEditor, useView } from "../editor-context.tsx";
import { drawsPool } from "../edits/templates.ts";
import { acceptDrops } from "../files/page-window.ts";
import { Announcer } from "./announcer.tsx";
import { Dialogs } from "./dialogs.tsx";
import { EmptySheet } from "./empty-sheet.tsx";
import { HiddenNote } from "./hidden-note.tsx";
import { afterFirstPaint, ElsewhereBar, loadLaterParts, PrintView, ShapeStrip, WalkCard } from "./later.tsx";
import { Notice } from "./notice.tsx";
import { PartsColumn } from "./parts-column.tsx";
import { SideColumn } from "./side-column.tsx";
import { StatusLine } from "./status-line.tsx";
import { Tips } from "./tips.tsx";
import { ToolBar } from "./tool-bar.tsx";
import { TopBar } from "./top-bar.tsx";
import "../theme/theme.css";
import "./common.css";
import "./shell.css";
import "./top-bar.css";
import "./tool-bar.css";
import "./parts.css";
import "./findings.css";
import "./facts.css";
import "./copper.css";
import "./outline.css";
import "./dialogs.css";
import "./narrow.css";
// Last: on paper it overrules the rest.
import "../print/print.css";

export function App() {
  const editor = useEditor();
  const palette = useView((view) => view.palette);
  const finding = useView((view) => view.finding);
  const isPrinting = useStore(editor.dialogs, (state) => state.open === "print");
  const shown = useView((view) => view.column);
  const isPool = useView((view) => drawsPool(view.tool));
  const showColumn = useView((view) => view.showColumn);
  const isWalking = useStore(editor.walk, (state) => state.step !== null);
  const isElsewhere = useStore(editor.files.state, (state) => state.elsewhere !== null);
  const [isDropping, setDropping] = useState(false);
  const [isAllHere, setAllHere] = useState(false);

  useEffect(() => {
    document.documentElement.dataset.palette = palette;
  }, [palette]);

  useEffect(() => acceptDrops(window, editor.files, setDropping), [editor]);

  useEffect(() => afterFirstPaint(window, () => void loadLaterParts().then(() => setAllHere(true))), []);

  useEffect(() => {
    if (finding !== null) showColumn("details");
  }, [finding, showColumn]);

  return (
    <>
      <div className="app" data-shown={shown ?? undefined} inert={isPrinting}>
        <TopBar />
        <div className="left" id="parts-column" data-over-sheet="">
          <PartsColumn />
          <aside className="caution" aria-label="Caution">
            {CAUTIONS[0]} <span className="caution-more">{CAUTIONS[1]}</span>
          </aside>
        </div>
        <main className="middle">
          <ToolBar />
          <div className="sheet">
            <SheetCanvas />
            <EmptySheet />
            <HiddenNote />
            <div className="entry-slot" data-over-sheet="">
              <EntryBar />
            </div>
            {isPool ? <ShapeStrip /> : null}
            {isElsewhere ? <ElsewhereBar /> : null}
            <Notice />
            {isWalking ? <WalkCard /> : null}
            {isDropping ? <p className="drop-here">Let go to open the site file</p> : null}
          </div>
          <StatusLine />
        </main>
        <aside className="side" id="details-column" aria-label="Details" data-over-sheet="">
          <SideColumn onClose={() => showColumn(null)} />
        </aside>
      </div>
      <Dialogs />
      {isPrinting || isAllHere ? <PrintView /> : null}
      <Tips />
      <Announcer />
    </>
  );
}
