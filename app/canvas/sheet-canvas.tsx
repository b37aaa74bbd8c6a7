/** The sheet on the screen: the canvas in a box that takes pointer and keys and says what lies on it. */
import { useEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { useDocument, useEditor, useLive } from "../editor-context.tsx";
import { hostOf } from "./host-of.ts";
import { SheetController } from "./sheet-controller.ts";
import { type LayerShapes, SheetStage } from "./sheet-stage.tsx";
import { sheetSummary } from "./sheet-summary.ts";
import { TieOffer } from "./tie-offer.tsx";
import { UnderlayPicture } from "./underlay-picture.tsx";
import "./canvas.css";

export function SheetCanvas() {
  const editor = useEditor();
  const box = useRef<HTMLDivElement>(null);
  const [shapes] = useState<LayerShapes>(() => new Map());
  const [size, setSize] = useState({ width: 0, height: 0 });
  const [controller] = useState(() => new SheetController(editor, (layer) => shapes.get(layer)?.getLayer()?.draw()));
  const name = useDocument((state) => state.shown.name);
  const count = useDocument((state) => state.shown.elements.length);
  const summary = useLive((state) => sheetSummary(name, count, state.report));
  const announcement = useStore(hostOf(editor).state, (state) => state.announcement);

  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = () => {
      // On a screen of another density each layer needs a canvas of that density.
      for (const shape of shapes.values()) {
        const canvas = shape.getLayer()?.getCanvas();
        if (canvas && canvas.getPixelRatio() !== window.devicePixelRatio) canvas.setPixelRatio(window.devicePixelRatio);
      }
      const { clientWidth: width, clientHeight: height } = element;
      setSize((now) => (now.width === width && now.height === height ? now : { width, height }));
      controller.resize(width, height);
    };
    const detach = controller.attach(element);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    window.addEventListener("resize", measure);
    // Letters are painted again once the sheet's own typeface has come.
    void document.fonts.ready.then(() => controller.changed("drawing"));
    return () => {
      window.removeEventListener("resize", measure);
      observer.disconnect();
      detach();
    };
  }, [controller, shapes]);

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
        <SheetStage width={size.width} height={size.height} controller={controller} shapes={shapes} />
      </div>
      <TieOffer />
      <p className="unseen" role="status">
        {announcement}
      </p>
    </>
  );
}
