import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { listenToKeys } from "./commands/keyboard.ts";
import { createEditor } from "./editor.ts";
import { EditorContext } from "./editor-context.tsx";
import { guardLeaving, lookOnReturn } from "./files/page-window.ts";
import { App } from "./panels/app.tsx";
import { PartBoundary } from "./panels/part-boundary.tsx";
import { StoppedPage } from "./panels/stopped-page.tsx";
import { sayErrors } from "./view/say-errors.ts";
import { hasSeenWalk, walkStorage } from "./walk/walk-memory.ts";

const root = document.getElementById("root");
if (!root) throw new Error('index.html has no element with the id "root"');

const editor = createEditor(window);
sayErrors(window, editor.view);
listenToKeys(window, editor.commands, editor);
guardLeaving(window, editor.files);
lookOnReturn(window, editor.files);
void startUp();
// In a built page only, and once it stands: while developing, files change.
if (import.meta.env.PROD) window.addEventListener("load", () => whenIdle(() => void keepProgram()));

createRoot(root).render(
  <StrictMode>
    <EditorContext value={editor}>
      <PartBoundary instead={(failure) => <StoppedPage failure={failure} />}>
        <App />
      </PartBoundary>
    </EditorContext>
  </StrictMode>,
);

/** Puts a site on the sheet; on a first visit, which finds none kept, the walk shows itself to whoever only looks yet. */
async function startUp(): Promise<void> {
  let hasBegun = false;
  const begin = () => {
    hasBegun = true;
  };
  const firstActs = ["pointerdown", "keydown"] as const;
  for (const act of firstActs) window.addEventListener(act, begin, { capture: true, once: true });
  const found = await editor.files.start();
  if (found !== "demo" || hasSeenWalk(walkStorage(window))) return;
  const { offerWalk } = await import("./walk/walk.ts");
  // Nothing is taken out of the hands of somebody who is at work already; Help has the walk.
  if (!hasBegun) offerWalk(editor);
}

/** Lets the program work without a network from now on. */
async function keepProgram(): Promise<void> {
  const { startOffline } = await import("./offline/start-offline.ts");
  await startOffline(window, () => {
    editor.view
      .getState()
      .say("A newer version of the program is ready. What is on the sheet stays.", "plain", ["newer"]);
  });
}

/** Safari has no idle callback yet. */
function whenIdle(run: () => void): void {
  if (typeof window.requestIdleCallback === "function") window.requestIdleCallback(run, { timeout: 4000 });
  else setTimeout(run, 1000);
}
