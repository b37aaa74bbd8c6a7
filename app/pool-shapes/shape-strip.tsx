/** The ways to draw a pool, each with a small picture; the pictures of the shapes are drawn by the shapes themselves. */

import { type KeyboardEvent, useRef } from "react";
import { useStore } from "zustand";
import { pathFrom } from "../../geometry/outline.ts";
import type { PathData } from "../../geometry/types.ts";
import { focusSheet } from "../canvas/focus-sheet.ts";
import { hostOf } from "../canvas/host-of.ts";
import { runCommand } from "../commands/command.ts";
import { pathD } from "../drawing/path-d.ts";
import { useEditor, useView } from "../editor-context.tsx";
import { tip } from "../panels/tip-props.ts";
import { ToolIcon } from "../panels/tool-icons.tsx";
import { fullDimensions, type PoolShape } from "./shape.ts";
import { POOL_SHAPES } from "./shape-names.ts";
import "./shape-strip.css";
import { SHAPES } from "./shapes.ts";

/** Of a picture, pixels. */
const WIDTH = 40;
const HEIGHT = 24;

const BY_HAND = [
  { tool: "pool-rectangle", label: "Drag a rectangle" },
  { tool: "pool-outline", label: "Corner by corner" },
  { tool: "pool-curves", label: "Flowing curves" },
] as const;

export default function ShapeStrip() {
  const editor = useEditor();
  const tool = useView((view) => view.tool);
  const chosen = useView((view) => view.shape);
  const isReshaping = useView((view) => view.reshaping !== null);
  // What has been begun would be lost by another way, and has the sheet to itself.
  const isUnderWay = useStore(hostOf(editor).state, (state) => state.takesBack !== null);
  const strip = useRef<HTMLDivElement>(null);
  const ways = [
    ...(isReshaping ? [] : BY_HAND).map(({ tool: id, label }) => ({
      id: `tool-${id}`,
      label,
      isChosen: tool === id,
      picture: <ToolIcon tool={id} />,
    })),
    ...POOL_SHAPES.map(({ id, label }) => ({
      id: `pool-shape-${id}`,
      label,
      isChosen: tool === "pool-shape" && chosen === id,
      picture: <Picture shape={SHAPES[id]} />,
    })),
  ];

  const onKeyDown = (event: KeyboardEvent) => {
    const forward = event.key === "ArrowRight" || event.key === "ArrowDown";
    const way = forward ? 1 : event.key === "ArrowLeft" || event.key === "ArrowUp" ? -1 : 0;
    const stops = [...(strip.current?.querySelectorAll<HTMLElement>("button") ?? [])];
    const at = stops.indexOf(event.target as HTMLElement);
    if (way === 0 || at < 0) return;
    event.preventDefault();
    event.stopPropagation();
    const next = stops[(at + way + stops.length) % stops.length];
    next?.focus();
    next?.click();
  };

  if (isUnderWay) return null;
  return (
    <div
      className="shape-strip"
      role="radiogroup"
      aria-label="How to draw the pool"
      data-over-sheet=""
      ref={strip}
      onKeyDown={onKeyDown}
    >
      {ways.map(({ id, label, isChosen, picture }) => (
        // biome-ignore lint/a11y/useSemanticElements: a picture to press
        <button
          key={id}
          type="button"
          role="radio"
          aria-checked={isChosen}
          tabIndex={isChosen ? 0 : -1}
          {...tip(label)}
          onClick={({ detail }) => {
            runCommand(editor, editor.commands.get(id));
            // Pointed out, it is used on the sheet: what is typed next are its dimensions. Keys stay among the shapes.
            if (detail > 0) focusSheet();
          }}
        >
          {picture}
          <span>{label}</span>
        </button>
      ))}
    </div>
  );
}

function Picture({ shape }: { readonly shape: PoolShape }) {
  const shaped = shape.outline(fullDimensions(shape, {}), "ft-in");
  return shaped.ok ? <OutlinePicture outline={shaped.outline} /> : null;
}

function OutlinePicture({ outline }: { readonly outline: PathData }) {
  const { minX, minY, maxX, maxY } = pathFrom(outline).bounds;
  const scale = Math.max((maxX - minX) / (WIDTH - 2), (maxY - minY) / (HEIGHT - 2));
  const [width, height] = [WIDTH * scale, HEIGHT * scale];
  const view = `${(minX + maxX - width) / 2} ${-(minY + maxY + height) / 2} ${width} ${height}`;
  return (
    <svg width={WIDTH} height={HEIGHT} viewBox={view} aria-hidden="true">
      <path d={pathD(outline)} vectorEffect="non-scaling-stroke" />
    </svg>
  );
}
