import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { listenToKeys } from "./commands/keyboard.ts";
import { createEditor } from "./editor.ts";
import { EditorContext } from "./editor-context.tsx";
import { guardLeaving } from "./files/drop.ts";
import { App } from "./panels/app.tsx";
import { hasSeenWalk, walkStorage } from "./walk/walk-memory.ts";

const root = document.getElementById("root");
if (!root) throw new Error('index.html has no element with the id "root"');

const editor = createEditor(window);
listenToKeys(window, editor.commands, editor);
guardLeaving(window, editor.files);
void startUp();

createRoot(root).render(
  <StrictMode>
    <EditorContext value={editor}>
      <App />
    </EditorContext>
  </StrictMode>,
);

/** Puts a site on the sheet; on a first visit, which finds none kept, the walk shows itself. */
async function startUp(): Promise<void> {
  const found = await editor.files.start();
  if (found !== "demo" || hasSeenWalk(walkStorage(window))) return;
  const { offerWalk } = await import("./walk/walk.ts");
  offerWalk(editor);
}
