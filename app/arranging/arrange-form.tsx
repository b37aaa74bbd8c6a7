/** What the forms for arranging share: typed fields, choices, and the frame with its button and its refusal. */
import { type ReactNode, useEffect, useId, useRef } from "react";

interface FormProps {
  readonly title: string;
  /** What the button says. */
  readonly action: string;
  /** Why it could not be done, or null. */
  readonly problem: string | null;
  readonly children: ReactNode;
  onApply(): void;
  onClose(): void;
}

export function ArrangeFrame({ title, action, problem, children, onApply, onClose }: FormProps) {
  const box = useRef<HTMLFormElement>(null);
  useEffect(() => {
    box.current?.querySelector<HTMLElement>("input, select")?.focus();
  }, []);
  return (
    <form
      ref={box}
      className="arrange-form"
      aria-label={title}
      onSubmit={(event) => {
        event.preventDefault();
        onApply();
      }}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.preventDefault();
        event.stopPropagation();
        onClose();
      }}
    >
      <h3>{title}</h3>
      {children}
      {problem === null ? null : (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <div className="row">
        <button type="submit">{action}</button>
        <button type="button" className="plain" onClick={onClose}>
          Close
        </button>
      </div>
    </form>
  );
}

interface TypedFieldProps {
  readonly label: string;
  readonly text: string;
  readonly hint?: string;
  onChange(text: string): void;
}

export function TypedField({ label, text, hint, onChange }: TypedFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={text}
        placeholder={hint}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => onChange(event.target.value)}
      />
    </div>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  onChange(value: T): void;
}

export function Choice<T extends string>({ label, value, options, onChange }: ChoiceProps<T>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.target.value);
          if (chosen) onChange(chosen.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
}

interface CheckProps {
  readonly label: string;
  readonly isOn: boolean;
  onChange(isOn: boolean): void;
}

export function Check({ label, isOn, onChange }: CheckProps) {
  return (
    <label className="arrange-check">
      <input type="checkbox" checked={isOn} onChange={(event) => onChange(event.target.checked)} /> {label}
    </label>
  );
}
