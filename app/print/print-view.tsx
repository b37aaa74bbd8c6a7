/**
 * The sheets as they print: plan to scale, findings, takeoff and cautions, one page each. On the screen they are looked
 * at here before printing; a print asked of the browser itself gives the same sheets and nothing else of the page.
 */
import { X } from "lucide-react";
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { useStore } from "zustand";
import { EDITION_IDS, type EditionId } from "../../rules/editions/edition.ts";
import { EDITION_WHEN_UNNAMED, EDITIONS, namedEdition } from "../../rules/editions/in-force.ts";
import type { PaletteName } from "../drawing/palette.ts";
import { PAPER_NAMES, PAPERS, type PaperName } from "../drawing/paper.ts";
import { planSheets } from "../drawing/sheets.ts";
import { useDocument, useEditor, useLive } from "../editor-context.tsx";
import { giveFocusBack } from "../panels/give-focus-back.ts";
import { tip } from "../panels/tip-props.ts";
import { comesUp } from "../panels/top-window.ts";
import { SheetPage } from "./sheet-page.tsx";
import { usePrintComparison } from "./use-print-comparison.ts";

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
  const [compared, setCompared] = useState<EditionId | null>(null);
  const [reasons, setReasons] = useState(false);

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
      compared={compared}
      reasons={reasons}
      isOpen={isOpen}
      onPaper={setPaper}
      onPalette={setPalette}
      onCompared={setCompared}
      onReasons={setReasons}
      onClose={() => editor.dialogs.setState({ open: null })}
    />
  );
}

interface PrintPagesProps {
  readonly paper: PaperName;
  readonly palette: PaletteName;
  /** The edition whose changes are added; null: none. */
  readonly compared: EditionId | null;
  /** Whether the reasons of every finding are added in full. */
  readonly reasons: boolean;
  /** False while only the printer sees it. */
  readonly isOpen: boolean;
  onPaper(paper: PaperName): void;
  onPalette(palette: PaletteName): void;
  onCompared(edition: EditionId | null): void;
  onReasons(reasons: boolean): void;
  onClose(): void;
}

function PrintPages(props: PrintPagesProps) {
  const { paper, palette, compared, reasons, isOpen, onPaper, onPalette, onCompared, onReasons, onClose } = props;
  const report = useLive((state) => state.report);
  const site = useLive((state) => state.site);
  const routesPending = useLive((state) => state.routesPending && state.routesFailure === null);
  const missing = useMissing();
  const own = (site && namedEdition(site)) ?? EDITION_WHEN_UNNAMED;
  const after = compared === own ? null : compared;
  const { comparison, pending, failure } = usePrintComparison(site, own, after);
  const sheets = useMemo(() => {
    if (!site || !report || missing !== null) return [];
    return planSheets(site, report, { paper, reasons, ...(comparison ? { comparison } : {}) });
  }, [site, report, missing, paper, reasons, comparison]);
  const box = useRef<HTMLElement>(null);
  const closeNow = useRef(onClose);
  closeNow.current = onClose;
  // Before the next frame: in it the page behind, which can no longer be reached, lets go of the focus.
  const hadFocus = useRef<Element | null>(null);
  useLayoutEffect(() => {
    if (isOpen) hadFocus.current = document.activeElement === document.body ? null : document.activeElement;
  }, [isOpen]);
  useEffect(() => {
    if (!isOpen || !box.current) return;
    box.current.focus();
    const goes = comesUp(box.current);
    // Heard here, as a notice in the window has it too.
    const view = box.current;
    const leave = (event: KeyboardEvent) => {
      if (event.key === "Escape") closeNow.current();
    };
    view.addEventListener("keydown", leave);
    return () => {
      view.removeEventListener("keydown", leave);
      goes();
      giveFocusBack(hadFocus.current, view);
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
        <label>
          Add what changes under
          <select
            value={after ?? ""}
            onChange={(event) => onCompared(EDITION_IDS.find((id) => id === event.target.value) ?? null)}
          >
            <option value="">no other edition</option>
            {EDITION_IDS.filter((id) => id !== own).map((id) => (
              <option key={id} value={id}>
                {EDITIONS[id].title}
              </option>
            ))}
          </select>
        </label>
        <label>
          <input type="checkbox" checked={reasons} onChange={(event) => onReasons(event.target.checked)} />
          Add the reasons in full
        </label>
        <p className={failure === null && missing === null ? "soft print-count" : "problem print-count"} role="status">
          {missing ?? stateWords(sheets.length, routesPending, pending, failure)}
        </p>
        <button
          type="button"
          className="strong"
          disabled={missing !== null || routesPending || pending || failure !== null}
          onClick={() => window.print()}
        >
          Print
        </button>
        <button
          type="button"
          className="plain icon-button"
          aria-label="Close"
          {...tip("Close", "Escape")}
          onClick={onClose}
        >
          <X size={18} aria-hidden="true" />
        </button>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so keys have to reach it */}
      <section className={`print-pages page-${paper}`} aria-label="Sheets" tabIndex={0}>
        {missing === null ? null : <p className="print-missing">{missing}</p>}
        {sheets.map((sheet, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a sheet is known by its place
          <SheetPage key={i} sheet={sheet} number={i + 1} count={sheets.length} palette={palette} />
        ))}
      </section>
    </section>
  );
}

/** Why there is no report of the sheet as it is now, and so nothing to print; null where there is one. */
function useMissing(): string | null {
  const revision = useDocument((state) => state.revision);
  const isThere = useLive((state) => state.report !== null && state.reportRevision === revision);
  const failure = useLive((state) => state.failure);
  if (failure !== null) return `Nothing is printed: no report is about this sheet. The calculation stopped: ${failure}`;
  return isThere ? null : "Nothing is printed yet: the report of this sheet is still on its way.";
}

function stateWords(count: number, routesPending: boolean, pending: boolean, failure: string | null): string {
  if (failure !== null) return `The comparison stopped: ${failure}`;
  if (routesPending) return "Routes are still on their way …";
  if (pending) return "The comparison is still on its way …";
  return `${count} ${count === 1 ? "sheet" : "sheets"}. Print at 100%, landscape, to keep the scale.`;
}
