/** A tool whose code is fetched when it is first taken. Until it is there, the host holds back what it would be given. */
import type { ToolId } from "../view/view-store.ts";
import type { Desk, Tool } from "./tool.ts";

const NOT_FETCHED = "This tool could not be fetched. Check the connection, then take it again.";

export function deferredTool(id: ToolId, desk: Desk, load: () => Promise<(desk: Desk) => Tool>): Tool {
  let tool: Tool | null = null;
  let isFailed = false;
  /** A drawing to go on with, until the tool is there: it stays what is under way. */
  let waiting: unknown = null;
  load().then(
    (make) => {
      tool = make(desk);
      if (waiting !== null) tool.takeUp?.(waiting);
      waiting = null;
      const { notice, unsay } = desk.view.getState();
      if (notice?.text === NOT_FETCHED) unsay();
      desk.renew();
    },
    () => {
      isFailed = true;
      const { tool: inHand, setTool } = desk.view.getState();
      if (inHand !== id) return;
      // Laid down, it can be taken again; a drawing that waits for it stays.
      if (waiting === null) setTool("select");
      desk.complain(NOT_FETCHED);
      desk.renew();
    },
  );
  return {
    id,
    isReady: () => tool !== null || isFailed,
    pointerDown: (pointer) => tool?.pointerDown(pointer),
    pointerMove: (pointer) => tool?.pointerMove(pointer),
    pointerUp: (pointer) => tool?.pointerUp(pointer),
    pointerLeave: () => tool?.pointerLeave?.(),
    abandonPress: () => tool?.abandonPress(),
    key: (key) => tool?.key(key) ?? false,
    cancel() {
      if (tool) return tool.cancel();
      const had = waiting !== null;
      waiting = null;
      return had;
    },
    begun: () => tool?.begun?.() ?? waiting,
    takesBack: () => tool?.takesBack?.() ?? null,
    takeUp(begun) {
      if (tool) tool.takeUp?.(begun);
      else waiting = begun;
    },
    entry: () => tool?.entry() ?? null,
    retyped: () => tool?.retyped?.(),
    typed: (values) => (tool ? tool.typed(values) : "The tool is on its way."),
    overlay: () => tool?.overlay() ?? [],
    cursor: () => tool?.cursor() ?? (isFailed ? "not-allowed" : "progress"),
  };
}
