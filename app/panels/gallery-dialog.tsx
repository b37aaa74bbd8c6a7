/** The demo sites with a picture of each, and the copies that the browser keeps. */
import { useEffect, useState } from "react";
import { flushSync } from "react-dom";
import { focusSheet } from "../canvas/focus-sheet.ts";
import { useEditor } from "../editor-context.tsx";
import type { Demo } from "../files/gallery.ts";
import { Dialog } from "./dialog.tsx";
import { pictureMaker } from "./gallery-pictures.ts";
import { KeptCopies } from "./kept-copies.tsx";

export function GalleryDialog({ onClose }: { onClose(): void }) {
  const editor = useEditor();
  const [demos, setDemos] = useState<readonly Demo[] | null>(null);
  const [pictures, setPictures] = useState<ReadonlyMap<string, string>>(new Map());

  useEffect(() => {
    let isGone = false;
    const maker = pictureMaker((id, address) => setPictures((now) => new Map(now).set(id, address)));
    void editor.files.demos().then((all) => {
      if (isGone) return;
      setDemos(all);
      maker.draw(all, editor.view.getState().palette);
    });
    return () => {
      isGone = true;
      maker.close();
    };
  }, [editor]);

  const open = async (opening: Promise<boolean>) => {
    if (!(await opening)) return;
    flushSync(onClose);
    // A drawing that came back with its site is gone on with: its keys belong to the sheet, now that the window is gone.
    if (editor.view.getState().tool !== "select") focusSheet();
  };

  return (
    <Dialog title="Demo sites and kept copies" className="dialog-wide" onClose={onClose}>
      <div className="scrolls">
        <KeptCopies onOpen={(id, at) => void open(editor.files.openCopy(id, at))} />
        <p className="soft">
          Invented yards, drawn to real proportions. What is on the sheet now stays as a kept copy if it holds changes.
        </p>
        <ul className="gallery" aria-busy={demos === null}>
          {(demos ?? []).map((demo) => (
            <li key={demo.id}>
              <button type="button" className="demo" onClick={() => void open(editor.files.openDemo(demo.id))}>
                <span className="demo-picture">
                  {pictures.has(demo.id) ? <img src={pictures.get(demo.id)} alt="" /> : null}
                </span>
                <span className="demo-title">{demo.title}</span>
                <span className="demo-note">{demo.note}</span>
              </button>
            </li>
          ))}
        </ul>
      </div>
    </Dialog>
  );
}
