/** A window over the page, the browser's own: it keeps the focus, Escape and a press beside it close it. */
import { X } from "lucide-react";
import { type ReactNode, useEffect, useId, useRef } from "react";
import { tip } from "./tip-props.ts";

interface DialogProps {
  readonly title: string;
  readonly className?: string;
  readonly children: ReactNode;
  onClose(): void;
}

export function Dialog({ title, className = "", children, onClose }: DialogProps) {
  const box = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = box.current;
    if (dialog && !dialog.open) {
      dialog.showModal();
      dialog.querySelector<HTMLElement>("[data-first-focus]")?.focus();
    }
    return () => dialog?.close();
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
      onClick={(event) => {
        if (event.target === box.current) onClose();
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
          <h2 id={id}>{title}</h2>
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
