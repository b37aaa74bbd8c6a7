/**
 * The tip beside a button: its name, its key and a sentence. It comes when the pointer rests on the button or keys bring
 * the focus there, and goes with the pointer, the focus, a press, a scroll or Escape. Buttons say what theirs is in
 * `data-tip` (see tip-props.ts); screen readers read the button itself.
 */
import { useEffect, useRef, useState } from "react";
import "./tips.css";

/** How long the pointer rests before a tip comes, and how soon after one tip the next comes at once, milliseconds. */
const REST = 450;
const WARM = 400;
/** Space between a button and its tip, and to the edge of the page, pixels. */
const GAP = 8;

/** Buttons whose tip stands above them, clear of what lies below. */
const ABOVE = ".side-head, .status";

interface Shown {
  readonly isAbove: boolean;
  readonly words: string;
  readonly key: string;
  readonly more: string;
  readonly anchor: DOMRect;
}

export function Tips() {
  const [shown, setShown] = useState<Shown | null>(null);
  const box = useRef<HTMLDivElement>(null);

  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | null = null;
    let over: Element | null = null;
    let gone = Number.NEGATIVE_INFINITY;
    const show = (button: Element) => {
      if (!button.isConnected) return;
      const { tip = "", tipKey = "", tipMore = "" } = (button as HTMLElement).dataset;
      // A button that already reads so, and has no key, needs no tip.
      if (tipKey === "" && tipMore === "" && button.textContent?.trim() === tip) return;
      const isAbove = button.closest(ABOVE) !== null;
      setShown({ isAbove, words: tip, key: tipKey, more: tipMore, anchor: button.getBoundingClientRect() });
    };
    const hide = () => {
      if (timer !== null) clearTimeout(timer);
      timer = null;
      over = null;
      setShown((now) => {
        if (now !== null) gone = performance.now();
        return null;
      });
    };
    const overButton = (event: PointerEvent) => {
      if (event.pointerType === "touch") return;
      const button = tipped(event.target);
      if (button === over) return;
      hide();
      over = button;
      if (button) timer = setTimeout(() => show(button), performance.now() - gone < WARM ? 0 : REST);
    };
    const focused = (event: FocusEvent) => {
      hide();
      const button = tipped(event.target);
      if (button === event.target && button?.matches(":focus-visible")) show(button);
    };
    const pressed = (event: KeyboardEvent) => {
      if (event.key === "Escape" || event.key === "Enter" || event.key === " ") hide();
    };
    document.addEventListener("pointerover", overButton);
    document.addEventListener("focusin", focused);
    document.addEventListener("keydown", pressed, true);
    const ends = ["pointerdown", "scroll", "focusout", "wheel"] as const;
    for (const name of ends) document.addEventListener(name, hide, { capture: true, passive: true });
    return () => {
      hide();
      document.removeEventListener("pointerover", overButton);
      document.removeEventListener("focusin", focused);
      document.removeEventListener("keydown", pressed, true);
      for (const name of ends) document.removeEventListener(name, hide, { capture: true });
    };
  }, []);

  useEffect(() => {
    const tip = box.current;
    if (!shown || !tip) return;
    // Over everything, an open window as well.
    tip.showPopover();
    const { width, height } = tip.getBoundingClientRect();
    const { left, right, top, bottom } = shown.anchor;
    const x = Math.min(Math.max(GAP, (left + right) / 2 - width / 2), innerWidth - width - GAP);
    const isRoom = { above: top - GAP - height >= 0, below: bottom + GAP + height <= innerHeight };
    const y = (shown.isAbove && isRoom.above) || !isRoom.below ? top - GAP - height : bottom + GAP;
    tip.style.left = `${x}px`;
    tip.style.top = `${y}px`;
  }, [shown]);

  if (!shown) return null;
  return (
    <div className="tip" ref={box} popover="manual" aria-hidden="true">
      <span className="tip-words">{shown.words}</span>
      {shown.key === "" ? null : <kbd>{shown.key}</kbd>}
      {shown.more === "" ? null : <span className="tip-more">{shown.more}</span>}
    </div>
  );
}

function tipped(target: EventTarget | null): Element | null {
  return target instanceof Element ? target.closest("[data-tip]") : null;
}
