/**
 * Keys that come while a window is still on its way: they are its own, and no commands of the sheet behind. What is typed
 * for a field is taken here, and stands in the field once that is there.
 */
import { createContext, type RefObject, useContext, useLayoutEffect, useRef, useState } from "react";
import { useEditor, useView } from "../editor-context.tsx";

export interface TypedAhead {
  readonly text: string;
  /** Enter was pressed after it. */
  readonly isEntered: boolean;
}

export const NOTHING_TYPED: TypedAhead = { text: "", isEntered: false };

/** What was typed for the late part that this stands in; whoever takes it puts nothing in its place. */
export const TypedAheadContext = createContext<RefObject<TypedAhead>>({ current: NOTHING_TYPED });

function FieldOnItsWay({ label }: { readonly label: string }) {
  const ahead = useContext(TypedAheadContext);
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState("");
  useLayoutEffect(() => field.current?.focus(), []);
  return (
    <input
      ref={field}
      type="search"
      aria-label={label}
      value={text}
      onChange={({ target }) => {
        setText(target.value);
        ahead.current = { text: target.value, isEntered: false };
      }}
      onKeyDown={({ key }) => {
        if (key === "Enter") ahead.current = { ...ahead.current, isEntered: true };
      }}
    />
  );
}

interface WindowProps {
  /** The field that keys are typed for, by its name; absent: for none. */
  readonly field?: string;
  /** A window that nobody asked for stays until it is read. */
  readonly staysOpen?: boolean;
}

/** Stands for a window whose code is being fetched. Escape gives it up. */
export function WindowOnItsWay({ field, staysOpen = false }: WindowProps) {
  const editor = useEditor();
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const dialog = box.current;
    dialog?.showModal();
    if (field === undefined) dialog?.focus();
    // Closing gives the focus back: the window that comes finds it where it was.
    return () => dialog?.close();
  }, [field]);
  const giveUp = () => editor.dialogs.setState({ open: null });
  return (
    <dialog
      ref={box}
      className="dialog"
      aria-label="The window is getting ready"
      tabIndex={-1}
      onCancel={(event) => {
        event.preventDefault();
        if (!staysOpen) giveUp();
      }}
    >
      <div className="dialog-body">
        <p>Getting ready …</p>
        {field === undefined ? null : <FieldOnItsWay label={field} />}
        {staysOpen ? null : (
          <button type="button" onClick={giveUp}>
            Cancel
          </button>
        )}
      </div>
    </dialog>
  );
}

/** Stands for the outline while it is being fetched, where it was asked for in order to find something. */
export function FindOnItsWay() {
  const isAsked = useView((view) => view.findRequests > 0);
  return isAsked ? <FieldOnItsWay label="Filter the outline" /> : null;
}
