/** A file that could not be opened: everything that is wrong with it, and that nothing is lost. */
import { useEditor } from "../editor-context.tsx";
import type { RefusedFile } from "../files/files.ts";
import { Dialog } from "./dialog.tsx";

export function RefusedDialog({ refused, onClose }: { readonly refused: RefusedFile; onClose(): void }) {
  const editor = useEditor();
  const { file, refusal } = refused;
  return (
    <Dialog title="This file was not opened" className="dialog-wide" onClose={onClose}>
      <p className="file-name">{file}</p>
      <p>{refusal.message}</p>
      <p className="soft">The file is as it was, and so is what is on the sheet: nothing is lost.</p>
      {refusal.problems.length === 0 ? null : (
        <div className="scrolls">
          <table className="problems">
            <thead>
              <tr>
                <th scope="col">Element</th>
                <th scope="col">Field</th>
                <th scope="col">Expected</th>
                <th scope="col">Got</th>
              </tr>
            </thead>
            <tbody>
              {refusal.problems.map(({ element, field, expected, got }) => (
                <tr key={`${element} ${field} ${expected} ${got}`}>
                  <td>{element ?? "the site itself"}</td>
                  <td>{field}</td>
                  <td>{expected}</td>
                  <td>{got}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <div className="dialog-buttons">
        <button
          type="button"
          onClick={() => {
            onClose();
            void editor.files.openByPicker();
          }}
        >
          Open another file
        </button>
        <button type="button" className="strong" onClick={onClose}>
          Back to the sheet
        </button>
      </div>
    </Dialog>
  );
}
