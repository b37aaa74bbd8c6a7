// @vitest-environment happy-dom
/** Where the focus goes with a part of the page, and when. Our own design, no source. */
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { focusPagePartSoon } from "../../../app/panels/page-parts.ts";

const frames: FrameRequestCallback[] = [];
const nextFrame = () => {
  for (const frame of frames.splice(0)) frame(0);
};
const rendered = () => Promise.resolve();
const focused = () => document.activeElement?.id;

beforeEach(() => {
  frames.length = 0;
  vi.stubGlobal("requestAnimationFrame", (frame: FrameRequestCallback) => frames.push(frame));
  document.body.innerHTML = `
    <div class="topbar"><button id="undo"></button></div>
    <div class="sheet"><div class="sheet-canvas" id="sheet" tabindex="0"></div></div>
    <div class="side"><button role="tab" aria-selected="true" id="findings"></button></div>`;
  document.getElementById("sheet")?.focus();
});
afterEach(() => {
  vi.unstubAllGlobals();
  document.body.replaceChildren();
});

it("the focus is there before the next key, on what was rendered meanwhile", async () => {
  focusPagePartSoon(document, "details");
  document.getElementById("findings")?.setAttribute("id", "outline");
  await rendered();
  expect(focused()).toBe("outline");
  focusPagePartSoon(document, "next");
  await rendered();
  expect(focused()).toBe("undo");
  expect(frames).toHaveLength(0);
});

it("a part that stands only in the next frame takes it then", async () => {
  const side = document.querySelector<HTMLElement>(".side [role=tab]");
  side?.setAttribute("style", "visibility: hidden");
  focusPagePartSoon(document, "details");
  await rendered();
  expect(focused()).toBe("sheet");
  side?.removeAttribute("style");
  nextFrame();
  expect(focused()).toBe("findings");
});

it("but not from where it has gone meanwhile", async () => {
  const side = document.querySelector<HTMLElement>(".side [role=tab]");
  side?.setAttribute("style", "visibility: hidden");
  focusPagePartSoon(document, "details");
  await rendered();
  document.getElementById("undo")?.focus();
  side?.removeAttribute("style");
  nextFrame();
  expect(focused()).toBe("undo");
});
