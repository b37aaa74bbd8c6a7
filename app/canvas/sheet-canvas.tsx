/**
 * The sheet on the screen: the scene painted on three layers, redrawn once a frame and only what changed.
 *
 * The scene is placed with its lettering when everything is at rest, and without it while a gesture runs.
 */
import type { Shape as KonvaShape } from "konva/lib/Shape";
import { useEffect, useRef, useState } from "react";
import { Layer, Shape, Stage } from "react-konva";
import { PALETTES } from "../drawing/palette.ts";
import { useEditor, useView } from "../editor-context.tsx";
import { SheetController } from "./sheet-controller.ts";

export function SheetCanvas() {
  const editor = useEditor();
  const wrapper = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  const palette = useView((view) => view.palette);
  const tool = useView((view) => view.tool);
  const camera = useView((view) => view.camera);
  const shapes = useRef<(KonvaShape | null)[]>([]);
  const [controller] = useState(
    () => new SheetController(editor, (layer) => shapes.current[layer]?.getLayer()?.batchDraw()),
  );

  useEffect(() => {
    const box = wrapper.current;
    if (!box) return;
    const measure = () => setSize({ width: box.clientWidth, height: box.clientHeight });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(box);
    const detach = controller.attach(box);
    return () => {
      observer.disconnect();
      detach();
    };
  }, [controller]);

  useEffect(() => controller.resize(size.width, size.height), [controller, size]);

  return (
    <div
      ref={wrapper}
      className="sheet-canvas"
      role="application"
      aria-label="Plan of the yard"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes the keys of tools and of the view.
      tabIndex={0}
      data-tool={tool}
      // Where the view lies, for tests and for whoever measures the page: center in inches, pixels to an inch.
      data-camera={`${camera.x} ${camera.y} ${camera.scale}`}
      style={{
        position: "absolute",
        inset: 0,
        touchAction: "none",
        overflow: "hidden",
        background: PALETTES[palette].paper,
        cursor: tool === "select" ? "default" : tool === "pan" ? "grab" : "crosshair",
      }}
    >
      {size.width > 0 && size.height > 0 ? (
        <Stage width={size.width} height={size.height} listening={false}>
          {([0, 1, 2] as const).map((layer) => (
            <Layer key={layer} listening={false}>
              <Shape
                ref={(shape: KonvaShape | null) => {
                  shapes.current[layer] = shape;
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
  );
}
