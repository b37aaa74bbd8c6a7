/** A tool whose code is fetched when it is first taken. Until it is there, the host holds back what it would be given. */
import type { ToolId } from "../view/view-store.ts";
import type { Desk, Tool } from "./tool.ts";

const NOT_FETCHED = "This tool could not be fetched. Check the connection, then take it again.";
const NOT_FETCHED_YET =
  "This tool could not be fetched. The drawing is kept: check the connection, then press on the sheet to go on.";

export function deferredTool(id: ToolId, desk: Desk, load: () => Promise<(desk: Desk) => Tool>): Tool {
  let tool: Tool | null = null;
  let isFailed = false;
  /** A drawing to go on with, until the tool is there: it stays what is under way. */
  let waiting: unknown = null;
  const fetchIt = () => {
    isFailed = false;
    load().then(
      (make) => {
        tool = make(desk);
        if (waiting !== null) tool.takeUp?.(waiting);
        waiting = null;
        const { notice, unsay } = desk.view.getState();
        if (notice?.text === NOT_FETCHED || notice?.text === NOT_FETCHED_YET) unsay();
        desk.renew();
      },
      () => {
        isFailed = true;
        const { tool: inHand, setTool } = desk.view.getState();
        if (inHand !== id) return;
        // Laid down, it can be taken again. A drawing that waits for it stays in hand, so that it goes on being kept.
        const isWaitedFor = waiting !== null;
        if (!isWaitedFor) setTool("select");
        desk.complain(isWaitedFor ? NOT_FETCHED_YET : NOT_FETCHED);
        desk.renew();
      },
    );
  };
  /** Asks for it again where it did not come and a drawing waits for it. */
  const fetchAgain = () => {
    if (!isFailed || waiting === null) return false;
    fetchIt();
    desk.renew();
    return true;
  };
  fetchIt();
  return {
    id,
    isReady: () => tool !== null || isFailed,
    pointerDown(pointer) {
      if (!fetchAgain()) tool?.pointerDown(pointer);
    },
    pointerMove: (pointer) => tool?.pointerMove(pointer),
    pointerUp: (pointer) => tool?.pointerUp(pointer),
    pointerLeave: () => tool?.pointerLeave?.(),
    abandonPress: () => tool?.abandonPress(),
    key: (key) => tool?.key(key) ?? (key.key === "Enter" && fetchAgain()),
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
