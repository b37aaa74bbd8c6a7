/** What is open over the page. */
import { useStore } from "zustand";
import { useEditor } from "../editor-context.tsx";
import {
  ChangedFileDialog,
  CommandsDialog,
  GalleryDialog,
  HelpDialog,
  RefusedDialog,
  StepsList,
  TapingDialog,
  UnderlayDialog,
} from "./later.tsx";

export function Dialogs() {
  const editor = useEditor();
  const open = useStore(editor.dialogs, (state) => state.open);
  const refused = useStore(editor.files.state, (state) => state.refused);
  const changedFile = useStore(editor.files.state, (state) => state.changedFile);
  const close = () => editor.dialogs.setState({ open: null });
  if (refused) return <RefusedDialog refused={refused} onClose={() => editor.files.dismissRefusal()} />;
  if (changedFile) return <ChangedFileDialog changed={changedFile} />;
  if (open === "steps") return <StepsList onClose={close} />;
  if (open === "gallery") return <GalleryDialog onClose={close} />;
  if (open === "commands") return <CommandsDialog onClose={close} />;
  if (open === "help") return <HelpDialog onClose={close} />;
  if (open === "underlay") return <UnderlayDialog onClose={close} />;
  if (open === "taping") return <TapingDialog onClose={close} />;
  return null;
}
