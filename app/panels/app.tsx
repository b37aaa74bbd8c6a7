/** The page: the parts of the article, the sheet with its tools, and beside it what the code says, facts and copper. */
import { useEffect, useState } from "react";
import { useStore } from "zustand";
import { CAUTIONS } from "../../rules/cautions.ts";
import { EntryBar } from "../canvas/entry-bar.tsx";
import { SheetCanvas } from "../canvas/sheet-canvas.tsx";
import { useEditor, useView } from "../editor-context.tsx";
import { acceptDrops } from "../files/drop.ts";
import { PrintView } from "../print/print-view.tsx";
import { Dialogs } from "./dialogs.tsx";
import { EmptySheet } from "./empty-sheet.tsx";
import { Notice } from "./notice.tsx";
import { PartsColumn } from "./parts-column.tsx";
import { SideColumn } from "./side-column.tsx";
import { StatusLine } from "./status-line.tsx";
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

/** On a narrow screen the columns lie over the sheet, one at a time. */
export type Column = "parts" | "details";

export function App() {
  const editor = useEditor();
  const palette = useView((view) => view.palette);
  const part = useView((view) => view.part);
  const finding = useView((view) => view.finding);
  const isPrinting = useStore(editor.dialogs, (state) => state.open === "print");
  const [shown, setShown] = useState<Column | null>(null);
  const [isDropping, setDropping] = useState(false);

  useEffect(() => {
    document.documentElement.dataset.palette = palette;
  }, [palette]);

  useEffect(() => acceptDrops(window, editor.files, setDropping), [editor]);

  useEffect(() => {
    if (part !== null || finding !== null) setShown((now) => (now === null && finding === null ? now : "details"));
  }, [part, finding]);

  return (
    <>
      <div className="app" data-shown={shown ?? undefined} inert={isPrinting}>
        <TopBar shown={shown} onShow={(column) => setShown(shown === column ? null : column)} />
        <div className="left" id="parts-column">
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
            <div className="entry-slot">
              <EntryBar />
            </div>
            <Notice />
            {isDropping ? <p className="drop-here">Let go to open the site file</p> : null}
          </div>
          <StatusLine />
        </main>
        <aside className="side" id="details-column" aria-label="Details">
          <SideColumn onClose={() => setShown(null)} />
        </aside>
      </div>
      <Dialogs />
      <PrintView />
    </>
  );
}
