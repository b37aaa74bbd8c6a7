/** The file was changed since it was opened here: nothing is written until the person decides. */
import { useEditor } from "../editor-context.tsx";
import type { ChangedFile } from "../files/saving.ts";
import { Dialog } from "./dialog.tsx";

export default function ChangedFileDialog({ changed }: { readonly changed: ChangedFile }) {
  const { files } = useEditor();
  const close = () => files.dismissChangedFile();
  return (
    <Dialog title="The file was changed since you opened it" onClose={close}>
      <p className="file-name">{changed.name}</p>
      <p>
        Another program or another tab wrote to it. Nothing has been written yet, and neither version is lost whatever
        you choose.
      </p>
      <dl className="ways">
        <div>
          <dt>
            <button type="button" className="strong" data-first-focus="" onClick={() => void files.saveAs()}>
              Save as another file
            </button>
          </dt>
          <dd>Both stay as they are, side by side.</dd>
        </div>
        <div>
          <dt>
            <button type="button" onClick={() => void files.overwriteChangedFile()}>
              Write over it
            </button>
          </dt>
          <dd>What the file holds now stays among the kept copies.</dd>
        </div>
        <div>
          <dt>
            <button type="button" onClick={() => void files.openChangedFile()}>
              Open it as it is now
            </button>
          </dt>
          <dd>What is on the sheet stays among the kept copies.</dd>
        </div>
      </dl>
      <div className="dialog-buttons">
        <button type="button" className="plain" onClick={close}>
          Not now
        </button>
      </div>
    </Dialog>
  );
}
