import { type RefObject, useLayoutEffect } from "react";

/** What goes on where a box goes from the page: the place that stays, and in it what takes the focus, first choice first. */
interface HandedTo {
  readonly place: string;
  readonly next: readonly string[];
}

/** Beside a finding: the answer, or the answers to choose from; else the finding itself. */
const AT_FINDING: HandedTo = { place: "article", next: [".kept-answer button, .slip-answers button"] };

/**
 * Hands the focus on when the box that holds it goes from the page while its place stays: to what can be pressed there
 * instead, else to the place itself. Otherwise whoever works by keys would begin at the top of the page again.
 */
export function useHandOnFocus(box: RefObject<HTMLElement | null>, { place, next }: HandedTo = AT_FINDING): void {
  const choices = next.join("\n");
  useLayoutEffect(() => {
    const element = box.current;
    return () => {
      const stays = element?.closest<HTMLElement>(place);
      if (!stays || !element?.contains(document.activeElement)) return;
      queueMicrotask(() => {
        const isHeldElsewhere = document.activeElement !== null && document.activeElement !== document.body;
        if (!stays.isConnected || isHeldElsewhere) return;
        const found = choices.split("\n").map((choice) => stays.querySelector<HTMLElement>(choice));
        (found.find((one) => one !== null) ?? stays).focus();
      });
    };
  }, [box, place, choices]);
}
