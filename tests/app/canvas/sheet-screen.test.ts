/** What is sent to the worker that paints, with a worker and a canvas played by the test. Expectations are arithmetic. */
import { describe, expect, it, vi } from "vitest";
import { type PaintPort, workerScreen } from "../../../app/canvas/sheet-screen.ts";
import type { SheetState } from "../../../app/canvas/sheet-state.ts";
import type { SheetUpdate } from "../../../app/canvas/sheet-update.ts";
import type { PaintReply, PaintRequest } from "../../../app/workers/paint-messages.ts";

function played() {
  const sent: PaintRequest[] = [];
  const port: PaintPort = {
    postMessage: (message) => void sent.push(message),
    onmessage: null,
    onerror: null,
    terminate: vi.fn(),
  };
  const canvas = { transferControlToOffscreen: () => ({}), remove: () => undefined };
  const box = { ownerDocument: { createElement: () => canvas }, append: () => undefined };
  const failed: string[] = [];
  const screen = workerScreen(box as unknown as HTMLElement, port, (reason) => failed.push(reason));
  const reply = (data: PaintReply) => port.onmessage?.({ data } as MessageEvent<PaintReply>);
  const updates = () => sent.flatMap((one): SheetUpdate[] => ("update" in one ? [one.update] : []));
  return { screen, reply, updates, failed };
}

const state = (x: number): SheetState =>
  ({
    site: { elements: [{ id: "fence-1" }] },
    report: null,
    opening: 1,
    camera: { x, y: 0, scale: 1 },
  }) as unknown as SheetState;

describe("a sheet that a worker paints", () => {
  it("is sent whole once, and then what differs", () => {
    const { screen, updates } = played();
    const first = state(0);
    screen.show(first);
    screen.show({ ...first, camera: { x: 5, y: 0, scale: 1 } });
    expect(Object.keys(updates()[0] ?? {})).toEqual(["site", "report", "look"]);
    expect(updates()[1]).toEqual({ look: { camera: { x: 5, y: 0, scale: 1 } } });
  });

  it("is sent whole again after a failure: nobody knows what the worker still holds", () => {
    const { screen, reply, updates, failed } = played();
    screen.show(state(0));
    reply({ failure: "an update did not fit" });
    expect(failed).toEqual(["an update did not fit"]);
    const next = state(7);
    screen.show(next);
    expect(updates()[1]).toMatchObject({ site: { whole: next.site }, report: { whole: null } });
  });
});
