/** A window over the page, the browser's own: it keeps the focus, Escape and a press beside it close it. */

import { X } from "lucide-react";
import { type ReactNode, useEffect, useId, useRef } from "react";
import { giveFocusBack } from "./give-focus-back.ts";
import { tip } from "./tip-props.ts";
import { comesUp } from "./top-window.ts";

interface DialogProps {
  readonly title: string;
  readonly className?: string;
  readonly children: ReactNode;
  /** A press beside it leaves it open: what is begun in it would be lost. */
  readonly staysOpen?: boolean;
  onClose(): void;
}

export function Dialog({ title, className = "", children, staysOpen = false, onClose }: DialogProps) {
  const box = useRef<HTMLDialogElement>(null);
  /** Where reading begins, if nothing else asks for the focus: the browser would take the button that closes. */
  const heading = useRef<HTMLHeadingElement>(null);
  const id = useId();
  /** A press that began inside, as when words are marked, and ends beside it, closes nothing. */
  const beganBeside = useRef(false);
  useEffect(() => {
    const dialog = box.current;
    const before = document.activeElement;
    if (dialog && !dialog.open) {
      dialog.showModal();
      const first = dialog.querySelector<HTMLElement>("[data-first-focus]") ?? heading.current;
      first?.focus();
    }
    const goes = dialog && comesUp(dialog);
    return () => {
      goes?.();
      dialog?.close();
      giveFocusBack(before, dialog);
    };
  }, []);
  return (
    <dialog
      ref={box}
      className={`dialog ${className}`}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onPointerDown={(event) => {
        beganBeside.current = event.target === box.current;
      }}
      onClick={(event) => {
        if (event.target === box.current && beganBeside.current && !staysOpen) onClose();
      }}
      onKeyDown={(event) => {
        // In a search field the browser would only empty the field.
        if (event.key !== "Escape" || event.defaultPrevented) return;
        event.preventDefault();
        onClose();
      }}
    >
      <div className="dialog-body">
        <header className="dialog-head">
          <h2 id={id} ref={heading} tabIndex={-1}>
            {title}
          </h2>
          <button
            type="button"
            className="plain icon-button"
            aria-label="Close"
            {...tip("Close", "Escape")}
            onClick={onClose}
          >
            <X size={18} aria-hidden="true" />
          </button>
        </header>
        {children}
      </div>
    </dialog>
  );
}
