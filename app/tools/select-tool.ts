/**
 * Selects and moves.
 *
 * States: idle; pressing (down on something, not moved yet); moving the selection; pulling a corner; bending an edge;
 * boxing. Every frame of a gesture starts again from the gesture's own start, so Escape returns to it exactly.
 */
import { edgeFromVertices, pointAt } from "../../geometry/edge.ts";
import { distanceBetween } from "../../geometry/points.ts";
import type { PathData, Point } from "../../geometry/types.ts";
import { isKnown } from "../../rules/measures/yard.ts";
import { lengthText } from "../../rules/words/lengths.ts";
import { deleteVertex } from "../edits/delete-vertex.ts";
import { insertVertex } from "../edits/insert-vertex.ts";
import { moveElements } from "../edits/move-elements.ts";
import { moveVertex } from "../edits/move-vertex.ts";
import { type PathRef, pathOf, pathRefs } from "../edits/path-ref.ts";
import { setBulge } from "../edits/set-bulge.ts";
import { elementsAt, elementsInside } from "../hit-test/hit-test.ts";
import { placed } from "./placing.ts";
import type { Overlay, Sample, Tool, ToolPorts } from "./tool.ts";

interface Handle {
  readonly id: string;
  readonly ref: PathRef;
  readonly index: number;
  readonly kind: "corner" | "middle";
  readonly at: Point;
}

type State =
  | { readonly name: "idle" }
  | { readonly name: "pressing"; readonly from: Sample; readonly hit: string | null }
  | { readonly name: "moving"; readonly from: Point; readonly ids: readonly string[] }
  | { readonly name: "pulling" | "bending"; readonly handle: Handle; readonly from: Sample }
  | { readonly name: "boxing"; readonly from: Point; at: Point };

