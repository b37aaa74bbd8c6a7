/** The page: the parts of the article, the sheet, and beside it what the code says, the element's facts, the copper. */
import { CAUTIONS } from "../../rules/cautions.ts";
import { SheetCanvas } from "../canvas/sheet-canvas.tsx";
import { FindingPanel } from "./finding-panel.tsx";
import { PartsColumn } from "./parts-column.tsx";
import { TopBar } from "./top-bar.tsx";
import "../theme/theme.css";
import "./panels.css";

export function App() {
  return (
    <div className="app">
      <TopBar />
      <div className="left">
        <PartsColumn />
        <p className="caution">{CAUTIONS.slice(0, 2).join(" ")}</p>
      </div>
      <main className="sheet">
        <SheetCanvas />
      </main>
      <aside className="side" aria-label="Details">
        <FindingPanel />
      </aside>
    </div>
  );
}
