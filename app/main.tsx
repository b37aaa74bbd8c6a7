import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { listenToKeys } from "./commands/keyboard.ts";
import { createEditor } from "./editor.ts";
import { EditorContext } from "./editor-context.tsx";
import { guardLeaving } from "./files/drop.ts";
import { App } from "./panels/app.tsx";

const root = document.getElementById("root");
if (!root) throw new Error('index.html has no element with the id "root"');

const editor = createEditor(window);
listenToKeys(window, editor.commands, editor);
guardLeaving(window, editor.files);
void editor.files.start();

createRoot(root).render(
  <StrictMode>
    <EditorContext value={editor}>
      <App />
    </EditorContext>
  </StrictMode>,
);
