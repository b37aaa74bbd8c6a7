/** The canvas itself: three layers of one shape each. Rendered anew only when its size changes; painting is the controller's. */
import type { Context } from "konva/lib/Context";
import type { Shape as KonvaShape } from "konva/lib/Shape";
import { memo } from "react";
import { Layer, Shape, Stage } from "react-konva";
import { SHEET_LAYERS, type SheetController, type SheetLayer } from "./sheet-controller.ts";

export type LayerShapes = Map<SheetLayer, KonvaShape>;

interface SheetStageProps {
  readonly width: number;
  readonly height: number;
  readonly controller: SheetController;
  /** Filled with the shape of each layer while it is mounted. */
  readonly shapes: LayerShapes;
}

export const SheetStage = memo(function SheetStage({ width, height, controller, shapes }: SheetStageProps) {
  if (width === 0 || height === 0) return null;
  return (
    <Stage width={width} height={height} listening={false}>
      {SHEET_LAYERS.map((layer) => (
        <Layer key={layer} listening={false}>
          <Shape
            ref={(shape: KonvaShape | null) => {
              if (shape) shapes.set(layer, shape);
              else shapes.delete(layer);
            }}
            listening={false}
            perfectDrawEnabled={false}
            sceneFunc={(context: Context) => controller.paint(layer, context._context)}
          />
        </Layer>
      ))}
    </Stage>
  );
});
