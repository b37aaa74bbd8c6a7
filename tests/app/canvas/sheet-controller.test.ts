// @vitest-environment happy-dom
/** Frames of the sheet, with a screen and a clock of frames played by the test. Expectations are arithmetic. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { hostOf } from "../../../app/canvas/host-of.ts";
import { SheetController } from "../../../app/canvas/sheet-controller.ts";
import type { SheetScreen } from "../../../app/canvas/sheet-screen.ts";
import type { Editor } from "../../../app/editor.ts";
import { headlessEditor } from "../commands/headless-editor.ts";
import { sampleYard } from "../edits/yard.ts";

describe("a frame of the sheet", () => {
  const frames: FrameRequestCallback[] = [];
  const nextFrame = () => {
    for (const frame of frames.splice(0)) frame(0);
  };

  beforeEach(() => {
    frames.length = 0;
    vi.stubGlobal("requestAnimationFrame", (frame: FrameRequestCallback) => frames.push(frame));
    vi.stubGlobal("cancelAnimationFrame", () => undefined);
  });
  afterEach(() => {
    vi.unstubAllGlobals();
    document.body.replaceChildren();
  });

  it("that broke off in a tool does not stop the frames after it", () => {
    const editor = headlessEditor(sampleYard());
    const live = {
      getState: () => ({ report: null, reportRevision: 0, routesPending: true }),
      subscribe: () => () => {},
    };
    const box = document.body.appendChild(document.createElement("div"));
    const shown = vi.fn();
    const screen: SheetScreen = { show: shown, marks: () => [], close: () => undefined };
    const whole = Object.assign(editor, { live }) as unknown as Editor;
    const detach = new SheetController(whole).attach(box, screen);
    nextFrame();
    expect(shown).toHaveBeenCalledTimes(1);
    const host = hostOf(whole);
    const broken = vi.spyOn(host, "pointerMove").mockImplementation(() => {
      throw new Error("a tool broke");
    });
    box.dispatchEvent(new MouseEvent("pointermove", { bubbles: true, buttons: 0 }));
    expect(nextFrame).toThrow("a tool broke");
    broken.mockRestore();
    editor.view.getState().hover("pump-1");
    nextFrame();
    expect(shown).toHaveBeenCalledTimes(2);
    detach();
  });
});
