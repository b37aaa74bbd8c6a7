/** What is open over the page. */
import { lazy, Suspense } from "react";
import { useStore } from "zustand";
import { useEditor } from "../editor-context.tsx";
import { CommandsDialog, GalleryDialog, HelpDialog, RefusedDialog, TapingDialog, UnderlayDialog } from "./later.tsx";

const StepsList = lazy(() => import("./steps-list.tsx"));
const ChangedFileDialog = lazy(() => import("./changed-file-dialog.tsx"));

export function Dialogs() {
  const editor = useEditor();
  const open = useStore(editor.dialogs, (state) => state.open);
  const refused = useStore(editor.files.state, (state) => state.refused);
  const changedFile = useStore(editor.files.state, (state) => state.changedFile);
  const close = () => editor.dialogs.setState({ open: null });
  if (refused) return <RefusedDialog refused={refused} onClose={() => editor.files.dismissRefusal()} />;
  if (changedFile) {
    return (
      <Suspense>
        <ChangedFileDialog changed={changedFile} />
      </Suspense>
    );
  }
  if (open === "steps") {
    return (
      <Suspense>
        <StepsList onClose={close} />
      </Suspense>
    );
  }
  if (open === "gallery") return <GalleryDialog onClose={close} />;
  if (open === "commands") return <CommandsDialog onClose={close} />;
  if (open === "help") return <HelpDialog onClose={close} />;
  if (open === "underlay") {
    return <UnderlayDialog onClose={close} />;
  }
  if (open === "taping") {
    return <TapingDialog onClose={close} />;
  }
  return null;
}
