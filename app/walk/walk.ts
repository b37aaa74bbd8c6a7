/**
 * The walk: six steps on the first demo. It shows itself on the first visit, can be left at every step, and is then
 * remembered; Help and the list of commands bring it back. Work goes before it: whoever takes a drawing tool or opens
 * another site has left it.
 */
import type { StoreApi } from "zustand/vanilla";
import type { Report } from "../../rules/report.ts";
import type { EditorPorts } from "../commands/editor-ports.ts";
import { FIRST_DEMO, loadDemo } from "../files/gallery.ts";
import { rememberWalk, walkStorage } from "./walk-memory.ts";
import type { WalkStore } from "./walk-state.ts";
import { WALK_STEPS } from "./walk-steps.ts";

export interface Walker extends EditorPorts {
  readonly walk: WalkStore;
  readonly live: Pick<StoreApi<{ readonly report: Report | null }>, "getState" | "subscribe">;
}

/** What ends the following of a walker's work. */
const following = new WeakMap<WalkStore, () => void>();

/** Shows the first step on what is on the sheet, which is the first demo, and leaves the focus where it is. */
export function offerWalk(walker: Walker): void {
  show(walker, 0, false);
}

/** Begins at the first step, on the first demo. False when the demo was not opened. */
export async function beginWalk(walker: Walker): Promise<boolean> {
  if (walker.walk.getState().step !== null) end(walker);
  const { document, files, view } = walker;
  const demo = await loadDemo(FIRST_DEMO);
  const { history, shown } = document.getState();
  const isThere = demo?.title === shown.name && history.past.length === 0 && history.future.length === 0;
  const hadChanges = files.hasUnsavedChanges();
  if (!isThere && !(await files.openDemo(FIRST_DEMO))) return false;
  if (!isThere && hadChanges) view.getState().say("Your own sheet is kept: Site, Demo sites and kept copies.");
  show(walker, 0, true);
  return true;
}

/** To a step, from 0; past the last one the walk ends. */
export function walkTo(walker: Walker, step: number): void {
  if (step >= WALK_STEPS.length) leaveWalk(walker);
  else if (step >= 0) show(walker, step, walker.walk.getState().isAsked);
}

/** Ends the walk and shows the whole sheet again. */
export function leaveWalk(walker: Walker): void {
  const { choosePart, select, showColumn } = walker.view.getState();
  choosePart(null);
  select([]);
  showColumn(null);
  end(walker);
}

function show(walker: Walker, step: number, isAsked: boolean): void {
  WALK_STEPS[step]?.show(walker);
  walker.walk.setState({ step, isAsked });
  if (following.has(walker.walk)) return;
  const stops = [
    walker.view.subscribe(({ tool }) => {
      if (tool !== "select" && tool !== "pan") end(walker);
    }),
    walker.live.subscribe(({ report }, before) => {
      if (report !== null && before.report === null) showLate(walker);
    }),
    walker.document.subscribe((now, before) => {
      if (now.opened !== before.opened) end(walker);
    }),
  ];
  following.set(walker.walk, () => {
    for (const stop of stops) stop();
  });
}

/** Shows what a step is about that was come to before there was a report; not to somebody who has chosen something since. */
function showLate(walker: Walker): void {
  const { finding, selection } = walker.view.getState();
  const step = WALK_STEPS[walker.walk.getState().step ?? -1];
  if (step?.isAboutFinding && finding === null && selection.length === 0) step.show(walker);
}

function end({ walk }: Walker): void {
  following.get(walk)?.();
  following.delete(walk);
  rememberWalk(walkStorage(window));
  walk.setState({ step: null, isAsked: false });
}
