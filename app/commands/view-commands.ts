/** How the sheet is looked at, and the arrow keys: they move what is selected, or else the sheet. */
import { hostOf } from "../canvas/host-of.ts";
import { BIG_NUDGE, NUDGE, nudge } from "./change-commands.ts";
import { ALWAYS, type Command } from "./command.ts";
import type { EditorPorts } from "./editor-ports.ts";

/** One step of zoom, and of panning in screen pixels. */
export const ZOOM_STEP = 1.25;
export const PAN_STEP = 64;
export const BIG_PAN_STEP = 256;

const hasSheet = ({ canvas }: EditorPorts): true | string => (canvas ? true : "The sheet is not on the screen yet.");

const lookCommands: readonly Command[] = [
  {
    id: "zoom-in",
    label: "Zoom in",
    group: "View",
    key: "+",
    otherKeys: ["=", "Mod++", "Mod+="],
    repeats: true,
    available: hasSheet,
    run: ({ canvas }) => canvas?.zoomBy(ZOOM_STEP),
  },
  {
    id: "zoom-out",
    label: "Zoom out",
    group: "View",
    key: "-",
    otherKeys: ["_", "Mod+-"],
    repeats: true,
    available: hasSheet,
    run: ({ canvas }) => canvas?.zoomBy(1 / ZOOM_STEP),
  },
  {
    id: "fit",
    label: "Show the whole site",
    group: "View",
    key: "0",
    otherKeys: ["Mod+0", "Home"],
    available: hasSheet,
    run: ({ canvas }) => canvas?.fit(),
  },
  {
    id: "palette",
    label: "Projector colors",
    group: "View",
    key: "Shift+P",
    labelNow: ({ view }) => (view.getState().palette === "sheet" ? "Projector colors" : "Paper colors"),
    available: ALWAYS,
    run({ view }) {
      const { palette, setPalette, say } = view.getState();
      setPalette(palette === "sheet" ? "projector" : "sheet");
      say(palette === "sheet" ? "Projector colors." : "Paper colors.");
    },
  },
  {
    id: "snapping",
    label: "Snapping",
    group: "View",
    key: "Shift+S",
    labelNow: ({ view }) => (view.getState().snapping ? "Turn snapping off" : "Turn snapping on"),
    available: ALWAYS,
    run({ view }) {
      const { snapping, setSnapping, say } = view.getState();
      setSnapping(!snapping);
      say(snapping ? "Snapping is off." : "Snapping is on.");
    },
  },
];

/** Arrow keys. x grows right and y up on the site; screen pixels grow right and down. */
const WAYS = [
  { key: "ArrowLeft", word: "left", x: -1, y: 0 },
  { key: "ArrowRight", word: "right", x: 1, y: 0 },
  { key: "ArrowUp", word: "up", x: 0, y: 1 },
  { key: "ArrowDown", word: "down", x: 0, y: -1 },
] as const;

const moveCommands: readonly Command[] = WAYS.flatMap(({ key, word, x, y }) => [
  moveCommand(`move-${word}`, `Move ${word} 1 in.`, key, x * NUDGE, y * NUDGE),
  moveCommand(`move-${word}-far`, `Move ${word} 12 in.`, `Shift+${key}`, x * BIG_NUDGE, y * BIG_NUDGE),
]);

const panCommands: readonly Command[] = WAYS.flatMap(({ key, word, x, y }) => [
  panCommand(`pan-${word}`, `Look ${word}`, [key, `Alt+${key}`], x * PAN_STEP, -y * PAN_STEP),
  panCommand(
    `pan-${word}-far`,
    `Look far ${word}`,
    [`Shift+${key}`, `Shift+Alt+${key}`],
    x * BIG_PAN_STEP,
    -y * BIG_PAN_STEP,
  ),
]);

const crosshairCommands: readonly Command[] = WAYS.map(({ key, word, x, y }) => ({
  id: `crosshair-${word}`,
  label:
    word === "up" || word === "down" ? `Crosshair ${word} to the next corner` : `Crosshair to the next corner, ${word}`,
  group: "Draw",
  key: `Mod+${key}`,
  repeats: true,
  available: ({ view }) => {
    const { tool } = view.getState();
    return tool === "select" || tool === "pan" ? "Take something to draw or to measure with first." : true;
  },
  run(editor) {
    if (!hostOf(editor).jump([x, y])) editor.view.getState().say("Nothing lies farther that way.", "problem");
  },
}));

export const viewCommands: readonly Command[] = [
  ...lookCommands,
  ...moveCommands,
  ...panCommands,
  ...crosshairCommands,
];

function moveCommand(id: string, label: string, key: string, dx: number, dy: number): Command {
  return { id, label, group: "Change", key, repeats: true, ...nudge(dx, dy) };
}

function panCommand(id: string, label: string, keys: readonly string[], dx: number, dy: number): Command {
  const [key, ...otherKeys] = keys;
  return {
    id,
    label,
    group: "View",
    ...(key === undefined ? {} : { key }),
    otherKeys,
    repeats: true,
    available: hasSheet,
    run: ({ canvas }) => canvas?.panBy(dx, dy),
  };
}
