/**
 * The sheet painted on the page itself, for a browser that has no canvas a worker could paint on: one layer of one shape.
 * Rendered anew only when its size changes; what is painted is the screen's.
 */
import type { Context } from "konva/lib/Context";
import type { Layer as KonvaLayer } from "konva/lib/Layer";
import { memo, useEffect, useRef } from "react";
import { Layer, Shape, Stage } from "react-konva";
import type { Context2D } from "./new-canvas.ts";

interface SheetStageProps {
  readonly width: number;
  readonly height: number;
  /** Paints the sheet as it is now. */
  paint(context: Context2D): void;
  /** Given the way to have the sheet painted again, and null when there is none any more. */
  onDraw(draw: (() => void) | null): void;
}

export const SheetStage = memo(function SheetStage({ width, height, paint, onDraw }: SheetStageProps) {
  const layer = useRef<KonvaLayer>(null);
  useEffect(() => {
    onDraw(() => {
      const canvas = layer.current?.getCanvas();
      // On a screen of another density the canvas needs that density.
      if (canvas && canvas.getPixelRatio() !== window.devicePixelRatio) canvas.setPixelRatio(window.devicePixelRatio);
      layer.current?.draw();
    });
    return () => onDraw(null);
  }, [onDraw]);
  if (width === 0 || height === 0) return null;
  return (
    <Stage width={width} height={height} listening={false}>
      <Layer ref={layer} listening={false}>
        <Shape
          listening={false}
          perfectDrawEnabled={false}
          sceneFunc={({ _context: context }: Context) => {
            context.save();
            paint(context);
            context.restore();
          }}
        />
      </Layer>
    </Stage>
  );
});
