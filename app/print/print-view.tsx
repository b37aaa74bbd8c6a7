/**
 * The sheets as they print: plan to scale, findings, takeoff and cautions, one page each. On the screen they are looked
 * at here before printing; a print asked of the browser itself gives the same sheets and nothing else of the page.
 */
import { X } from "lucide-react";
import { useEffect, useMemo, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { useStore } from "zustand";
import type { PaletteName } from "../drawing/palette.ts";
import { PAPER_NAMES, PAPERS, type PaperName } from "../drawing/paper.ts";
import { planSheets } from "../drawing/sheets.ts";
import { useEditor, useLive } from "../editor-context.tsx";
import { SheetPage } from "./sheet-page.tsx";

/** The two palettes that suit paper. */
const PRINT_PALETTES: readonly { readonly palette: PaletteName; readonly label: string }[] = [
  { palette: "sheet", label: "Color" },
  { palette: "plain", label: "Black and white" },
];

export function PrintView() {
  const editor = useEditor();
  const isOpen = useStore(editor.dialogs, (state) => state.open === "print");
  const [isPrinting, setPrinting] = useState(false);
  const [paper, setPaper] = useState<PaperName>("letter");
  const [palette, setPalette] = useState<PaletteName>("sheet");

  useEffect(() => {
    const before = () => flushSync(() => setPrinting(true));
    const after = () => setPrinting(false);
    window.addEventListener("beforeprint", before);
    window.addEventListener("afterprint", after);
    return () => {
      window.removeEventListener("beforeprint", before);
      window.removeEventListener("afterprint", after);
    };
  }, []);

  if (!isOpen && !isPrinting) return null;
  return (
    <PrintPages
      paper={paper}
      palette={palette}
      isOpen={isOpen}
      onPaper={setPaper}
      onPalette={setPalette}
      onClose={() => editor.dialogs.setState({ open: null })}
    />
  );
}

interface PrintPagesProps {
  readonly paper: PaperName;
  readonly palette: PaletteName;
  /** False while only the printer sees it. */
  readonly isOpen: boolean;
  onPaper(paper: PaperName): void;
  onPalette(palette: PaletteName): void;
  onClose(): void;
}

function PrintPages({ paper, palette, isOpen, onPaper, onPalette, onClose }: PrintPagesProps) {
  const report = useLive((state) => state.report);
  const site = useLive((state) => state.site);
  const routesPending = useLive((state) => state.routesPending);
  const sheets = useMemo(() => (site && report ? planSheets(site, report, { paper }) : []), [site, report, paper]);
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    if (!isOpen) return;
    const before = document.activeElement;
    box.current?.focus();
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, [isOpen]);
  return (
    <section
      ref={box}
      className={isOpen ? "print-view is-open" : "print-view"}
      role="dialog"
      aria-modal={isOpen}
      aria-label="Print the plan"
      tabIndex={-1}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        onClose();
      }}
    >
      <div className="print-tools">
        <h2>Print the plan</h2>
        <label>
          Paper
          <select value={paper} onChange={(event) => onPaper(event.target.value as PaperName)}>
            {PAPER_NAMES.map((name) => (
              <option key={name} value={name}>
                {PAPERS[name].words}
              </option>
            ))}
          </select>
        </label>
        <fieldset className="switch">
          <legend className="unseen">Colors</legend>
          {PRINT_PALETTES.map((choice) => (
            <button
              key={choice.palette}
              type="button"
              aria-pressed={palette === choice.palette}
              onClick={() => onPalette(choice.palette)}
            >
              {choice.label}
            </button>
          ))}
        </fieldset>
        <p className="soft print-count" role="status">
          {routesPending
            ? "Routes are still on their way …"
            : `${sheets.length} ${sheets.length === 1 ? "sheet" : "sheets"}. Print at 100%, landscape, to keep the scale.`}
        </p>
        <button type="button" className="strong" disabled={routesPending} onClick={() => window.print()}>
          Print
        </button>
        <button type="button" className="plain icon-button" aria-label="Close" onClick={onClose}>
          <X size={18} aria-hidden="true" />
        </button>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so keys have to reach it */}
      <section className={`print-pages page-${paper}`} aria-label="Sheets" tabIndex={0}>
        {sheets.map((sheet, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a sheet is known by its place
          <SheetPage key={i} sheet={sheet} number={i + 1} count={sheets.length} palette={palette} />
        ))}
      </section>
    </section>
  );
}
