/** What happens to the page as a window of the machine: a site file dropped on it, somebody leaving it or coming back. */
import type { Files } from "./files.ts";

/** Listens on the whole page; `onOver` is told while a file hangs over it. Returns what stops it. */
export function acceptDrops(
  page: Window,
  files: Pick<Files, "openFile">,
  onOver: (over: boolean) => void = () => undefined,
): () => void {
  const over = (event: DragEvent) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    if (event.dataTransfer) event.dataTransfer.dropEffect = "copy";
    onOver(true);
  };
  const leave = (event: DragEvent) => {
    if (event.relatedTarget === null) onOver(false);
  };
  const drop = (event: DragEvent) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    onOver(false);
    const dropped = [...(event.dataTransfer?.files ?? [])];
    const file = dropped.find(({ name }) => /\.json$/i.test(name)) ?? dropped[0];
    if (file) void files.openFile(file);
  };
  page.addEventListener("dragover", over);
  page.addEventListener("dragleave", leave);
  page.addEventListener("drop", drop);
  return () => {
    page.removeEventListener("dragover", over);
    page.removeEventListener("dragleave", leave);
    page.removeEventListener("drop", drop);
  };
}

/** Before the page closes: asks when changes would be lost. Returns what stops it. */
export function guardLeaving(page: Window, files: Pick<Files, "atRisk">): () => void {
  const ask = (event: BeforeUnloadEvent) => {
    if (files.atRisk()) event.preventDefault();
  };
  page.addEventListener("beforeunload", ask);
  return () => page.removeEventListener("beforeunload", ask);
}

/** When somebody comes back to the page: looks whether another program has changed the file. Returns what stops it. */
export function lookOnReturn(page: Window, files: Pick<Files, "lookAtFile">): () => void {
  const look = () => {
    if (page.document.visibilityState === "visible") void files.lookAtFile();
  };
  page.addEventListener("focus", look);
  page.document.addEventListener("visibilitychange", look);
  return () => {
    page.removeEventListener("focus", look);
    page.document.removeEventListener("visibilitychange", look);
  };
}

function holdsFiles(event: DragEvent): boolean {
  return event.dataTransfer?.types.includes("Files") ?? false;
}
