/**
 * Writing the site to a file. A file that was opened or written here is looked at first: if it was changed since, by
 * another program or another tab, nothing is written and the person decides.
 */
import type { StoreApi } from "zustand/vanilla";
import { writeSite } from "../../rules/site/writer.ts";
import type { DocumentStore } from "../site-document/store.ts";
import type { ViewStore } from "../view/view-store.ts";
import { digestOf } from "./digest.ts";
import type { FileAccess, FileHandle } from "./file-access.ts";
import { fileNameFor } from "./file-name.ts";
import type { Keeper } from "./keeping.ts";

/** A file that is no longer what was last read or written here. */
export interface ChangedFile {
  readonly name: string;
  readonly handle: FileHandle;
  /** What it holds now. */
  readonly text: string;
}

export interface Saving {
  /** False when nothing was written (the person cancelled, or it failed and a notice says why). */
  save(): Promise<boolean>;
  saveAs(): Promise<boolean>;
  /** Writes over a file that was changed. */
  overwrite(): Promise<boolean>;
  /**
   * Looks whether the file was changed since, as when somebody comes back from another program, and lets the person decide;
   * asked once for what it holds then. True when it was. Without leave to read it nothing is asked.
   */
  lookAtFile(): Promise<boolean>;
}

interface SavingOptions {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly access: FileAccess;
  readonly keeper: Keeper;
  readonly state: StoreApi<{ readonly changedFile: ChangedFile | null }>;
}

export function createSaving({ document, view, access, keeper, state }: SavingOptions): Saving {
  const { say } = view.getState();
  /** What a file held when it was last told that it had changed. */
  let toldOf: string | null = null;

  async function lookAtFile(): Promise<boolean> {
    const handle = keeper.handle();
    const known = keeper.digest();
    if (handle === null || known === null || document.getState().locked !== null) return false;
    let held: string | null;
    try {
      held = await access.peek(handle);
    } catch (error) {
      // Saving says what is wrong with the file; whoever only comes back has not asked for it.
      if (error instanceof DOMException) return false;
      throw error;
    }
    if (held === null) return false;
    const digest = await digestOf(held);
    if (keeper.handle() !== handle || keeper.digest() !== known) return false;
    const { gesture, history } = document.getState();
    if (digest === known || digest === toldOf || gesture !== null || held === writeSite(history.present)) return false;
    toldOf = digest;
    state.setState({ changedFile: { name: handle.name, handle, text: held } });
    return true;
  }

  /** Whether the same site is still on the sheet: a slow file may let another one be opened meanwhile. */
  function follow(): () => boolean {
    const record = keeper.recordId();
    return () => keeper.recordId() === record;
  }

  async function write(handle: FileHandle, look: boolean): Promise<boolean> {
    const isStillOn = follow();
    const site = document.getState().history.present;
    const text = writeSite(site);
    try {
      const known = keeper.digest();
      if (look && known !== null) {
        const held = await access.read(handle);
        if ((await digestOf(held)) !== known && held !== text) {
          if (isStillOn()) state.setState({ changedFile: { name: handle.name, handle, text: held } });
          else {
            say(
              `${handle.name} was changed by another program and was not written. Its site is among the kept copies.`,
            );
          }
          return false;
        }
      }
      await access.write(handle, text);
    } catch (error) {
      const reason = isGone(error) ? "it is no longer where it was" : messageOf(error);
      say(`${handle.name} could not be written: ${reason}. Nothing is lost; save it as another file.`, "problem", [
        "save-as",
      ]);
      return false;
    }
    const digest = await digestOf(text);
    if (isStillOn()) {
      keeper.setFile(handle, digest);
      document.getState().markSaved(handle.name, site);
      state.setState({ changedFile: null });
    }
    say(`Saved to ${handle.name}.`);
    return true;
  }

  async function saveAs(): Promise<boolean> {
    const site = document.getState().history.present;
    const name = document.getState().file.name || fileNameFor(site);
    if (!access.canPickToSave) {
      access.download(name, writeSite(site));
      document.getState().markSaved(name, site);
      state.setState({ changedFile: null });
      say(`Saved to the downloads as ${name}.`);
      return true;
    }
    const isStillOn = follow();
    try {
      const handle = await access.pickToSave(name);
      if (handle === null) return false;
      if (isStillOn()) return await write(handle, false);
      say("The site was not saved: another one is on the sheet by now.", "problem", ["save-as"]);
      return false;
    } catch (error) {
      say(`The site could not be saved: ${messageOf(error)}.`, "problem");
      return false;
    }
  }

  return {
    saveAs,
    async save() {
      const { locked } = document.getState();
      const handle = keeper.handle();
      if (handle === null) return saveAs();
      if (locked === null) return write(handle, true);
      say(locked, "problem");
      return false;
    },
    lookAtFile,
    async overwrite() {
      const { changedFile } = state.getState();
      return changedFile !== null && write(changedFile.handle, false);
    },
  };
}

function isGone(error: unknown): boolean {
  return error instanceof DOMException && error.name === "NotFoundError";
}

/** An error's own words, without the full stop. */
export function messageOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return text.replace(/\.$/, "");
}
