/** The card of the walk on the sheet: one step, on and back, and a way out at every step. What it speaks of is framed. */

import { X } from "lucide-react";
import { useEffect, useLayoutEffect, useRef } from "react";
import { useStore } from "zustand";
import { focusSheet } from "../canvas/focus-sheet.ts";
import { runCommand } from "../commands/command.ts";
import { useEditor } from "../editor-context.tsx";
import { tip } from "../panels/tip-props.ts";
import { useCoarsePointer } from "../panels/use-coarse-pointer.ts";
import { leaveWalk, walkTo } from "./walk.ts";
import { WALK_STEPS } from "./walk-steps.ts";
import "./walk.css";

export default function WalkCard() {
  const editor = useEditor();
  const step = useStore(editor.walk, (state) => state.step) ?? 0;
  const isAsked = useStore(editor.walk, (state) => state.isAsked);
  const isCoarse = useCoarsePointer();
  const card = useRef<HTMLElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const next = useRef<HTMLButtonElement>(null);
  const now = WALK_STEPS[step];
  const isLast = step === WALK_STEPS.length - 1;

  // The focus comes here when the walk was asked for, and goes back to where it was, or to the sheet.
  useEffect(() => {
    if (!isAsked) return;
    const before = document.activeElement;
    heading.current?.focus();
    return () => {
      if (before instanceof HTMLElement && before.isConnected && before !== document.body) before.focus();
      else focusSheet();
    };
  }, [isAsked]);

  // Whoever leaves it with the focus inside goes on with the keys on the sheet.
  useLayoutEffect(() => {
    const left = card.current;
    return () => {
      if (left?.contains(document.activeElement)) focusSheet();
    };
  }, []);

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== "Escape" || event.defaultPrevented) return;
      const { target } = event;
      const isHere = target instanceof Node && (card.current?.contains(target) || target === document.body);
      if (!isHere) return;
      event.preventDefault();
      event.stopPropagation();
      leaveWalk(editor);
    };
    window.addEventListener("keydown", onKey, true);
    return () => window.removeEventListener("keydown", onKey, true);
  }, [editor]);

  useEffect(() => {
    const app = document.querySelector<HTMLElement>(".app");
    if (!app || !now) return;
    app.dataset.walk = now.place;
    return () => {
      delete app.dataset.walk;
    };
  }, [now]);

  // Columns that slide up from below end under the card: its buttons stay in reach however low the page is.
  useEffect(() => {
    const app = document.querySelector<HTMLElement>(".app");
    const here = card.current;
    if (!app || !here) return;
    const measure = () => app.style.setProperty("--walk-bottom", `${Math.ceil(here.getBoundingClientRect().bottom)}px`);
    const observer = new ResizeObserver(measure);
    observer.observe(here);
    observer.observe(app);
    return () => {
      observer.disconnect();
      app.style.removeProperty("--walk-bottom");
    };
  }, []);

  if (!now) return null;
  const text = isCoarse ? (now.byTouch ?? now.text) : now.text;
  const goTo = (to: number) => {
    walkTo(editor, to);
    // The way back is not there on the first step.
    if (to === 0) next.current?.focus();
  };
  return (
    <section className="walk-card" aria-label="Walk round the program" ref={card} data-over-sheet="">
      <header className="walk-head">
        <h2 ref={heading} tabIndex={-1}>
          {now.title}
        </h2>
        <button
          type="button"
          className="plain icon-button"
          aria-label="Leave the walk"
          {...tip("Leave the walk", "Escape")}
          onClick={() => leaveWalk(editor)}
        >
          <X size={18} aria-hidden="true" />
        </button>
      </header>
      <p>{text}</p>
      <div className="walk-buttons">
        {step === 0 ? (
          <button type="button" className="plain" onClick={() => leaveWalk(editor)}>
            Not now
          </button>
        ) : (
          <button type="button" onClick={() => goTo(step - 1)}>
            Back
          </button>
        )}
        <span className="small soft walk-count">
          Step {step + 1} of {WALK_STEPS.length}
        </span>
        {isLast ? (
          <button
            type="button"
            onClick={() => {
              leaveWalk(editor);
              runCommand(editor, editor.commands.get("new"));
            }}
          >
            New sheet
          </button>
        ) : null}
        <button type="button" className="strong" ref={next} onClick={() => goTo(step + 1)}>
          {isLast ? "Done" : "Next"}
        </button>
      </div>
      <p className="unseen" role="status">
        {isAsked && step === 0 ? "" : `Step ${step + 1} of ${WALK_STEPS.length}: ${now.title}. ${text}`}
      </p>
    </section>
  );
}
