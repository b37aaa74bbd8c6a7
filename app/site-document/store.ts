/**
 * The one door to the document. Every change is an edit; one gesture is one step; Escape returns to the start exactly.
 * `shown` is what the sheet draws: the preview of a running gesture, else the present.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Site } from "../../rules/site/site.ts";
import { type Edit, type Refused, refused } from "../edits/edit.ts";
import { go, type History, startHistory, step } from "./history.ts";

/** Where the site on the sheet came from and was last saved to. */
export interface FileState {
  readonly name: string;
  /** The snapshot that the file on disk holds; null when it was never saved. */
  readonly saved: Site | null;
}

interface Gesture {
  readonly label: string;
  readonly start: Site;
}

export interface DocumentState {
  readonly history: History;
  /** What the sheet shows now. */
  readonly shown: Site;
  /** Grows with every change of `shown`; results of a worker carry it back. */
  readonly revision: number;
  /** The revision at which this site came onto the sheet: what is known of an earlier one says nothing about it. */
  readonly opened: number;
  readonly gesture: Gesture | null;
  /** Why the last edit (or the running gesture's last position) was refused. */
  readonly refusal: Refused | null;
  readonly file: FileState;
  /** Why nothing can be changed now, a plain sentence; null: everything can. */
  readonly locked: string | null;

  /** Puts another site on the sheet, with a fresh history. */
  open(site: Site, file: FileState): void;
  /** Applies an edit as one step. Returns the refusal when it is refused; nothing changes then. */
  edit(edit: Edit): Refused | null;
  /** Starts a gesture: previews follow, then `commitGesture` or `cancelGesture`. */
  beginGesture(label: string): void;
  /** Shows the gesture's start with an edit applied. A refused one keeps the last good preview and says why. */
  preview(edit: Edit): Refused | null;
  /** Ends the gesture as one step; if its last position was refused, everything springs back to the start. */
  commitGesture(label?: string): void;
  /** Back to the start, exactly. */
  cancelGesture(): void;
  /** Goes one step back; in the middle of a gesture takes back just that. */
  undo(): void;
  redo(): void;
  /** Goes back (negative) or forward by a number of steps. */
  go(steps: number): void;
  /** `site`: the snapshot that was written, when it may no longer be the present one. */
  markSaved(name: string, site?: Site): void;
  /** Lets the site be looked at only, for a reason that every attempt then gives; null lets it be changed again. */
  lock(reason: string | null): void;
  clearRefusal(): void;
}

export type DocumentStore = StoreApi<DocumentState>;

export function createDocumentStore(site: Site, file: FileState): DocumentStore {
  return createStore<DocumentState>((set, get) => {
    const show = (history: History) => {
      const { shown, revision } = get();
      set({
        history,
        shown: history.present,
        revision: history.present === shown ? revision : revision + 1,
        gesture: null,
      });
    };
    /** The refusal of any change while the site is only looked at. */
    const refuseLocked = (): Refused | null => {
      const { locked } = get();
      if (locked === null) return null;
      const refusal = refused(locked);
      set({ refusal });
      return refusal;
    };
    return {
      history: startHistory(site),
      shown: site,
      revision: 1,
      opened: 1,
      gesture: null,
      refusal: null,
      file,
      locked: null,
      open(next, nextFile) {
        set((state) => ({
          history: startHistory(next),
          shown: next,
          revision: state.revision + 1,
          opened: state.revision + 1,
          gesture: null,
          refusal: null,
          file: nextFile,
          locked: null,
        }));
      },
      edit(edit) {
        if (get().gesture) get().commitGesture();
        const isLocked = refuseLocked();
        if (isLocked) return isLocked;
        const result = edit.apply(get().history.present);
        if (!result.ok) {
          set({ refusal: result });
          return result;
        }
        set({ refusal: null });
        show(step(get().history, result.site, result.label ?? edit.label));
        return null;
      },
      beginGesture(label) {
        if (get().gesture) get().commitGesture();
        set({ gesture: { label, start: get().history.present }, refusal: null });
      },
      preview(edit) {
        const { gesture, revision, shown } = get();
        if (!gesture) return get().edit(edit);
        const isLocked = refuseLocked();
        if (isLocked) return isLocked;
        const result = edit.apply(gesture.start);
        if (!result.ok) {
          set({ refusal: result });
          return result;
        }
        const named = result.label === undefined ? gesture : { ...gesture, label: result.label };
        if (result.site === shown) set({ refusal: null, gesture: named });
        else set({ shown: result.site, revision: revision + 1, refusal: null, gesture: named });
        return null;
      },
      commitGesture(label) {
        const { gesture, shown, refusal, history } = get();
        if (!gesture) return;
        if (refusal) {
          show(history);
          return;
        }
        show(step(history, shown, label ?? gesture.label));
      },
      cancelGesture() {
        const { gesture, history } = get();
        if (!gesture) return;
        set({ refusal: null });
        show(history);
      },
      undo() {
        if (get().gesture) get().cancelGesture();
        else get().go(-1);
      },
      redo() {
        get().go(1);
      },
      go(steps) {
        get().cancelGesture();
        if (!refuseLocked()) show(go(get().history, steps));
      },
      markSaved(name, site) {
        set((state) => ({ file: { name, saved: site ?? state.history.present } }));
      },
      lock(locked) {
        if (locked !== null) get().cancelGesture();
        set({ locked, refusal: null });
      },
      clearRefusal() {
        set({ refusal: null });
      },
    };
  });
}
