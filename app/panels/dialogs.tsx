/** What is open over the page. */
import { lazy, Suspense } from "react";
import { useStore } from "zustand";
import { useEditor } from "../editor-context.tsx";
import { CommandsDialog } from "./commands-dialog.tsx";
import { GalleryDialog } from "./gallery-dialog.tsx";
import { HelpDialog } from "./help-dialog.tsx";
import { RefusedDialog } from "./refused-dialog.tsx";

const TapingDialog = lazy(() => import("../taping/taping-dialog.tsx"));
const UnderlayDialog = lazy(() => import("../underlay/underlay-dialog.tsx"));

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
    return (
      <Suspense>
        <UnderlayDialog onClose={close} />
      </Suspense>
    );
  }
  if (open === "taping") {
    return (
      <Suspense>
        <TapingDialog onClose={close} />
      </Suspense>
    );
  }
  return null;
}
