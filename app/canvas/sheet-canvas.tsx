/** The sheet on the screen: the picture in a box that takes pointer and keys and says what lies on it. */
import { lazy, Suspense, useCallback, useEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import type { Editor } from "../editor.ts";
import { useDocument, useEditor, useLive } from "../editor-context.tsx";
import { hostOf } from "./host-of.ts";
import { SheetController } from "./sheet-controller.ts";
import { canPaintInWorker, type PageScreen, type PaintPort, pageScreen, workerScreen } from "./sheet-screen.ts";
import { sheetSummary } from "./sheet-summary.ts";
import { TieOffer } from "./tie-offer.tsx";
import { UnderlayPicture } from "./underlay-picture.tsx";
import "./canvas.css";

const SheetStage = lazy(async () => ({ default: (await import("./sheet-stage.tsx")).SheetStage }));

export function SheetCanvas() {
  const editor = useEditor();
  const box = useRef<HTMLDivElement>(null);
  const picture = useRef<HTMLDivElement>(null);
  const draw = useRef<(() => void) | null>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  const [controller] = useState(() => new SheetController(editor));
  /** Only where no worker can paint. */
  const [page] = useState<PageScreen | null>(() =>
    canPaintInWorker() ? null : pageScreen(() => draw.current?.(), sayUnpainted(editor)),
  );
  const name = useDocument((state) => state.shown.name);
  const count = useDocument((state) => state.shown.elements.length);
  const summary = useLive((state) => sheetSummary(name, count, state.report));
  const announcement = useStore(hostOf(editor).state, (state) => state.announcement);
  const onDraw = useCallback((next: (() => void) | null) => {
    draw.current = next;
    next?.();
  }, []);

  useEffect(() => {
    const element = box.current;
    if (!element || !picture.current) return;
    const measure = () => {
      const { clientWidth: width, clientHeight: height } = element;
      setSize((now) => (now.width === width && now.height === height ? now : { width, height }));
      controller.resize(width, height);
    };
    const screen = page ?? workerScreen(picture.current, paintWorker(), sayUnpainted(editor));
    const detach = controller.attach(element, screen);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    window.addEventListener("resize", measure);
    // Letters are painted again once the sheet's own typeface has come; a worker sees to its own.
    if (page) void document.fonts.ready.then(() => page.restore());
    return () => {
      window.removeEventListener("resize", measure);
      observer.disconnect();
      detach();
    };
  }, [controller, editor, page]);

  return (
    <>
      <div
        ref={box}
        className="sheet-canvas"
        role="application"
        aria-roledescription="drawing sheet"
        aria-label={summary}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes the keys of tools and of the view.
        tabIndex={0}
      >
        <UnderlayPicture width={size.width} height={size.height} />
        <div ref={picture} className="sheet-picture">
          {page ? (
            <Suspense>
              <SheetStage width={size.width} height={size.height} paint={page.paint} onDraw={onDraw} />
            </Suspense>
          ) : null}
        </div>
      </div>
      <TieOffer />
      <p className="unseen" role="status">
        {announcement}
      </p>
    </>
  );
}

function sayUnpainted({ view }: Pick<Editor, "view">): (reason: string) => void {
  return (reason) => view.getState().say(`The sheet cannot be painted: ${reason}`, "problem");
}

function paintWorker(): PaintPort {
  const worker = new Worker(new URL("../workers/paint.worker.ts", import.meta.url), { type: "module" });
  return worker as unknown as PaintPort;
}
