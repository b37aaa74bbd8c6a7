/**
 * The sheet on the screen: three layers of one shape each, painted by the controller, in a box that takes pointer and
 * keys and says to assistive technology what lies on it.
 */
import type { Shape as KonvaShape } from "konva/lib/Shape";
import { useEffect, useRef, useState } from "react";
import { Layer, Shape, Stage } from "react-konva";
import { useStore } from "zustand";
import { useDocument, useEditor, useReport, useView } from "../editor-context.tsx";
import { hostOf } from "./host-of.ts";
import { SHEET_LAYERS, SheetController, type SheetLayer } from "./sheet-controller.ts";
import { sheetSummary } from "./sheet-summary.ts";
import { TieOffer } from "./tie-offer.tsx";
import "./canvas.css";

export function SheetCanvas() {
  const editor = useEditor();
  const box = useRef<HTMLDivElement>(null);
  const shapes = useRef(new Map<SheetLayer, KonvaShape>());
  const [size, setSize] = useState({ width: 0, height: 0 });
  const [controller] = useState(
    () => new SheetController(editor, (layer) => shapes.current.get(layer)?.getLayer()?.draw()),
  );
  const name = useDocument((state) => state.shown.name);
  const count = useDocument((state) => state.shown.elements.length);
  const report = useReport();
  const camera = useView((view) => view.camera);
  const announcement = useStore(hostOf(editor).state, (state) => state.announcement);

  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = () => {
      // On a screen of another density each layer needs a canvas of that density.
      for (const shape of shapes.current.values()) {
        const canvas = shape.getLayer()?.getCanvas();
        if (canvas && canvas.getPixelRatio() !== window.devicePixelRatio) canvas.setPixelRatio(window.devicePixelRatio);
      }
      setSize({ width: element.clientWidth, height: element.clientHeight });
      controller.resize(element.clientWidth, element.clientHeight);
    };
    const detach = controller.attach(element);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    window.addEventListener("resize", measure);
    // Type is measured by the browser: letters are painted again once the sheet's own typeface is there.
    void document.fonts.ready.then(() => controller.changed("drawing"));
    return () => {
      window.removeEventListener("resize", measure);
      observer.disconnect();
      detach();
    };
  }, [controller]);

  return (
    <>
      <div
        ref={box}
        className="sheet-canvas"
        // Where the view lies, for whoever measures the page: its center in inches, pixels to an inch.
        data-camera={`${camera.x} ${camera.y} ${camera.scale}`}
        role="application"
        aria-roledescription="drawing sheet"
        aria-label={sheetSummary(name, count, report)}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes the keys of tools and of the view.
        tabIndex={0}
      >
        {size.width > 0 && size.height > 0 ? (
          <Stage width={size.width} height={size.height} listening={false}>
            {SHEET_LAYERS.map((layer) => (
              <Layer key={layer} listening={false}>
                <Shape
                  ref={(shape: KonvaShape | null) => {
                    if (shape) shapes.current.set(layer, shape);
                    else shapes.current.delete(layer);
                  }}
                  listening={false}
                  perfectDrawEnabled={false}
                  sceneFunc={(context) => controller.paint(layer, context._context)}
                />
              </Layer>
            ))}
          </Stage>
        ) : null}
      </div>
      <TieOffer />
      <p className="unseen" role="status">
        {announcement}
      </p>
    </>
  );
}