export function selectTool(ports: ToolPorts): Tool {
  let state: State = { name: "idle" };
  let active: Handle | null = null;
  let said: { at: Point; text: string } | null = null;

  const site = () => ports.document.getState().shown;
  const selection = () => ports.view.getState().selection;

  function handles(): Handle[] {
    const [only, ...more] = selection();
    if (only === undefined || more.length > 0) return [];
    const element = site().elements.find((one) => one.id === only);
    if (!element || !isKnown(element)) return [];
    return pathRefs(element).flatMap((ref) => {
      const path = pathOf(element, ref);
      return path ? handlesOf(only, ref, path, element.kind !== "overhead-line") : [];
    });
  }

  function handleAt({ at, slack }: Sample): Handle | null {
    let best: Handle | null = null;
    for (const handle of handles()) {
      const away = distanceBetween(handle.at, at);
      if (away > slack) continue;
      const nearer = !best || away < distanceBetween(best.at, at);
      if (!best || (best.kind === handle.kind ? nearer : handle.kind === "corner")) best = handle;
    }
    return best;
  }

  function say(reason: string): void {
    ports.view.getState().say(reason, "problem");
  }

  function end(): void {
    const refusal = ports.document.getState().refusal;
    ports.document.getState().commitGesture();
    if (refusal) say(refusal.reason);
    said = null;
  }

  return {
    hint: "",
    down(sample) {
      const handle = handleAt(sample);
      if (handle) {
        active = handle;
        state = { name: handle.kind === "corner" ? "pulling" : "bending", handle, from: sample };
        return;
      }
      active = null;
      const hit = elementsAt(site().elements, sample.at, sample.slack)[0] ?? null;
      if (hit === null) {
        if (!sample.shift) ports.view.getState().select([]);
        state = { name: "boxing", from: sample.at, at: sample.at };
        return;
      }
      if (sample.shift) {
        const now = selection();
        ports.view.getState().select(now.includes(hit) ? now.filter((id) => id !== hit) : [...now, hit]);
      } else if (!selection().includes(hit)) ports.view.getState().select([hit]);
      state = { name: "pressing", from: sample, hit };
    },
    move(sample) {
      switch (state.name) {
        case "idle":
          ports.view.getState().hover(elementsAt(site().elements, sample.at, sample.slack)[0] ?? null);
          return;
        case "pressing": {
          if (distanceBetween(state.from.at, sample.at) < sample.slack / 2 || selection().length === 0) return;
          ports.document.getState().beginGesture("Move");
          state = { name: "moving", from: state.from.at, ids: selection() };
          break;
        }
        case "boxing":
          state.at = sample.at;
          return;
      }
      if (state.name === "moving") {
        const { point } = placed(ports, { ...sample, at: [sample.at[0], sample.at[1]] }, state.from, state.ids);
        const dx = sample.alt ? sample.at[0] - state.from[0] : snapStep(point[0] - state.from[0], sample);
        const dy = sample.alt ? sample.at[1] - state.from[1] : snapStep(point[1] - state.from[1], sample);
        ports.document.getState().preview(moveElements(state.ids, dx, dy));
        return;
      }
      if (state.name === "pulling" || state.name === "bending") pull(state.name, state.handle, state.from, sample);
    },
    up() {
      if (state.name === "boxing") {
        const [x0, y0] = state.from;
        const [x1, y1] = state.at;
        const box = { minX: Math.min(x0, x1), minY: Math.min(y0, y1), maxX: Math.max(x0, x1), maxY: Math.max(y0, y1) };
        if (box.maxX > box.minX || box.maxY > box.minY) {
          const inside = elementsInside(site().elements, box);
          ports.view.getState().select([...new Set([...selection(), ...inside])]);
        }
      } else if (ports.document.getState().gesture) end();
      state = { name: "idle" };
    },
    doubleClick(sample) {
      const handle = handleAt(sample);
      if (handle?.kind !== "middle") return;
      const refusal = ports.document.getState().edit(insertVertex(handle.id, handle.ref, handle.index + 1, handle.at));
      if (refusal) say(refusal.reason);
    },
    key(key) {
      if ((key !== "Delete" && key !== "Backspace") || active?.kind !== "corner") return false;
      const refusal = ports.document.getState().edit(deleteVertex(active.id, active.ref, active.index));
      if (refusal) say(refusal.reason);
      active = null;
      return true;
    },
    cancel() {
      const had = state.name !== "idle" || active !== null;
      if (ports.document.getState().gesture) ports.document.getState().cancelGesture();
      state = { name: "idle" };
      active = null;
      said = null;
      return had;
    },
    overlay() {
      const shapes: Overlay[] = handles().map((handle) => ({
        kind: "handle",
        at: handle.at,
        shape: handle.kind,
        strong: active !== null && active.index === handle.index && active.kind === handle.kind,
      }));
      if (state.name === "boxing") {
        const { from, at } = state;
        const points: Point[] = [from, [at[0], from[1]], at, [from[0], at[1]]];
        shapes.push({ kind: "line", points, closed: true, style: "box" });
      }
      if (said) shapes.push({ kind: "label", ...said });
      return shapes;
    },
    fields: () => [],
    enter: () => null,
  };

  function pull(name: "pulling" | "bending", handle: Handle, from: Sample, sample: Sample): void {
    const { document } = ports;
    if (!document.getState().gesture) {
      if (distanceBetween(from.at, sample.at) < sample.slack / 4) return;
      document.getState().beginGesture(name === "pulling" ? "Move a corner" : "Bend an edge");
    }
    if (name === "pulling") {
      const found = placed(ports, sample, undefined, [handle.id]);
      document.getState().preview(moveVertex(handle.id, handle.ref, handle.index, found.point));
      said = { at: found.point, text: found.reason };
      return;
    }
    const start = document.getState().gesture?.start;
    const element = start?.elements.find((one) => one.id === handle.id);
    const path = element ? pathOf(element, handle.ref) : null;
    const a = path?.vertices[handle.index];
    const b = path?.vertices[(handle.index + 1) % (path?.vertices.length ?? 1)];
    if (!a || !b) return;
    const chord = distanceBetween([a[0], a[1]], [b[0], b[1]]);
    // The sagitta over half the chord is the tangent of a quarter of the arc's angle.
    const off = ((b[0] - a[0]) * (a[1] - sample.at[1]) - (a[0] - sample.at[0]) * (b[1] - a[1])) / chord;
    const bulge = Math.abs(off) < sample.slack / 2 ? 0 : (off * 2) / chord;
    document.getState().preview(setBulge(handle.id, handle.ref, handle.index, Math.max(-5, Math.min(5, bulge))));
    const units = site().display?.units ?? "ft-in";
    const radius = bulge === 0 ? 0 : (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
    said = { at: sample.at, text: bulge === 0 ? "straight" : `radius ${lengthText(radius, units)}` };
  }
}

/** A move in whole steps of the hand's own grid. */
function snapStep(inches: number, sample: Sample): number {
  const step = sample.slack < 3 ? 0.5 : sample.slack < 12 ? 1 : 6;
  return Math.round(inches / step) * step;
}

function handlesOf(id: string, ref: PathRef, path: PathData, bends: boolean): Handle[] {
  const { vertices, closed } = path;
  return vertices.flatMap((vertex, index): Handle[] => {
    const corner: Handle = { id, ref, index, kind: "corner", at: [vertex[0], vertex[1]] };
    const next = vertices[(index + 1) % vertices.length];
    if (!next || (!closed && index === vertices.length - 1)) return [corner];
    const edge = edgeFromVertices(bends ? vertex : [vertex[0], vertex[1]], next);
    return [corner, { id, ref, index, kind: "middle", at: pointAt(edge, 0.5) }];
  });
}
