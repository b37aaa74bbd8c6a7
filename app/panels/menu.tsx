/** A button that opens a list of commands below it: arrow keys, Home, End and Escape, and a press outside closes it. */
import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from "react";
import { tip } from "./tip-props.ts";

export interface MenuItem {
  readonly id: string;
  readonly label: string;
  readonly icon?: ReactNode;
  /** The key, in words. */
  readonly key?: string;
  /** Why it cannot be run now. */
  readonly unavailable?: string;
  /** One of a set, and the one in use. */
  readonly isChosen?: boolean;
  /** A line above it. */
  readonly startsGroup?: boolean;
  run(): void;
}

interface MenuProps {
  readonly label: ReactNode;
  /** For those who do not see the button. */
  readonly name: string;
  readonly items: readonly MenuItem[];
  readonly className?: string;
  readonly isPressed?: boolean;
  readonly title?: string;
  /** The side of the button that the list is flush with. */
  readonly side?: "left" | "right";
}

export function Menu({ label, name, items, className = "", isPressed, title, side = "left" }: MenuProps) {
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const entries = () => [...(box.current?.querySelectorAll<HTMLElement>("[role^=menuitem]") ?? [])];

  useEffect(() => {
    if (!isOpen) return;
    const outside = (event: PointerEvent) => {
      if (event.target instanceof Node && !box.current?.contains(event.target)) setOpen(false);
    };
    document.addEventListener("pointerdown", outside, true);
    return () => document.removeEventListener("pointerdown", outside, true);
  }, [isOpen]);

  useEffect(() => {
    if (isOpen) box.current?.querySelector<HTMLElement>("[role^=menuitem]")?.focus();
  }, [isOpen]);

  const close = () => {
    setOpen(false);
    button.current?.focus();
  };

  const onKeyDown = (event: KeyboardEvent) => {
    if (!isOpen) {
      if (event.key !== "ArrowDown") return;
      event.preventDefault();
      event.stopPropagation();
      setOpen(true);
      return;
    }
    event.stopPropagation();
    const all = entries();
    const at = all.indexOf(document.activeElement as HTMLElement);
    const next =
      event.key === "ArrowDown"
        ? (at + 1) % all.length
        : event.key === "ArrowUp"
          ? (at - 1 + all.length) % all.length
          : event.key === "Home"
            ? 0
            : event.key === "End"
              ? all.length - 1
              : null;
    if (next !== null) {
      event.preventDefault();
      all[next]?.focus();
    } else if (event.key === "Escape") {
      event.preventDefault();
      close();
    } else if (event.key === "Tab") setOpen(false);
    else if (event.key.length === 1 && event.key !== " ") {
      const letter = event.key.toLowerCase();
      const after = [...all.slice(at + 1), ...all.slice(0, at + 1)];
      after.find((entry) => entry.textContent?.trim().toLowerCase().startsWith(letter))?.focus();
    }
  };

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys belong to the button and the list inside
    <div className="menu" ref={box} onKeyDown={onKeyDown}>
      <button
        ref={button}
        type="button"
        className={className}
        aria-haspopup="menu"
        aria-expanded={isOpen}
        aria-controls={isOpen ? id : undefined}
        aria-label={name}
        data-pressed={isPressed ? "" : undefined}
        {...tip(title ?? name)}
        onClick={() => setOpen(!isOpen)}
      >
        {label}
      </button>
      {isOpen ? (
        <div className={`menu-list menu-${side}`} id={id} role="menu" aria-label={name}>
          {items.map((item) => {
            const own = {
              type: "button" as const,
              className: item.startsGroup ? "menu-item starts-group" : "menu-item",
              "aria-disabled": item.unavailable !== undefined,
              title: item.unavailable,
              tabIndex: -1,
              onClick: () => {
                close();
                item.run();
              },
            };
            return item.isChosen === undefined ? (
              <button key={item.id} role="menuitem" {...own}>
                <ItemWords item={item} />
              </button>
            ) : (
              <button key={item.id} role="menuitemradio" aria-checked={item.isChosen} {...own}>
                <ItemWords item={item} />
              </button>
            );
          })}
        </div>
      ) : null}
    </div>
  );
}

function ItemWords({ item }: { readonly item: MenuItem }) {
  return (
    <>
      <span className="menu-icon">{item.icon}</span>
      <span className="menu-label">{item.label}</span>
      {item.key === undefined ? null : <kbd>{item.key}</kbd>}
    </>
  );
}
