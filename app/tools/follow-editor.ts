/** What the tool host follows: the tool that is taken, the site on the sheet, and what is chosen on it. */
import type { ToolId } from "../view/view-store.ts";
import type { HostPorts } from "./host-ports.ts";

interface Followed {
  tool(): ToolId;
  take(tool: ToolId): void;
  refresh(): void;
  withdrawTie(): void;
  /** Says no longer what was said last. */
  hush(): void;
}

export function followEditor({ document, view }: HostPorts, host: Followed): void {
  // These tools show what was chosen beforehand, whoever chose or changed it: a key, a list, or undo.
  const isOnChosen = () => host.tool() === "select" || host.tool() === "mirror";
  view.subscribe((state, before) => {
    const isChosenElse = state.selection !== before.selection || state.dimension !== before.dimension;
    if (state.tool !== before.tool || state.reshaping !== before.reshaping) host.take(state.tool);
    else if (state.shape !== before.shape || (isChosenElse && isOnChosen())) host.refresh();
  });
  document.subscribe((state, before) => {
    // What was pressed or begun was on the site before.
    if (state.opened !== before.opened) {
      host.hush();
      return host.take(view.getState().tool);
    }
    if (state.shown !== before.shown) host.withdrawTie();
    if (state.history.present !== before.history.present && isOnChosen()) host.refresh();
  });
}
