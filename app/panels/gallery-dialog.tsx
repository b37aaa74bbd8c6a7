/** The demo sites with a picture of each, and the copies that the browser keeps. */
import { useEffect, useState } from "react";
import { useEditor } from "../editor-context.tsx";
import type { Demo } from "../files/gallery.ts";
import type { KeptCopy } from "../files/kept-copies.ts";
import { Dialog } from "./dialog.tsx";
import { pictureMaker } from "./gallery-pictures.ts";

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
    if (await opening) onClose();
  };

  return (
    <Dialog title="Demo sites and kept copies" className="dialog-wide" onClose={onClose}>
      <div className="scrolls">
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
        <KeptCopies onOpen={(id) => open(editor.files.openCopy(id))} />
      </div>
    </Dialog>
  );
}

function KeptCopies({ onOpen }: { onOpen(id: string): void }) {
  const editor = useEditor();
  const [copies, setCopies] = useState<readonly KeptCopy[] | null>(null);
  const [doomed, setDoomed] = useState<string | null>(null);
  useEffect(() => {
    void editor.files.copies().then(setCopies);
  }, [editor]);
  const forget = async (id: string) => {
    if (doomed !== id) return setDoomed(id);
    await editor.files.forgetCopy(id);
    setCopies(await editor.files.copies());
  };
  return (
    <section aria-labelledby="kept-title" className="kept-copies">
      <h3 id="kept-title">Copies kept in this browser</h3>
      {copies === null ? (
        <p className="panel-note">Looking …</p>
      ) : copies.length === 0 ? (
        <p className="panel-note">None beside the site on the sheet.</p>
      ) : (
        <ul>
          {copies.map((copy) => (
            <li key={copy.id} className="kept-row">
              <span className="kept-name">
                {copy.name.trim() === "" ? "Site without a name" : copy.name}
                <span className="small soft">
                  {[copy.file, new Date(copy.at).toLocaleString("en-US")].filter((text) => text !== "").join(", ")}
                </span>
                {copy.broken === null ? null : <span className="small problem">{copy.broken}</span>}
              </span>
              <span className="kept-buttons">
                {copy.broken === null ? (
                  <button type="button" onClick={() => onOpen(copy.id)}>
                    Open
                  </button>
                ) : null}
                <button type="button" onClick={() => void editor.files.downloadCopy(copy.id)}>
                  Download
                </button>
                <button type="button" className="plain" onClick={() => void forget(copy.id)}>
                  {doomed === copy.id ? "Delete for good?" : "Delete"}
                </button>
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
