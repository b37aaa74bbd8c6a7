import { type RefObject, useLayoutEffect } from "react";

/**
 * Hands the focus on when the box that holds it goes from the page while the finding stays: to what can be pressed in
 * its place, else to the finding itself. Otherwise whoever works by keys would begin at the top of the page again.
 */
export function useHandOnFocus(box: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const element = box.current;
    return () => {
      const finding = element?.closest("article");
      if (!finding || !element?.contains(document.activeElement)) return;
      queueMicrotask(() => {
        const isHeldElsewhere = document.activeElement !== null && document.activeElement !== document.body;
        if (!finding.isConnected || isHeldElsewhere) return;
        (finding.querySelector<HTMLElement>(".kept-answer button, .slip-answers button") ?? finding).focus();
      });
    };
  }, [box]);
}
