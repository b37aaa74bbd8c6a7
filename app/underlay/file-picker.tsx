/** A file to be laid underneath, and of a PDF the page. */
import { useId, useRef, useState } from "react";
import { type Picture, readPicture } from "./read-picture.ts";

export function FilePicker({ onRead }: { onRead(picture: Picture): void }) {
  const [file, setFile] = useState<File | null>(null);
  const [pages, setPages] = useState(1);
  const [page, setPage] = useState(1);
  const [state, setState] = useState<"idle" | "reading" | { readonly problem: string }>("idle");
  /** How often something was asked for: what was asked for before comes too late. */
  const asked = useRef(0);
  const id = useId();
  const pageId = useId();
  const read = async (chosen: File, number: number) => {
    setState("reading");
    asked.current += 1;
    const mine = asked.current;
    const result = await readPicture(chosen, number);
    if (mine !== asked.current) return;
    if (!result.ok) {
      setState({ problem: result.reason });
      return;
    }
    setPages(result.pages);
    setState("idle");
    onRead(result.picture);
  };
  return (
    <div className="row underlay-file">
      <label htmlFor={id}>Picture or PDF</label>
      <input
        id={id}
        type="file"
        accept="image/png,image/jpeg,image/webp,application/pdf,.pdf"
        onChange={(event) => {
          const [chosen] = event.target.files ?? [];
          if (!chosen) return;
          setFile(chosen);
          setPage(1);
          void read(chosen, 1);
        }}
      />
      {file && pages > 1 ? (
        <>
          <label htmlFor={pageId}>Page of {pages}</label>
          <input
            id={pageId}
            type="number"
            min={1}
            max={pages}
            value={page}
            onChange={(event) => {
              const number = Number(event.target.value);
              if (!Number.isInteger(number) || number < 1 || number > pages) return;
              setPage(number);
              void read(file, number);
            }}
          />
        </>
      ) : null}
      {state === "reading" ? <p role="status">Reading it.</p> : null}
      {typeof state === "object" ? (
        <p className="problem" role="alert">
          {state.problem}
        </p>
      ) : null}
    </div>
  );
}
