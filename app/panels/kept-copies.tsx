/** The copies that the browser keeps: earlier ones of the site on the sheet, and those of other sites, each with its time. */
import { useEffect, useState } from "react";
import { useDocument, useEditor } from "../editor-context.tsx";
import type { KeptCopy } from "../files/kept-copies.ts";
import type { EarlierCopy } from "../files/kept-records.ts";

interface Shelf {
  readonly copies: readonly KeptCopy[];
  readonly earlier: readonly EarlierCopy[];
}

export function KeptCopies({ onOpen }: { onOpen(id: string, at?: number): void }) {
  const { files } = useEditor();
  const name = useDocument(({ history }) => history.present.name ?? "");
  const [shelf, setShelf] = useState<Shelf | null>(null);
  const [doomed, setDoomed] = useState<string | null>(null);
  const look = async () => setShelf({ copies: await files.copies(), earlier: await files.earlierCopies() });
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at once, when it opens.
  useEffect(() => {
    void look();
  }, [files]);
  /** The copy that was not deleted, and why. */
  const [stays, setStays] = useState<{ readonly id: string; readonly why: string } | null>(null);
  const forget = async (id: string) => {
    setStays(null);
    if (doomed !== id) return setDoomed(id);
    setDoomed(null);
    const why = await files.forgetCopy(id);
    if (why !== null) setStays({ id, why });
    await look();
  };
  const here = files.recordId();
  const earlierOf = (id: string) => (shelf?.earlier ?? []).filter((copy) => copy.id === id);
  // Where nothing is kept there is nothing to say: the demos stand first then.
  if (shelf === null || (shelf.copies.length === 0 && earlierOf(here).length === 0)) return null;
  return (
    <section aria-labelledby="kept-title" className="kept-copies">
      <h3 id="kept-title">Copies kept in this browser</h3>
      <ul>
        {earlierOf(here).length === 0 ? null : (
          <li className="kept-row">
            <span className="kept-name">
              {nameWords(name)}
              <span className="small soft">On the sheet now</span>
            </span>
            <Earlier copies={earlierOf(here)} onOpen={onOpen} />
          </li>
        )}
        {shelf.copies.map((copy) => (
          <li key={`${copy.id} ${copy.broken}`} className="kept-row">
            <span className="kept-name">
              {nameWords(copy.name)}
              <span className="small soft">
                {[copy.file, timeWords(copy.at)].filter((text) => text !== "").join(", ")}
              </span>
              {copy.broken === null ? null : <span className="small problem">{copy.broken}</span>}
              {stays?.id === copy.id ? (
                <span className="small problem" role="alert">
                  {stays.why}
                </span>
              ) : null}
            </span>
            <span className="kept-buttons">
              {copy.broken === null ? (
                <button type="button" onClick={() => onOpen(copy.id)}>
                  Open
                </button>
              ) : null}
              <button type="button" onClick={() => void files.downloadCopy(copy.id)}>
                Download
              </button>
              <button type="button" className="plain" onClick={() => void forget(copy.id)}>
                {doomed === copy.id ? "Delete for good?" : "Delete"}
              </button>
            </span>
            {copy.id === here ? null : <Earlier copies={earlierOf(copy.id)} onOpen={onOpen} />}
          </li>
        ))}
      </ul>
    </section>
  );
}

interface EarlierProps {
  readonly copies: readonly EarlierCopy[];
  onOpen(id: string, at: number): void;
}

function Earlier({ copies, onOpen }: EarlierProps) {
  if (copies.length === 0) return null;
  return (
    <details className="kept-earlier">
      <summary>{copies.length === 1 ? "1 earlier copy" : `${copies.length} earlier copies`}</summary>
      <ul>
        {copies.map(({ id, at }) => (
          <li key={at}>
            <button type="button" onClick={() => onOpen(id, at)}>
              {timeWords(at)}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

function nameWords(name: string): string {
  return name.trim() === "" ? "Site without a name" : name;
}

function timeWords(at: number): string {
  return new Date(at).toLocaleString("en-US", { dateStyle: "medium", timeStyle: "short" });
}
